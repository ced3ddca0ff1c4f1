#!/usr/bin/env bash
# Installs what is missing, reads the sample tags into a catalogue of their own, shows and searches them.
set -euo pipefail

root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
bash "$root/tests/setup.sh"

photos=$root/samples/tags
catalogue=${OCR_TAGS_DEMO:-${XDG_CACHE_HOME:-${HOME:-/tmp}/.cache}/ocr-tags/demo}
mkdir -p "$catalogue"
tags() { "$root/.venv/bin/ocr-tags" --catalogue "$catalogue" "$@"; }
title() { printf '\n== %s\n\n' "$*"; }

title "Reading the photos in $photos"
pairs=()
if [ -f "$photos/pairs.csv" ]; then pairs=(--pairs "$photos/pairs.csv"); fi
# Exit code 3: some photos could not be used, and which was said.
tags add "$photos" ${pairs[@]+"${pairs[@]}"} || [ $? -eq 3 ]

title "What the tags say"
tags list

title "A common name: ocr-tags find coneflower"
tags find coneflower --limit 3

title "A botanical name: ocr-tags find Lavandula angustifolia"
tags find Lavandula angustifolia --limit 3

title "A misspelt name: ocr-tags find hydranga"
tags find hydranga --limit 3

title "Where things are"
echo "Catalogue: $catalogue"
echo "Photos:    $photos"
echo "Command:   $root/.venv/bin/ocr-tags --catalogue '$catalogue' --help"
