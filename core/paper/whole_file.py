"""Writing a file whole or not at all: beside its place first, then put there in one step."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path

from core.errors import InputError

MODE = 0o644


def write_whole(path: Path, content: bytes, *, replace: bool = False) -> None:
    """Write `content` to `path`; `InputError` if something is there (unless `replace`) or it cannot be written.

    A crash, a full disk or a kill leaves either the old state or the new file, and at worst a temporary one beside it.
    """
    place = path.expanduser()
    if place.is_dir():
        raise InputError(path, "is a folder", "give the name of a file in it")
    if place.exists() and not replace:
        raise _there(path)
    try:
        _write(place, content, replace=replace)
    except FileExistsError as error:
        raise _there(path) from error
    except OSError as error:
        why = error.strerror or str(error)
        raise InputError(path, f"cannot be written ({why})", "choose another folder or make room") from error


def _there(path: Path) -> InputError:
    return InputError(path, "is there already", "choose another name, or allow it to be replaced")


def _write(place: Path, content: bytes, *, replace: bool) -> None:
    descriptor, name = tempfile.mkstemp(prefix=f".{place.name[:40]}.", suffix=".part", dir=place.parent)
    beside = Path(name)
    try:
        with os.fdopen(descriptor, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        beside.chmod(MODE)
        if replace:
            beside.replace(place)
        else:
            _put_if_free(beside, place)
    finally:
        beside.unlink(missing_ok=True)


def _put_if_free(beside: Path, place: Path) -> None:
    """Give the finished file its name unless someone took it meanwhile."""
    try:
        place.hardlink_to(beside)
    except FileExistsError:
        raise
    except OSError:
        # Some file systems have no hard links; then the earlier look is all there is.
        beside.replace(place)
