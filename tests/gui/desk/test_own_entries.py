"""The desk's catalog follows the household's own entries, at opening and after every change of them."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QObject

from catalog.own import own_exercise, own_kind
from core.house.own import OwnEntry, OwnKind
from core.knowledge import Catalog
from core.store.commands import AddOwn, ChangeOwn, RemoveOwn
from core.store.values import ChangeSet, Kind
from gui.desk.desk import Desk

LOCK_BEAM_PUSH: dict[str, Any] = {
    "name": "Lock beam push",
    "patterns": {"push_level": 1.0},
    "muscles": {"quads": 1.0},
    "dose": "time",
    "posture": "standing",
    "body": {"share": 0.6, "basis": "ordinal"},
    "level": 3,
    "rep_s": 1.0,
    "typical": [20.0, 60.0],
}


def test_an_own_movement_is_in_the_catalog_when_the_change_is_told(desk: Desk) -> None:
    entry = own_exercise(LOCK_BEAM_PUSH, desk.catalog)
    told: list[tuple[bool, bool]] = []

    def note(change: ChangeSet) -> None:
        told.append((Kind.CATALOG in change.kinds, entry.id in desk.catalog.exercise_by_id))

    desk.changed.connect(note)
    assert desk.do(AddOwn(entry))
    desk.undo()
    desk.redo()
    assert desk.do(RemoveOwn(entry.id))
    assert told == [(True, True), (True, False), (True, True), (True, False)]


def test_a_changed_kind_is_the_one_that_is_found(desk: Desk) -> None:
    table = {
        "name": "Rope fender",
        "form": "bag",
        "mass_kg": [4.5, 0.5],
        "length_cm": 60.0,
        "width_cm": 20.0,
        "height_cm": 20.0,
    }
    entry = own_kind(table, desk.catalog)
    assert desk.do(AddOwn(entry))
    assert desk.do(ChangeOwn(own_kind({**table, "id": entry.id, "name": "Tyre fender"}, desk.catalog)))
    assert desk.catalog.kind_by_id[entry.id].name == "Tyre fender"


def test_another_change_leaves_the_catalog_as_it_is(desk: Desk, catalog: Catalog) -> None:
    before = desk.catalog
    desk.choose_person("tomas")
    assert desk.catalog is before


def test_an_entry_that_cannot_be_used_is_named_and_everything_else_works(desk: Desk, catalog: Catalog) -> None:
    assert desk.do(AddOwn(OwnEntry(kind=OwnKind.THING, id="own_odd", name="Odd")))
    assert desk.do(AddOwn(own_exercise(LOCK_BEAM_PUSH, desk.catalog)))
    again = Desk(desk.record, catalog, lambda: None, QObject())  # type: ignore[arg-type, return-value]  # the demo is not asked for
    for one in (desk, again):
        assert "own_lock_beam_push" in one.catalog.exercise_by_id
        assert [sentence.startswith("“Odd” has") for sentence in one.unusable_own()] == [True]
