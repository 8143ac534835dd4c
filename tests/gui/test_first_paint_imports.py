"""The window's code loads without the heavy libraries, so that it paints before they are needed."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
HEAVY = (
    "ortools",
    "sqlalchemy",
    "alembic",
    "pint",
    "pandas",
    "scipy",
    "numpy",
    "pydantic",
    "icalendar",
    "uncertainties",
    "reportlab",
    "rapidfuzz",
)

LIST_LOADED = """
import importlib, sys
importlib.import_module(sys.argv[1])
print(*sorted(set(sys.argv[2:]) & sys.modules.keys()))
"""


@pytest.mark.parametrize("module", ["gui.app", "gui.command_line.main"])
def test_heavy_libraries_wait_until_after_the_first_paint(module: str) -> None:
    done = subprocess.run(
        [sys.executable, "-c", LIST_LOADED, module, *HEAVY], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    assert done.stdout.split() == []
