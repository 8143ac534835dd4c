"""The shipped catalog: whole, in order, the same from its compiled form, and then without loading the schemas."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

from catalog.check import find_catalog_errors
from catalog.compiled import ROOT
from catalog.load import load_catalog, parse_catalog


def test_the_shipped_catalog_holds_no_fault() -> None:
    assert list(find_catalog_errors(parse_catalog())) == []


def test_everything_comes_sorted_by_id() -> None:
    catalog = parse_catalog()
    for entries in (catalog.exercises, catalog.kinds, catalog.materials, catalog.sources):
        ids = [entry.id for entry in entries]
        assert len(ids) > 20
        assert ids == sorted(ids)


def test_a_second_start_gives_the_same_catalog_from_the_compiled_form(tmp_path: Path) -> None:
    place = tmp_path / "catalog-data.json"
    first = load_catalog([place])
    assert place.exists()
    assert load_catalog([place]) == first == parse_catalog()


def test_a_start_from_the_compiled_form_does_without_schemas_and_toml(tmp_path: Path) -> None:
    place = tmp_path / "catalog-data.json"
    load_catalog([place])
    script = (
        "import sys; from pathlib import Path; from catalog.load import load_catalog\n"
        "assert len(load_catalog([Path(sys.argv[1])]).exercises) > 300\n"
        "print([name for name in ('pydantic', 'tomllib', 'platformdirs') if name in sys.modules])"
    )
    done = subprocess.run(
        [sys.executable, "-c", script, str(place)], cwd=ROOT, capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "[]"


def test_a_damaged_compiled_form_is_parsed_again_and_replaced(tmp_path: Path) -> None:
    place = tmp_path / "catalog-data.json"
    place.write_bytes(b"damaged")
    catalog = load_catalog([place])
    assert catalog == parse_catalog()
    assert len(place.read_bytes()) > 1000


def test_where_nothing_can_be_kept_the_catalog_still_loads(tmp_path: Path) -> None:
    blocked = tmp_path / "file"
    blocked.write_text("in the way", encoding="utf-8")
    second = tmp_path / "second.json"
    assert load_catalog([blocked / "a.json", second]) == load_catalog([second])
    assert load_catalog([blocked / "a.json"]).exercises
