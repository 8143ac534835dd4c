"""The compiled catalog is used only when it was made from exactly these files and is in good order."""

from __future__ import annotations

import os
import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from catalog.compiled import MADE_FROM, ROOT, fingerprint, places, read_compiled, write_compiled
from core.knowledge import Catalog, Source

CATALOG = Catalog(
    exercises=(), kinds=(), materials=(), sources=(Source(id="a", citation="Water, 4 °C: 1000", kind="exact"),)
)


@pytest.fixture
def kept(tmp_path: Path) -> Path:
    path = tmp_path / "deep" / "catalog-data.json"
    assert write_compiled(path, "key", CATALOG)
    return path


def test_what_was_kept_is_read_back(kept: Path) -> None:
    assert read_compiled(kept, "key") == CATALOG
    assert [path.name for path in kept.parent.iterdir()] == [kept.name]


def test_another_key_is_not_read(kept: Path) -> None:
    assert read_compiled(kept, "other") is None


def test_a_missing_file_is_not_read(tmp_path: Path) -> None:
    assert read_compiled(tmp_path / "none.json", "key") is None


@pytest.mark.parametrize("cut", [0, 1, 3, 10, 60, 100, -1])
def test_a_cut_file_is_not_read(kept: Path, cut: int) -> None:
    kept.write_bytes(kept.read_bytes()[:cut])
    assert read_compiled(kept, "key") is None


def test_a_changed_content_is_not_read(kept: Path) -> None:
    kept.write_bytes(kept.read_bytes().replace(b"1000", b"1100"))
    assert read_compiled(kept, "key") is None


def test_content_of_other_classes_is_not_read(kept: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for content in ({"is": "Catalog"}, {"is": "Shelf"}, {"is": "Catalog", "exercises": 3}, [1], 7, None, "a"):
        with monkeypatch.context() as patch:
            patch.setattr("catalog.rows.Packer.packed", lambda *_, content=content: content)
            assert write_compiled(kept, "key", CATALOG)
        assert read_compiled(kept, "key") is None, content


def test_keeping_again_replaces_the_whole_file(kept: Path) -> None:
    other = replace(CATALOG, sources=())
    assert write_compiled(kept, "new", other)
    assert read_compiled(kept, "key") is None
    assert read_compiled(kept, "new") == other


def test_a_place_that_cannot_be_written_is_reported_and_left_clean(tmp_path: Path) -> None:
    blocked = tmp_path / "file"
    blocked.write_text("in the way", encoding="utf-8")
    assert not write_compiled(blocked / "catalog-data.json", "key", CATALOG)
    assert [path.name for path in tmp_path.iterdir()] == ["file"]


def test_the_fingerprint_changes_with_every_data_file_and_every_module_that_reads_them(tmp_path: Path) -> None:
    for folder in MADE_FROM:
        shutil.copytree(ROOT / folder, tmp_path / folder, dirs_exist_ok=True)
    seen = {fingerprint(tmp_path)}
    assert seen == {fingerprint(ROOT)}
    for name in ("catalog/sources.toml", "catalog/exercises/squat.toml", "catalog/materials.py", "core/mass/model.py"):
        path = tmp_path / name
        path.write_bytes(path.read_bytes() + b"\n")
        seen.add(fingerprint(tmp_path))
    (tmp_path / "catalog/exercises/squat.toml").rename(tmp_path / "catalog/exercises/squats.toml")
    seen.add(fingerprint(tmp_path))
    assert len(seen) == 6


def test_the_first_place_is_beside_pythons_own_compiled_files_and_the_second_for_caches() -> None:
    first, second = places()
    assert first.parent.name == "__pycache__"
    assert first.name == second.name
    assert "fillmark" in second.parts


def test_two_starts_at_once_never_leave_half_a_file(kept: Path) -> None:
    """Each of two processes keeps the file again and again; whoever reads meanwhile finds a whole one."""
    children = []
    for _ in range(2):
        child = os.fork()
        if child == 0:
            ended = all(write_compiled(kept, "key", CATALOG) for _ in range(100))
            os._exit(0 if ended else 1)
        children.append(child)
    read = [read_compiled(kept, "key") for _ in range(200)]
    assert [os.waitpid(child, 0)[1] for child in children] == [0, 0]
    assert read == [CATALOG] * 200
    assert [path.name for path in kept.parent.iterdir()] == [kept.name]
