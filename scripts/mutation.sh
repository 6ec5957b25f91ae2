#!/usr/bin/env bash
# Changes the code of packages of core in small ways, one at a time, and lists the changes that no test notices.
# Usage: scripts/mutation.sh PACKAGE[.CLASS][/TESTS]...   (discharge network; one class: duty.SpareStudy; by the tests of another package: bank/bankfile)
set -euo pipefail
cd "$(dirname "$(readlink -f "$0")")/.."
. scripts/java-home.sh
[ $# -gt 0 ] || { echo "usage: scripts/mutation.sh PACKAGE..." >&2; exit 2; }
nice -n 10 mvn -B -q -Dquick -pl core test-compile
for asked in "$@"; do
  changed=${asked%/*}
  package=${changed%%.*}
  tests=${asked#"$changed"}
  tests=${tests#/}
  [ "$changed" != "$package" ] || changed=$package.
  mkdir -p "core/target/mutation/$package"
  nice -n 10 mvn -B -q -Dquick -Pmutation -Dmutation.package="$package" -Dmutation.classes="$changed" -Dmutation.tests="${tests:-$package}" -pl core org.pitest:pitest-maven:mutationCoverage \
    >"core/target/mutation-$package.log" 2>&1 || { tail -n 20 "core/target/mutation-$package.log" >&2; exit 1; }
  found=core/target/mutation/$package/mutations.xml
  left=core/target/mutation/$package/left.txt
  sed -nE "s|.*status='(SURVIVED\|NO_COVERAGE)'.*<mutatedClass>org\.varwright\.[a-z]+\.([^<]*)</mutatedClass><mutatedMethod>([^<]*)<.*<lineNumber>([0-9]*)<.*<description>([^<]*)<.*|\2:\4 \3: \5 [\1]|p" \
    "$found" | sort -t: -k1,1 -k2,2n >"$left"
  echo "$asked: $(grep -c '<mutation ' "$found") mutants, $(wc -l <"$left") left, $(grep -c "status='TIMED_OUT'" "$found") ran for ever; see $left"
done
