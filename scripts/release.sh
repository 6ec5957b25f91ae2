#!/usr/bin/env bash
# Builds an archive that runs where no Java is installed: launcher, jars, the app, a trimmed runtime, the parts list.
# Usage: scripts/release.sh [FOLDER for the archive, default target/release]; with BUILT=1 from jars that are there already.
set -euo pipefail
here=$(cd "$(dirname "$(readlink -f "$0")")/.." && pwd)
cd "$here"
. scripts/java-home.sh
out=${1:-$here/target/release}
version=$(sed -n 's/^  <version>\(.*\)<\/version>$/\1/p' pom.xml | sed -n 1p)
system=$(uname -s | tr '[:upper:]' '[:lower:]')-$(uname -m)
name=varwright-$version-$system
stage=$out/$name
# One moment for every file in it, so that the same sources give the same bytes: of all but the archive of loaded classes, in which the JVM leaves traces of
# the run that made it. parts/files.sha256 lists the others; two builds are compared by it.
stamp='2026-01-01T00:00:00Z'

[ "${BUILT:-}" = 1 ] || mvn -B -q -Dquick -DskipTests -pl cli,web -am package
rm -rf "$stage"
mkdir -p "$stage/bin" "$stage/lib" "$stage/parts" "$stage/examples"
cp cli/target/varwright-cli-*.jar cli/target/lib/*.jar web/target/varwright-web-*.jar "$stage/lib/"
cp LICENSE README.md "$stage/"
cp -r examples/demo "$stage/examples/"
scripts/parts.sh "$stage/parts"

# What the jars ask for (jdeps --list-deps), and what is loaded by name only: SQLite's driver, archives. scripts/release-check.sh uses them all.
modules=java.base,java.desktop,java.instrument,java.logging,java.management,java.naming,java.sql,java.xml,jdk.unsupported,jdk.zipfs
"$JAVA_HOME/bin/jlink" --add-modules "$modules" --strip-debug --no-header-files --no-man-pages --compress zip-6 --output "$stage/runtime"

jars=$(LC_ALL=C && cd "$stage/lib" && echo *.jar)
sed "s/@JARS@/$jars/" >"$stage/bin/varwright" <<'LAUNCH'
#!/bin/sh
# Starts Varwright with the runtime that came with it.
here=$(cd "$(dirname "$(readlink -f "$0")")/.." && pwd)
# In this order: the archive of loaded classes is tied to it.
classpath=
for jar in @JARS@; do classpath=$classpath${classpath:+:}$here/lib/$jar; done
# Small commands end before the slow compiler has paid for itself.
case ${1:-} in interlock | inrush | report | serve | demo) compiler=4 ;; *) compiler=1 ;; esac
terminal=
[ -t 2 ] && terminal=-Dvarwright.terminal=true
exec "$here/runtime/bin/java" $terminal -XX:+UseSerialGC -XX:TieredStopAtLevel=$compiler "-XX:SharedArchiveFile=$here/runtime/lib/varwright.jsa" -Xshare:auto -Xlog:disable -Xlog:all=error:stderr \
  --enable-native-access=ALL-UNNAMED -Djava.awt.headless=true -Dfile.encoding=UTF-8 -Dstdout.encoding=UTF-8 -Dstderr.encoding=UTF-8 \
  -cp "$classpath" org.varwright.cli.Main "$@"
LAUNCH
chmod +x "$stage/bin/varwright"
(cd "$stage" && find . -type f ! -path ./parts/files.sha256 -print0 | LC_ALL=C sort -z | xargs -0 sha256sum >parts/files.sha256)
find "$stage" -exec touch -h -d "$stamp" {} +
# After the stamps: the archive of loaded classes keeps the times of the jars.
(
  cd "$stage"
  classpath=$(printf 'lib/%s:' $jars)
  "$here/scripts/start-cache.sh" runtime/bin/java runtime/lib/varwright.jsa "${classpath%:}" -XX:+UseSerialGC --enable-native-access=ALL-UNNAMED
)
find "$stage" -newermt "$stamp" -exec touch -h -d "$stamp" {} +
tar --sort=name --owner=0 --group=0 --numeric-owner --mtime="$stamp" -C "$out" -cf - "$name" | gzip -9 -n >"$out/$name.tar.gz"
(cd "$out" && sha256sum "$name.tar.gz" | tee "$name.tar.gz.sha256")
du -h "$out/$name.tar.gz" | cut -f1
