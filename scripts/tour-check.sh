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

start=$(date +%s%N)
"$v" check "$example" >/dev/null
echo "a small command: $((($(date +%s%N) - start) / 1000000)) ms"
