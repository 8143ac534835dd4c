"""Opening against a bare window of the same toolkit, in turn: first paint twice, usable 12 times, resident 2.7 times.

Processor time, so that a busy machine does not count. The record holds the invented household.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from statistics import median
from typing import Any

import pytest

from catalog.load import load_catalog
from core.store.paths import DataFolder
from core.store.record import Record
from gui.opening.demo import demo_house
from tests.gui.conftest import NOON

ROOT = Path(__file__).parents[2]
SCRIPT = Path(__file__).with_name("opening_script.py")
ROUNDS = 5
BOUNDS = {"paint_s": 2.0, "usable_s": 12.0, "resident_mb": 2.7}
"""Of what it takes to be usable, a third is the import of SQLAlchemy, another that of the record and the screens."""
Told = dict[str, Any]


@pytest.fixture(scope="module")
def openings(tmp_path_factory: pytest.TempPathFactory) -> list[tuple[Told, Told]]:
    """Ours and the bare one, in turn; a first one of each is not counted."""
    folder = tmp_path_factory.mktemp("opening")
    with Record.open(DataFolder(folder), lambda: NOON) as record:
        record.do(demo_house(load_catalog()))
    told = [(_open("fillmark", str(folder)), _open("bare")) for _ in range(ROUNDS + 1)]
    return told[1:]


def _open(*words: str) -> Told:
    clean = {**os.environ, "PYTHONPATH": str(ROOT), "QT_QPA_PLATFORM": "offscreen"}
    done = subprocess.run([sys.executable, str(SCRIPT), *words], env=clean, capture_output=True, text=True, check=True)
    found: Told = json.loads(done.stdout.splitlines()[-1])
    return found


@pytest.mark.parametrize("what", BOUNDS)
def test_opening_costs_a_few_bare_windows(
    openings: list[tuple[Told, Told]], what: str, figures: Callable[[str], None]
) -> None:
    found = median(ours[what] / bare[what] for ours, bare in openings)
    mine, theirs = (median(one[at][what] for one in openings) for at in (0, 1))
    figures(f"{what} {mine:.2f} against {theirs:.2f}, ratio {found:.2f}, bound {BOUNDS[what]:.1f}")
    assert found <= BOUNDS[what]


def test_nothing_heavy_is_loaded_at_the_first_paint(openings: list[tuple[Told, Told]]) -> None:
    assert openings[0][0]["heavy"] == []
