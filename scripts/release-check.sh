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
alone() { env -i PATH="$room/empty" HOME="$room" LANG=C.UTF-8 "$home/bin/varwright" "$@"; }

# The archive of loaded classes that came with it must be used; a start that can't use it fails here, and is only slower for a user.
sed 's/-Xshare:auto/-Xshare:on/' "$home/bin/varwright" >"$home/bin/strict"
grep -q 'Xshare:on' "$home/bin/strict"
chmod +x "$home/bin/strict"
env -i PATH="$room/empty" HOME="$room" "$home/bin/strict" --version >/dev/null

alone check "$home/examples/demo/corbel-reach-3.bank.yaml" >"$room/check.txt"
grep -qi 'Corbel Reach' "$room/check.txt"
began=$(date +%s%N)
alone check "$home/examples/demo/corbel-reach-3.bank.yaml" >/dev/null
echo "release: a small command: $((($(date +%s%N) - began) / 1000000)) ms"
(cd "$home/examples/demo" && alone report corbel-reach-3.job.yaml -o "$room/report.pdf" >"$room/report.txt" 2>&1 || [ $? -le 3 ])
[ "$(head -c 5 "$room/report.pdf")" = "%PDF-" ]

alone serve --data "$room/data" --port 0 >"$room/serve.txt" 2>&1 &
server=$!
for _ in $(seq 100); do
  address=$(grep -o 'http://127.0.0.1:[0-9]*/' "$room/serve.txt" | sed -n 1p || true)
  [ -n "$address" ] && break
  sleep 0.1
done
curl -sf "${address}healthz" | grep -q '"ok"'
curl -sf "$address" | grep -q '<title>Varwright</title>'
node - "$home/parts/java.cdx.json" "$home/parts/app.cdx.json" <<'JS'
const { readFileSync } = require('node:fs');
// What may be shipped beside Apache-2.0 work.
const allowed = ['Apache-2.0', 'MIT', 'BSD-2-Clause', 'BSD-3-Clause', 'ISC', 'EPL-1.0', 'EPL-2.0', 'LGPL-2.1-or-later', '0BSD'];
const parts = process.argv.slice(2).flatMap((file) => JSON.parse(readFileSync(file, 'utf8')).components);
// Our own are under the licence of the whole.
for (const part of parts.filter((p) => p.group !== 'org.varwright')) {
  const named = (part.licenses ?? []).map((l) => l.expression ?? l.license.id ?? l.license.name);
  if (!named.some((n) => allowed.includes(n))) {
    console.error(`release: ${part.name} ${part.version}: licence ${named.join(', ') || 'not named'} is not one of ${allowed.join(', ')}`);
    process.exit(1);
  }
}
if (parts.length < 50) {
  console.error(`release: only ${parts.length} parts are listed`);
  process.exit(1);
}
console.log(`release: ${parts.length} parts, every licence known; runs without Java: check, report, app`);
JS
