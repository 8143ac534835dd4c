"""Copies of catalog entries: all but what belongs to the original alone, good as they stand under a new name."""

from __future__ import annotations

import pytest

from catalog.load import load_catalog
from catalog.own import own_exercise, own_kind, with_own
from catalog.own_copy import ITS_OWN, copied
from core.errors import InputError
from core.house.own import OwnKind

CATALOG = load_catalog()


@pytest.mark.parametrize("exercise_id", [exercise.id for exercise in CATALOG.exercises[::60]])
def test_a_copied_movement_is_as_good_as_the_original(exercise_id: str) -> None:
    table = copied(OwnKind.EXERCISE, exercise_id, ())
    assert not set(table) & set(ITS_OWN)
    entry = own_exercise({**table, "name": "Quite another movement"}, CATALOG)
    made, original = with_own(CATALOG, [entry]).exercise_by_id[entry.id], CATALOG.exercise_by_id[exercise_id]
    assert (made.needs, made.demands, made.cues, made.typical) == (
        original.needs,
        original.demands,
        original.cues,
        original.typical,
    )
    assert dict(made.patterns) == dict(original.patterns)


@pytest.mark.parametrize("kind_id", [kind.id for kind in CATALOG.kinds[::20]])
def test_a_copied_kind_is_as_good_as_the_original(kind_id: str) -> None:
    table = copied(OwnKind.THING, kind_id, ())
    entry = own_kind({**table, "name": "Quite another thing"}, CATALOG)
    made = with_own(CATALOG, [entry]).kind_by_id[entry.id]
    assert made.facts.form is CATALOG.kind_by_id[kind_id].facts.form
    assert made.fills == CATALOG.kind_by_id[kind_id].fills


def test_an_own_entry_is_copied_too() -> None:
    first = own_exercise({**copied(OwnKind.EXERCISE, "push_up", ()), "name": "Gate push", "level": 3}, CATALOG)
    table = copied(OwnKind.EXERCISE, first.id, (first,))
    assert table["level"] == 3
    assert "id" not in table


def test_a_copy_of_nothing_is_refused() -> None:
    with pytest.raises(InputError, match="is no entry of the catalog; copy another one"):
        copied(OwnKind.THING, "moon", ())
