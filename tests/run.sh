#!/usr/bin/env bash
# Installs what is missing, then checks style, types and tests. Arguments go to pytest.
set -uo pipefail

root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
cd "$root" || exit 1
bash tests/setup.sh dev || exit 1
bin=$root/.venv/bin
export OMP_THREAD_LIMIT=1

status=0
"$bin/ruff" check . || status=1
"$bin/ruff" format --check --quiet . || { echo "ruff format: some files are not formatted"; status=1; }
"$bin/mypy" || status=1
"$bin/pytest" "$@" || status=1 # last, so that its summary closes the output
exit $status
