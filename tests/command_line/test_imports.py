"""A command loads what it needs and no more: no solver, no database, no Qt where none is asked for."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
HEAVY = ("ortools", "sqlalchemy", "alembic", "pandas", "scipy", "PySide6", "pint")
PLANNING_NEEDS = {"ortools"}

RUN_AND_LIST = """
import sys
from gui.command_line.main import main
code = main(sys.argv[2:])
heavy = sorted(set(sys.argv[1].split(",")) & sys.modules.keys())
sys.stderr.write(",".join(heavy))
sys.exit(code)
"""


def loaded(*words: str) -> tuple[int, set[str]]:
    command = [sys.executable, "-W", "error", "-c", RUN_AND_LIST, ",".join(HEAVY), *words]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    return done.returncode, set(done.stderr.split(",")) - {""}


@pytest.mark.parametrize(
    "words",
    [
        ("weigh", "water carrier", "--fill", "water", "--demo"),
        ("weigh", "5 L bottle", "--for", "3 kg"),
        ("loads", "--use", "hug", "--demo"),
        ("swap", "back squat", "--demo"),
        ("gaps", "--demo"),
        ("check", "--catalog"),
        ("check", "resources/demo/dipper.toml"),
        ("check", "--schema"),
    ],
)
def test_no_solver_database_or_qt_is_loaded(words: tuple[str, ...]) -> None:
    assert loaded(*words) == (0, set())


def test_papers_without_a_plan_need_no_solver(tmp_path: Path) -> None:
    assert loaded("strip", "water carrier", "--demo", "--pdf", str(tmp_path / "a.pdf")) == (0, set())
    assert loaded("export", "--demo", "--json", str(tmp_path / "a.json")) == (0, set())


def test_planning_loads_the_solver_and_nothing_else_heavy() -> None:
    code, found = loaded("week", "--demo", "--days", "tue 30 min")
    assert code == 0
    assert "ortools" in found
    assert not found & {"sqlalchemy", "PySide6", "pint"}


WITHOUT_QT = """
import sys
sys.modules["PySide6"] = sys.modules["shiboken6"] = None
from gui.command_line.main import main
sys.exit(main(sys.argv[1:]))
"""


def test_without_qt_the_window_says_what_works_without() -> None:
    done = subprocess.run(
        [sys.executable, "-c", WITHOUT_QT, "--demo"], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert done.returncode == 2
    assert done.stderr.startswith("The window needs PySide6, which is missing here; weigh, loads, swap")
    assert done.stderr.count("\n") == 1


def test_a_reader_that_stops_reading_is_no_fault() -> None:
    command = f"{sys.executable} -c '{WITHOUT_QT}' loads --use hug --demo --json | head -n 1"
    done = subprocess.run(["sh", "-c", command], cwd=ROOT, capture_output=True, text=True, check=False)
    assert (done.returncode, done.stderr) == (0, "")


def test_letters_the_terminal_lacks_are_replaced() -> None:
    environment = {**os.environ, "PYTHONIOENCODING": "ascii"}
    for words in (("weigh", "water carrier", "--demo"), ("weigh", "zorp")):
        command = [sys.executable, "-c", WITHOUT_QT, *words]
        done = subprocess.run(command, cwd=ROOT, env=environment, capture_output=True, text=True, check=False)
        assert "Traceback" not in done.stderr
        assert (done.stdout + done.stderr).isascii()


@pytest.mark.parametrize("seed", ["0", "7"])
def test_answers_do_not_depend_on_the_hash_seed(seed: str) -> None:
    environment = {**os.environ, "PYTHONHASHSEED": seed}
    command = [sys.executable, "-c", WITHOUT_QT, "swap", "back squat", "--demo", "--json"]
    done = subprocess.run(command, cwd=ROOT, env=environment, capture_output=True, text=True, check=False)
    fixed = subprocess.run(
        command, cwd=ROOT, env={**environment, "PYTHONHASHSEED": "1"}, capture_output=True, check=False
    )
    assert done.stdout.encode() == fixed.stdout
