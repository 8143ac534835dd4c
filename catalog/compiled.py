"""The checked catalog kept in compiled form beside Python's own compiled files, so that a start need not parse TOML.

The first line of the file is the fingerprint of everything it was made from, the second that of its content; a file
that does not match both, or cannot be read, is left aside and the data is parsed again.
"""

from __future__ import annotations

import gc
import hashlib
import importlib.util
import json
import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from catalog.rows import Packer, Unpacker
from core.knowledge import Catalog

ROOT = Path(__file__).parents[1]
FILE_NAME = "catalog-data.json"
MADE_FROM = (
    *("catalog", "catalog/exercises", "catalog/things"),
    *("core/assess", "core/exercise", "core/house", "core/mass", "core/quantity", "core/things"),
)
ENDINGS = (".toml", ".py")


def fingerprint(root: Path = ROOT) -> str:
    """SHA-256 over the names and bytes of the data files and of the code that reads them."""
    digest = hashlib.sha256()
    for folder in MADE_FROM:
        path = os.path.join(root, folder)  # noqa: PTH118 - pathlib takes 3 ms of a 40 ms start here
        for name in sorted(os.listdir(path)):  # noqa: PTH208 - the same
            if name.endswith(ENDINGS):
                with open(os.path.join(path, name), "rb") as file:  # noqa: PTH118, PTH123 - the same
                    content = file.read()
                digest.update(f"{folder}/{name} {len(content)}\n".encode())
                digest.update(content)
    return digest.hexdigest()


def places() -> Iterator[Path]:
    """Where the compiled file may be: with Python's compiled files, else the platform's folder for caches."""
    yield Path(importlib.util.cache_from_source(__file__)).with_name(FILE_NAME)
    from platformdirs import user_cache_path  # only needed where the program's own folder cannot be written

    yield user_cache_path("fillmark", appauthor=False) / FILE_NAME


def read_compiled(path: Path, key: str) -> Catalog | None:
    """The catalog kept at `path`, or None if there is none made from exactly `key` in good order."""
    try:
        first, second, body = path.read_bytes().split(b"\n", 2)
    except (OSError, ValueError):
        return None
    if first != key.encode() or second != hashlib.sha256(body).hexdigest().encode():
        return None
    try:
        return _unpacked(body)
    except (ValueError, TypeError, KeyError, IndexError):
        return None  # made by another version of the classes: parse again


def _unpacked(body: bytes) -> Catalog:
    pool, root = json.loads(body)
    read = Unpacker(pool).reader(Catalog)
    found = read(root) if read is not None else None
    if not isinstance(found, Catalog):
        raise TypeError("a compiled file holds one catalog")
    return found


def write_compiled(path: Path, key: str, catalog: Catalog) -> bool:
    """Keep `catalog` at `path`, whole or not at all; False if the place cannot be written, which costs only time."""
    packer = Packer()
    root = packer.packed(catalog)
    body = json.dumps([packer.pool, root], ensure_ascii=False, allow_nan=False, separators=(",", ":")).encode()
    content = b"\n".join((key.encode(), hashlib.sha256(body).hexdigest().encode(), body))
    unfinished = path.with_name(f"{path.name}.{os.getpid()}")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        unfinished.write_bytes(content)
        unfinished.replace(path)
    except OSError:
        with suppress(OSError):  # most likely it was never begun, or the whole place is gone
            unfinished.unlink()
        return False
    return True


@contextmanager
def collector_paused() -> Iterator[None]:
    """No search for garbage meanwhile: among thousands of new objects that all stay it only costs time."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()
