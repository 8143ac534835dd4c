"""A file is written whole or not at all, and nothing is overwritten unasked."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from core.errors import InputError
from core.paper.whole_file import write_whole

ROOT = Path(__file__).parents[3]


def test_a_file_is_written_with_nothing_beside_it(tmp_path: Path) -> None:
    write_whole(tmp_path / "a.pdf", b"whole")
    assert (tmp_path / "a.pdf").read_bytes() == b"whole"
    assert [path.name for path in tmp_path.iterdir()] == ["a.pdf"]
    assert (tmp_path / "a.pdf").stat().st_mode & 0o777 == 0o644


def test_what_is_there_stays_unless_it_may_be_replaced(tmp_path: Path) -> None:
    path = tmp_path / "a.pdf"
    path.write_bytes(b"old")
    with pytest.raises(InputError, match="is there already"):
        write_whole(path, b"new")
    assert path.read_bytes() == b"old"
    write_whole(path, b"new", replace=True)
    assert path.read_bytes() == b"new"


def test_a_folder_is_refused(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="is a folder"):
        write_whole(tmp_path, b"x", replace=True)


def test_a_folder_that_is_missing_is_told(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="cannot be written"):
        write_whole(tmp_path / "missing" / "a.pdf", b"x")


def test_someone_who_was_quicker_wins(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "a.pdf"
    monkeypatch.setattr(Path, "exists", lambda _: False)
    path.write_bytes(b"theirs")
    with pytest.raises(InputError, match="is there already"):
        write_whole(path, b"ours")
    assert path.read_bytes() == b"theirs"
    assert [found.name for found in tmp_path.iterdir()] == ["a.pdf"]


def test_a_disk_that_fails_leaves_the_old_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    path = tmp_path / "a.pdf"
    path.write_bytes(b"old")
    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(InputError, match="No space left on device"):
        write_whole(path, b"new", replace=True)
    assert path.read_bytes() == b"old"
    assert [found.name for found in tmp_path.iterdir()] == ["a.pdf"]


KILLED = """
import os, signal, sys
from pathlib import Path
from core.paper.whole_file import write_whole
os.fsync = lambda descriptor: os.kill(os.getpid(), signal.SIGKILL)
write_whole(Path(sys.argv[1]), b"new" * 100_000, replace=True)
"""


def test_a_kill_on_the_way_leaves_the_old_file(tmp_path: Path) -> None:
    path = tmp_path / "a.pdf"
    path.write_bytes(b"old")
    done = subprocess.run([sys.executable, "-c", KILLED, str(path)], cwd=ROOT, check=False)
    assert done.returncode == -signal.SIGKILL
    assert path.read_bytes() == b"old"
