#!/usr/bin/env bash
# Makes the picture of the oyster skiff's first sheet that README shows, and keeps beside it what it was made of.
set -euo pipefail
cd "$(dirname "$0")/../.."
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
# The skiff does not fit as written, which ends with 1.
cargo run --quiet -- check catalogs/jobs/oyster_skiff.ron --html "$scratch/page.html" || [ $? -eq 1 ]
node tests/browser/picture.mjs "$scratch/page.html" "$scratch/sheet.pdf"
pdftoppm -r 90 -png -singlefile "$scratch/sheet.pdf" tests/browser/first_sheet
RENEW=1 cargo test --quiet --test browser picture
