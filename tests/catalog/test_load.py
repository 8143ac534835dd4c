"""The shipped catalog: whole, in order, the same from its compiled form, and then without loading the schemas."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from catalog.check import find_catalog_errors
from catalog.compiled import ROOT, write_compiled
from catalog.load import load_catalog, parse_catalog
from core.knowledge import Catalog


@pytest.fixture(scope="module")
def parsed() -> Catalog:
    return parse_catalog()


@pytest.fixture
def parsed_once(parsed: Catalog, monkeypatch: pytest.MonkeyPatch) -> None:
    """Parsing takes most of a second; what a load does around it is the question here."""
    monkeypatch.setattr("catalog.load.parse_catalog", lambda: parsed)


def test_the_shipped_catalog_holds_no_fault(parsed: Catalog) -> None:
    assert list(find_catalog_errors(parsed)) == []


def test_everything_comes_sorted_by_id(parsed: Catalog) -> None:
    for entries in (parsed.exercises, parsed.kinds, parsed.materials, parsed.sources):
        ids = [entry.id for entry in entries]
        assert len(ids) > 20
        assert ids == sorted(ids)


def test_a_second_start_gives_the_same_catalog_from_the_compiled_form(tmp_path: Path, parsed: Catalog) -> None:
    place = tmp_path / "catalog-data.json"
    first = load_catalog([place])
    assert place.exists()
    assert load_catalog([place]) == first == parsed


START_FROM_COMPILED = """
import sys
from pathlib import Path
import catalog.load
catalog.load.fingerprint()
catalog.load.fingerprint = lambda: "one state of the files"
assert len(catalog.load.load_catalog([Path(sys.argv[1])]).exercises) > 300
print([name for name in ("pydantic", "tomllib", "platformdirs") if name in sys.modules])
"""


def test_a_start_from_the_compiled_form_does_without_schemas_and_toml(tmp_path: Path, parsed: Catalog) -> None:
    """The key is given: an edit to a file between the two loads must not make the second one parse."""
    place = tmp_path / "catalog-data.json"
    assert write_compiled(place, "one state of the files", parsed)
    done = subprocess.run(
        [sys.executable, "-c", START_FROM_COMPILED, str(place)], cwd=ROOT, capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "[]"


def test_a_damaged_compiled_form_is_parsed_again_and_replaced(
    tmp_path: Path, parsed_once: None, parsed: Catalog
) -> None:
    place = tmp_path / "catalog-data.json"
    place.write_bytes(b"damaged")
    assert load_catalog([place]) is parsed
    assert len(place.read_bytes()) > 1000


def test_where_nothing_can_be_kept_the_catalog_still_loads(tmp_path: Path, parsed_once: None) -> None:
    blocked = tmp_path / "file"
    blocked.write_text("in the way", encoding="utf-8")
    second = tmp_path / "second.json"
    assert load_catalog([blocked / "a.json", second]) == load_catalog([second])
    assert load_catalog([blocked / "a.json"]).exercises
