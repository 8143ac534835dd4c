"""`./run-tests` carries out both runs at once, keeps their output apart, and fails when either does."""

from __future__ import annotations

import os
import shutil
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
SET_UP = 'venv=$root/venv\nsay() { printf "%s\\n" "$*" >&2; }\nset_up() { :; }\nneed_qt() { :; }\n'
STAND_IN = """#!/bin/sh
case "$*" in
    *tests.block_qt*) echo "seed $PYTHONHASHSEED: $*"; echo "3 passed"; exit "$WITHOUT_QT" ;;
    *) echo "seed $PYTHONHASHSEED: $*"; sleep 0.1; echo "5 passed"; exit "$WINDOW" ;;
esac
"""


@pytest.fixture
def checkout(tmp_path: Path) -> Path:
    """A checkout with the script and a Python that only says how it was called."""
    shutil.copy(ROOT / "run-tests", tmp_path)
    for name, text in (("scripts/set-up.sh", SET_UP), ("venv/bin/python", STAND_IN)):
        (tmp_path / name).parent.mkdir(parents=True)
        (tmp_path / name).write_text(text, encoding="utf-8")
        (tmp_path / name).chmod(0o755)
    return tmp_path


def run_tests(checkout: Path, *words: str, window: int = 0, without_qt: int = 0) -> subprocess.CompletedProcess[str]:
    environment = {**os.environ, "WINDOW": str(window), "WITHOUT_QT": str(without_qt), "TMPDIR": str(checkout)}
    command = [str(checkout / "run-tests"), *words]
    return subprocess.run(command, env=environment, capture_output=True, text=True, check=False)


def test_the_two_runs_are_shown_one_after_the_other(checkout: Path) -> None:
    done = run_tests(checkout)
    assert done.returncode == 0, done.stderr
    assert done.stdout.splitlines() == [
        "seed 0: -m pytest tests/gui",
        "5 passed",
        "seed 7: -m pytest -p tests.block_qt -p no:cacheprovider --ignore=tests/gui",
        "3 passed",
    ]
    assert sorted(path.name for path in checkout.iterdir()) == ["run-tests", "scripts", "venv"]


@pytest.mark.parametrize(("window", "without_qt", "code"), [(1, 0, 1), (0, 1, 1), (2, 1, 2), (0, 5, 5)])
def test_it_fails_when_either_run_does(checkout: Path, window: int, without_qt: int, code: int) -> None:
    done = run_tests(checkout, window=window, without_qt=without_qt)
    assert done.returncode == code
    assert done.stdout.splitlines()[-1] == "3 passed"


def test_words_go_on_to_pytest(checkout: Path) -> None:
    assert run_tests(checkout, "tests/core/swap", "-x").stdout.splitlines()[0] == "seed 0: -m pytest tests/core/swap -x"
    assert run_tests(checkout, "--benchmarks").stdout.splitlines()[0] == "seed 0: -m pytest tests/benchmarks"
