#!/usr/bin/env bash
# Reads the annotated notes and prints how well: the contract's examples, the development corpus, the part kept aside.
set -euo pipefail
cd "$(dirname "$0")/../.."
work=$(mktemp -d)
for set in examples dev held; do
  [ "$set" = examples ] || compgen -G "tests/corpus/$set/*.jsonl" >/dev/null || continue
  if [ "$set" = examples ]; then cat tests/corpus/examples.jsonl >"$work/gold"; else cat tests/corpus/"$set"/*.jsonl >"$work/gold"; fi
  node -e 'for (const l of require("node:fs").readFileSync(process.argv[1], "utf8").split("\n").filter(Boolean)) { const { gold, ...note } = JSON.parse(l); console.log(JSON.stringify(note)); }' "$work/gold" >"$work/notes"
  npm run --silent understand <"$work/notes" >"$work/answers"
  printf '%-9s' "$set"
  node tests/contract/score.mjs "$work/gold" "$work/answers" | head -n 1
done
rm -rf "$work"
