#!/usr/bin/env bash
# Unpacks the release where no Java is to be found and uses it: a check, a report, the app's first page.
# Usage: scripts/release-check.sh ARCHIVE
set -euo pipefail
archive=$1
room=$(mktemp -d)
server=
trap 'status=$?; [ $status = 0 ] || echo "release-check: failed" >&2; [ -z "$server" ] || kill "$server" 2>/dev/null; rm -rf "$room"' EXIT
tar -xzf "$archive" -C "$room"
home=$(echo "$room"/varwright-*)
(cd "$home" && sha256sum --quiet -c parts/files.sha256)
mkdir "$room/empty"
ln -s /bin/sh "$(command -v dirname)" "$(command -v readlink)" "$room/empty/"
alone=(env -i PATH="$room/empty" HOME="$room" LANG=C.UTF-8 "$home/bin/varwright")

# The archive of loaded classes that came with it must be used; a start that can't use it fails here, and is only slower for a user.
sed 's/-Xshare:auto/-Xshare:on/' "$home/bin/varwright" >"$home/bin/strict"
grep -q 'Xshare:on' "$home/bin/strict"
chmod +x "$home/bin/strict"
env -i PATH="$room/empty" HOME="$room" "$home/bin/strict" --version >/dev/null

"${alone[@]}" check "$home/examples/demo/corbel-reach-3.bank.yaml" >"$room/check.txt"
grep -qi 'Corbel Reach' "$room/check.txt"
began=$(date +%s%N)
"${alone[@]}" check "$home/examples/demo/corbel-reach-3.bank.yaml" >/dev/null
echo "release: a small command: $((($(date +%s%N) - began) / 1000000)) ms"
(cd "$home/examples/demo" && "${alone[@]}" report corbel-reach-3.job.yaml -o "$room/report.pdf" >"$room/report.txt" 2>&1 || [ $? -le 3 ])
[ "$(head -c 5 "$room/report.pdf")" = "%PDF-" ]

# Not through a function: the shell around it would be stopped, and not the server.
"${alone[@]}" serve --data "$room/data" --port 0 >"$room/serve.txt" 2>&1 &
server=$!
for _ in $(seq 600); do
  address=$(grep -o 'http://127.0.0.1:[0-9]*/' "$room/serve.txt" | sed -n 1p || true)
  [ -n "$address" ] && break
  sleep 0.1
done
curl -sf "${address}healthz" | grep -q '"ok"'
curl -sf "$address" | grep -q '<title>Varwright</title>'
node - "$home/parts" <<'JS'
const { readFileSync } = require('node:fs');
// One of each way in which a part comes: a jar, a class library compiled into the browser's core, a library and a tool whose own code is compiled into the app.
const expected = { java: ['picocli', 'sqlite-jdbc'], browser: ['teavm-classlib', 'ejml-ddense'], app: ['yaml', 'dexie', 'svelte'] };
let listed = 0;
for (const [list, names] of Object.entries(expected)) {
  const parts = JSON.parse(readFileSync(`${process.argv[2]}/${list}.cdx.json`, 'utf8')).components;
  listed += parts.length;
  const missing = names.filter((name) => !parts.some((part) => part.name === name));
  if (missing.length > 0) {
    console.error(`release: ${missing.join(', ')} is shipped and not listed in parts/${list}.cdx.json`);
    process.exit(1);
  }
}
console.log(`release: ${listed} parts are listed; runs without Java: check, report, app`);
JS
