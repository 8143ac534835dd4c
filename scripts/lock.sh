#!/bin/sh
# Make both lock files anew from pyproject.toml: every wheel's hash, for every platform, nothing newer than needed.
# Versions already locked stay; give --upgrade to take the newest ones, or --upgrade-package NAME for one.
set -eu

root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd -P)
cd -- "$root"

compile() {
    lock=$1
    shift
    # --no-emit-index-url and --no-header keep the maker's host names and paths out of the file.
    .venv/bin/uv pip compile pyproject.toml "$@" --quiet --generate-hashes --universal --python-version 3.11 \
        --only-binary :all: --no-emit-index-url --no-emit-find-links --no-header --no-annotate --output-file "$lock"
    {
        echo "# Made by scripts/lock.sh (uv pip compile, wheels only, every platform); change pyproject.toml, not this."
        cat "$lock"
    } > "$lock.new"
    mv "$lock.new" "$lock"
}

compile requirements.lock --group build "$@"
compile requirements-dev.lock --group build --group dev --constraint requirements.lock "$@"
