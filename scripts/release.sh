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
# One moment for every file in it, so that the same sources give the same bytes.
stamp='2026-01-01T00:00:00Z'

[ "${BUILT:-}" = 1 ] || mvn -B -q -Dquick -DskipTests -pl cli,web -am package
mvn -B -q -Dquick -pl cli -am cyclonedx:makeBom
rm -rf "$stage"
mkdir -p "$stage/bin" "$stage/lib" "$stage/parts" "$stage/examples"
cp cli/target/varwright-cli-*.jar cli/target/lib/*.jar web/target/varwright-web-*.jar "$stage/lib/"
cp LICENSE README.md "$stage/"
cp -r examples/demo "$stage/examples/"
cp cli/target/varwright-sbom.json "$stage/parts/java.cdx.json"
(cd web && npm sbom --sbom-format cyclonedx --omit dev) | grep -v '"serialNumber"\|"timestamp"' >"$stage/parts/app.cdx.json"

# What the jars ask for (jdeps --list-deps), and what is loaded by name only: SQLite's driver, archives. scripts/release-check.sh uses them all.
modules=java.base,java.desktop,java.instrument,java.logging,java.management,java.naming,java.sql,java.xml,jdk.unsupported,jdk.zipfs
"$JAVA_HOME/bin/jlink" --add-modules "$modules" --strip-debug --no-header-files --no-man-pages --compress zip-6 --output "$stage/runtime"

cat >"$stage/bin/varwright" <<'LAUNCH'
#!/bin/sh
# Starts Varwright with the runtime that came with it.
here=$(cd "$(dirname "$(readlink -f "$0")")/.." && pwd)
exec "$here/runtime/bin/java" -XX:+UseSerialGC -Djava.awt.headless=true -Dfile.encoding=UTF-8 -Dstdout.encoding=UTF-8 -Dstderr.encoding=UTF-8 \
  -Dvarwright.examples="$here/examples/demo" -cp "$here/lib/*" org.varwright.cli.Main "$@"
LAUNCH
chmod +x "$stage/bin/varwright"
find "$stage" -exec touch -h -d "$stamp" {} +
tar --sort=name --owner=0 --group=0 --numeric-owner --mtime="$stamp" -C "$out" -cf - "$name" | gzip -9 -n >"$out/$name.tar.gz"
(cd "$out" && sha256sum "$name.tar.gz" | tee "$name.tar.gz.sha256")
du -h "$out/$name.tar.gz" | cut -f1
