"""A command loads what it needs and no more: no solver, no database, no Qt where none is asked for."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

ROOT = Path(__file__).parents[2]
HEAVY = ("ortools", "sqlalchemy", "alembic", "pandas", "scipy", "PySide6", "pint")

RUN_AND_LIST = """
import contextlib, io, json, sys
from gui.command_line.main import main
heavy = set(sys.argv[1].split(","))
told = []
for words in json.loads(sys.argv[2]):
    with contextlib.redirect_stdout(io.StringIO()):
        code = main(words)
    told.append([code, sorted(heavy & sys.modules.keys())])
print(json.dumps(told))
"""
NEED_NOTHING_HEAVY = (
    ("weigh", "water carrier", "--fill", "water", "--demo"),
    ("weigh", "5 L bottle", "--for", "3 kg"),
    ("loads", "--use", "hug", "--demo"),
    ("swap", "back squat", "--demo"),
    ("gaps", "--demo"),
    ("check", "resources/demo/dipper.toml"),
    ("check", "--schema"),
    ("check", "--catalog"),
    ("strip", "water carrier", "--demo", "--pdf", "a.pdf"),
    ("export", "--demo", "--json", "a.json"),
)


def loaded_after(questions: Sequence[Sequence[str]], folder: Path) -> list[tuple[tuple[str, ...], int, list[str]]]:
    """Ask one question after the other in one new process; for each its exit code and what is loaded by then."""
    placed = [
        [word.replace("a.", f"{folder}/a.") if word in {"a.pdf", "a.json"} else word for word in words]
        for words in questions
    ]
    command = [sys.executable, "-W", "error", "-c", RUN_AND_LIST, ",".join(HEAVY), json.dumps(placed)]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return [(tuple(words), *told) for words, told in zip(questions, json.loads(done.stdout), strict=True)]


def test_no_solver_database_or_qt_is_loaded_where_none_is_asked_for(tmp_path: Path) -> None:
    assert loaded_after(NEED_NOTHING_HEAVY, tmp_path) == [(words, 0, []) for words in NEED_NOTHING_HEAVY]


def test_planning_loads_the_solver_and_nothing_else_heavy(tmp_path: Path) -> None:
    ((_, code, found),) = loaded_after([("week", "--demo", "--days", "tue 30 min")], tmp_path)
    assert code == 0
    assert "ortools" in found
    assert not set(found) & {"sqlalchemy", "PySide6", "pint"}


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


TWO_ANSWERS = """
import sys
from gui.command_line.main import main
sys.exit(main(["weigh", "water carrier", "--demo"]) * 10 + main(["weigh", "zorp"]))
"""


def test_letters_the_terminal_lacks_are_replaced() -> None:
    environment = {**os.environ, "PYTHONIOENCODING": "ascii"}
    command = [sys.executable, "-c", TWO_ANSWERS]
    done = subprocess.run(command, cwd=ROOT, env=environment, capture_output=True, text=True, check=False)
    assert done.returncode == 2
    assert "Traceback" not in done.stderr
    assert done.stdout.isascii()
    assert done.stderr.isascii()
    assert done.stdout
    assert done.stderr


def test_answers_do_not_depend_on_the_hash_seed() -> None:
    command = [sys.executable, "-c", WITHOUT_QT, "swap", "back squat", "--demo", "--json"]
    answers = [
        subprocess.run(command, cwd=ROOT, env={**os.environ, "PYTHONHASHSEED": seed}, capture_output=True, check=False)
        for seed in ("0", "7")
    ]
    assert answers[0].returncode == 0
    assert answers[0].stdout == answers[1].stdout
