#!/usr/bin/env bash
# Audits every part, shipped or used to build and test: licences, deprecations, known weaknesses (scripts/audit.mjs says what its exits mean).
# Usage: scripts/audit.sh [FOLDER with the parts lists of a release, such as target/release/*/parts]    after a build; without FOLDER it makes the lists
set -euo pipefail
here=$(cd "$(dirname "$(readlink -f "$0")")/.." && pwd)
cd "$here"
. scripts/java-home.sh
shipped=${1:-}
if [ -z "$shipped" ]; then
  shipped=$here/target/parts
  scripts/parts.sh "$shipped"
fi
mvn -B -q -Dquick cyclonedx:makeAggregateBom -Dsbom.tests=true -Dsbom.name=varwright-built
node scripts/audit.mjs --shipped "$shipped/java.cdx.json" --shipped "$shipped/browser.cdx.json" --shipped "$shipped/app.cdx.json" \
  --built target/varwright-built.json --lock web/package-lock.json --lock browser/package-lock.json --at-least 500
