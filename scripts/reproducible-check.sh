#!/usr/bin/env bash
# Builds everything a second time, elsewhere and in other circumstances (path, hour, time zone, language), and compares with the jars that are there.
# Usage: scripts/reproducible-check.sh    after a build with jars, such as mvn -DskipTests package
set -euo pipefail
here=$(cd "$(dirname "$(readlink -f "$0")")/.." && pwd)
cd "$here"
. scripts/java-home.sh
room=$(mktemp -d)
trap 'rm -rf "$room"' EXIT
copy=$room/an/other/place
mkdir -p "$copy"
# As in verify: modes of files are part of a jar.
umask 022
git ls-files -z --cached --others --exclude-standard | xargs -0 sh -c 'for f; do [ -e "$f" ] && printf "%s\0" "$f"; done' sh | tar --null -T - -cf - | tar -xf - -C "$copy"
if ! (
  set -e
  cd "$copy"
  export TZ=Pacific/Kiritimati LC_ALL=C JAVA_TOOL_OPTIONS="-Duser.language=tr -Duser.country=TR -Duser.timezone=Pacific/Kiritimati"
  mvn -B -q -Dquick -DskipTests -pl cli,browser -am package
  cd web
  npm ci --prefer-offline --no-audit --no-fund --loglevel=error
  npm run --silent build
) >"$room/log" 2>&1; then
  tail -20 "$room/log" >&2
  echo "reproducible-check: the second build failed" >&2
  exit 1
fi

differ=0
# same FILE: whether both builds made the same; what differs within a jar is named
same() {
  cmp -s "$1" "$copy/$1" && return
  differ=1
  echo "reproducible-check: $1 is not the same twice" >&2
  case $1 in *.jar)
    rm -rf "$room/first" "$room/second"
    mkdir "$room/first" "$room/second"
    (cd "$room/first" && "$JAVA_HOME/bin/jar" xf "$here/$1")
    (cd "$room/second" && "$JAVA_HOME/bin/jar" xf "$copy/$1")
    (cd "$room" && diff -rq first second | head -20) >&2 || true
    ;;
  esac
}
compared=0
while IFS= read -r file; do
  same "$file"
  compared=$((compared + 1))
done < <(cd "$copy" && find core/target/*.jar report/target/*.jar server/target/*.jar cli/target/*.jar browser/target/*.jar browser/target/js browser/target/wasm web/target/dist -type f | LC_ALL=C sort)
[ "$compared" -ge 24 ] || { echo "reproducible-check: only $compared files were found to compare" >&2; exit 1; }
[ "$differ" = 0 ] || exit 1
echo "reproducible: $compared files, the jars of five modules, core as compiled for browsers and every file of the app, are the same twice"
