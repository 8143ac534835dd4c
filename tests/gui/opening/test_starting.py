"""Fillmark in processes of its own: started twice, killed, started again."""

from __future__ import annotations

import os
import resource
import subprocess
import sys
from pathlib import Path

from core.store.paths import DataFolder
from core.store.record import Record
from tests.gui.conftest import NOON

ROOT = Path(__file__).parents[3]
SCRIPT = Path(__file__).with_name("starting.py")
SOON_S = 2.0


SECOND = "import sys, pathlib; from gui.opening.start import main; sys.exit(main(pathlib.Path(sys.argv[1])))"


def surroundings() -> dict[str, str]:
    return {**os.environ, "PYTHONPATH": str(ROOT), "QT_QPA_PLATFORM": "offscreen"}


def test_a_second_start_raises_the_first_and_a_kill_loses_nothing(tmp_path: Path) -> None:
    opening = [sys.executable, str(SCRIPT), str(tmp_path)]
    first = subprocess.Popen(opening, env=surroundings(), stdout=subprocess.PIPE, text=True)
    try:
        assert first.stdout is not None
        assert first.stdout.readline() == "typed\n"
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        again = [sys.executable, "-c", SECOND, str(tmp_path)]
        second = subprocess.run(again, env=surroundings(), capture_output=True, text=True, check=False)
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        assert second.returncode == 0
        assert f"Fillmark is already open for {tmp_path}" in second.stderr
        assert first.stdout.readline() == "called\n"
        worked_s = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
        assert worked_s < SOON_S, "processor time, so that a busy machine does not count"
    finally:
        first.kill()
        first.communicate()
    with Record.open(DataFolder(tmp_path), lambda: NOON) as record:
        assert [thing.name for thing in record.house().things if thing.kind_id == "coal_bag"][-1] == "Coal bag 10 kg"
        assert record.undo_text == "Added Coal bag 10 kg"
