#!/usr/bin/env bash
# Runs the commands of the README as a person would, through the launcher, and looks at what comes out.
set -euo pipefail
here=$(cd "$(dirname "$(readlink -f "$0")")/.." && pwd)
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
v=$here/varwright
fail() { echo "tour-check: $*" >&2; exit 1; }

# expect CODE TEXT COMMAND…: the exit code and a text in what is printed
expect() {
  local code=$1 text=$2 got=0
  shift 2
  "$v" "$@" >"$out/out" 2>"$out/err" || got=$?
  [ "$got" = "$code" ] || { cat "$out/err" >&2; fail "varwright $*: exit $got, expected $code"; }
  tr -s ' \n' ' ' <"$out/out" | cat - "$out/err" | grep -qF -- "$text" || fail "varwright $*: \"$text\" is not in what it printed"
}

example=$here/examples/tamarack-flats-2.bank.yaml
expect 0 "no errors" check "$example"
expect 1 "6 122 states and 58 228 moves" interlock "$example"
expect 1 '"states": 6122' interlock --json "$example"
expect 0 "now prove dead" discharge "$example"
expect 0 "WAY BACK" isolate "$example" --access "bay 2"
expect 2 "maybe \"bay 2\"" isolate "$example" --access "bay2"
corbel=$here/examples/demo/corbel-reach-3.bank.yaml
expect 1 "STAY OUT" discharge "$corbel" --after "3 min"
expect 1 "WHAT WOULD BRING IT INSIDE" inrush "$corbel" -o "$out/inrush.svg"
expect 0 "COMBINATIONS" resonance "$corbel" -o "$out/scan.svg"
expect 1 "suits" fuses "$corbel" --stage "stage 1" -o "$out/fuses.svg"
expect 0 "no order of work yet" job new "$out/spring.job.jsonl" --bank "$corbel" --title "alarm" --by "R. Imhof"
expect 0 "report:" report "$out/spring.job.jsonl" -o "$out/spring.pdf"
expect 0 "job archive:" job export "$out/spring.job.jsonl" -o "$out/spring.zip"
expect 0 "no order of work yet" job import "$out/spring.zip" -o "$out/back/spring.job.jsonl"
expect 2 "no unit" energize "$example" --bus 13.8
expect 2 "no such file" check "$out/none.bank.yaml"

for bank in corbel-reach-3 lantern-mesa-1 hallin-moor-2; do
  demo=$here/examples/demo/$bank
  start=$(date +%s%N)
  expect 0 "report:" report "$demo.job.yaml" -o "$out/$bank.pdf"
  echo "$bank: from files to PDF in $((($(date +%s%N) - start) / 1000000)) ms, $(pdfinfo "$out/$bank.pdf" | sed -n 's/^Pages: *//p') pages"
  pdftotext -layout "$out/$bank.pdf" "$out/$bank.txt"
  grep -q "prove dead" "$out/$bank.txt" || fail "$bank: the report has no order of work"
  grep -qi "replace" "$out/$bank.txt" || fail "$bank: the report has no verdicts"
done

expect 0 "Everything is in" demo --steps -o "$out/demo"
[ -s "$out/demo/corbel-reach-3/report.pdf" ] || fail "the demo wrote no report"
[ -s "$out/demo/corbel-reach-3/drawing.svg" ] || fail "the demo wrote no drawing"

# The app: the page, its script and the invented jobs come from the address that the demo prints.
setsid "$v" demo --port 0 -o "$out/app" >"$out/demo.out" 2>"$out/demo.err" &
demo=$!
trap 'kill "$demo" 2>/dev/null || true; rm -rf "$out"' EXIT
for _ in $(seq 600); do grep -q "Ctrl-C stops it" "$out/demo.out" && break; kill -0 "$demo" 2>/dev/null || { cat "$out/demo.err" >&2; fail "demo ended"; }; sleep 0.5; done
address=$(grep -o 'http://127.0.0.1:[0-9]*/' "$out/demo.out" | sed -n 1p)
get() { curl -fsS "$address$1" || fail "demo: $1"; }
script=$(get jobs | grep -o '/assets/[^"]*\.js' | sed -n 1p)
[ -n "$script" ] || fail "demo: the page names no script"
get "${script#/}" >"$out/script" && [ -s "$out/script" ] || fail "demo: no script"
job=$(get api/jobs | grep -o '"hallin-moor-2-[^"]*"' | tr -d '"')
get "api/jobs/$job/report.pdf" >"$out/record.pdf"
pdftotext -layout "$out/record.pdf" "$out/record.txt"
grep -q "closed: two units replaced" "$out/record.txt" || fail "demo: the report of the job that is over says something else"
kill "$demo"

start=$(date +%s%N)
"$v" check "$example" >/dev/null
echo "a small command: $((($(date +%s%N) - start) / 1000000)) ms"
