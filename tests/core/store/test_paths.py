"""One window per data folder, and a lock that never outlives its window."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from core.store.faults import InUse
from core.store.paths import DataFolder, FolderLock

HOLD = """
import pathlib, sys, time
from core.store.paths import DataFolder, FolderLock
lock = FolderLock(DataFolder(pathlib.Path(sys.argv[1])))
print("locked", flush=True)
time.sleep(60)
"""


def test_the_folder_is_the_given_one_or_the_platforms_own(tmp_path: Path) -> None:
    assert DataFolder.chosen(tmp_path).folder == tmp_path
    assert DataFolder.chosen(Path("~/boat")).folder == Path.home() / "boat"
    own = DataFolder.chosen().folder
    assert own.name == "fillmark"
    assert own.is_relative_to(os.environ["XDG_DATA_HOME"])


def test_a_second_start_is_told_at_once_how_to_raise_the_first(data_dir: Path) -> None:
    folder = DataFolder(data_dir)
    with FolderLock(folder):
        begun = time.monotonic()
        with pytest.raises(InUse, match="already open .* use that window, or close it first") as refused:
            FolderLock(folder)
        assert time.monotonic() - begun < 2
        assert refused.value.socket_name == folder.socket_name


def test_a_lock_given_back_can_be_taken_again(data_dir: Path) -> None:
    folder = DataFolder(data_dir)
    lock = FolderLock(folder)
    lock.release()
    lock.release()
    with FolderLock(folder):
        pass


def test_after_a_kill_the_folder_is_free_at_once(data_dir: Path) -> None:
    folder = DataFolder(data_dir)
    with subprocess.Popen([sys.executable, "-c", HOLD, str(data_dir)], stdout=subprocess.PIPE) as holder:
        assert holder.stdout is not None
        assert holder.stdout.readline() == b"locked\n"
        with pytest.raises(InUse):
            FolderLock(folder)
        holder.send_signal(signal.SIGKILL)
        holder.wait()
        assert folder.lock_file.exists()
        FolderLock(folder).release()


def test_each_folder_has_a_socket_name_of_its_own(tmp_path: Path) -> None:
    one, other = DataFolder(tmp_path / "one"), DataFolder(tmp_path / "other")
    (tmp_path / "one").mkdir()
    (tmp_path / "link").symlink_to(tmp_path / "one")
    assert one.socket_name != other.socket_name
    assert one.socket_name == DataFolder(tmp_path / "link").socket_name
    assert len(one.socket_name) < 40
