"""Making files survive a power cut, and telling plainly when the system refuses."""

from __future__ import annotations

import contextlib
import os
from collections.abc import Iterator
from pathlib import Path

from core.store.faults import FolderUnusable


def sync_file(path: Path) -> None:
    """Make the contents of a file survive a power cut."""
    descriptor = os.open(path, os.O_RDWR)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)


def sync_folder(folder: Path) -> None:
    """Make a rename in this folder survive a power cut, where the system lets a folder be synced."""
    if os.name == "nt":
        return
    descriptor = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)


@contextlib.contextmanager
def disk_told(folder: Path) -> Iterator[None]:
    """Turn what the system says about files into a `StoreError` with one sentence."""
    try:
        yield
    except OSError as error:
        raise FolderUnusable(folder, error.strerror or str(error)) from error
