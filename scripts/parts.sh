#!/usr/bin/env bash
# Lists the parts of what is shipped, as CycloneDX: the jars', those of core as compiled for browsers (TeaVM's compiler is among them, its class library is what is shipped), the app's.
# Usage: scripts/parts.sh FOLDER    after a build
set -euo pipefail
here=$(cd "$(dirname "$(readlink -f "$0")")/.." && pwd)
cd "$here"
. scripts/java-home.sh
mkdir -p "$1"
mvn -B -q -Dquick -pl cli,browser -am cyclonedx:makeBom
cp cli/target/varwright-sbom.json "$1/java.cdx.json"
cp browser/target/varwright-sbom.json "$1/browser.cdx.json"
(cd web && npm sbom --sbom-format cyclonedx --package-lock-only) | node scripts/app-parts.mjs >"$1/app.cdx.json"
