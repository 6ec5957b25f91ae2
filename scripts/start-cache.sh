#!/usr/bin/env bash
# Writes the archive of loaded classes (class-data sharing) that ./varwright and the release start with.
# Usage: scripts/start-cache.sh JAVA ARCHIVE CLASSPATH OPTION…    a start must have the same class path or a longer one, and the same options
set -euo pipefail
java=$1 archive=$2 classpath=$3
shift 3
room=$(mktemp -d)
trap 'rm -rf "$room"' EXIT
mkdir "$room/work"
if ! "$java" "-XX:DumpLoadedClassList=$room/classes" "$@" -cp "$classpath" org.varwright.cli.Rehearsal "$room/work" >"$room/log" 2>&1 \
  || ! "$java" -Xshare:dump "-XX:SharedClassListFile=$room/classes" "-XX:SharedArchiveFile=$archive.part" "$@" -cp "$classpath" >"$room/log" 2>&1; then
  tail -5 "$room/log" >&2
  exit 1
fi
mv "$archive.part" "$archive"
