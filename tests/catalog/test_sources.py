"""Sources are read, sorted and checked."""

from __future__ import annotations

import pytest

from catalog.sources import find_source_errors, load_sources
from core.errors import InputError

VALID = """
[[source]]
id = "someone_2020"
citation = "Someone 2020, Journal of Examples 1:1-2."
kind = "measured"
"""


def test_a_valid_source_is_read_as_written() -> None:
    (source,) = load_sources(VALID)
    assert (source.id, source.kind, source.url) == ("someone_2020", "measured", "")


def test_shipped_sources_are_sorted_and_named_once() -> None:
    ids = [source.id for source in load_sources()]
    assert ids == sorted(set(ids))
    assert len(ids) >= 30


@pytest.mark.parametrize(
    ("old", "new", "field"),
    [
        ('kind = "measured"', 'kind = "true"', "kind"),
        ('kind = "measured"', 'kind = "measured"\nurl = "javascript:alert(1)"', "url"),
        ('id = "someone_2020"', 'id = "2020"', "id"),
        ("Someone 2020, Journal of Examples 1:1-2.", "?", "citation"),
        ('kind = "measured"', 'kind = "measured"\nauthor = "x"', "author"),
    ],
)
def test_a_broken_source_is_named_by_entry_and_field(old: str, new: str, field: str) -> None:
    with pytest.raises(InputError, match=f"sources: entry .*, field {field}"):
        load_sources(VALID.replace(old, new))


def test_an_id_used_twice_is_a_fault() -> None:
    assert list(find_source_errors(VALID + VALID)) == [
        "sources: entry someone_2020, field id: “someone_2020” is used twice"
    ]
