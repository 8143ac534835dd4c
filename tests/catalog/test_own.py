"""Own movements and kinds of things: checked like shipped ones, told in sentences, and in one catalog with them."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from catalog.check import find_catalog_errors
from catalog.errors import CatalogFaults
from catalog.household.load import read_household
from catalog.household.write import write_household
from catalog.load import load_catalog
from catalog.own import own_exercise, own_kind, shipped, table_of, with_own, with_usable_own
from catalog.own_forms import OWN_SOURCE, own_id
from core.errors import InputError
from core.exercise.model import Pattern
from core.house.model import House
from core.house.own import OWN_PREFIX, OwnEntry, OwnKind
from core.house.wishes import Pin, WeekWishes
from core.store.codec_own import OWN
from core.things.quick_add import ReadThing, make_thing, read_things
from tests.core.store.examples import INES

CATALOG = load_catalog()
LOCK_BEAM_PUSH: dict[str, Any] = {
    "name": "Lock beam push",
    "patterns": {"push_level": 1.0, "lunge": 0.4},
    "muscles": {"quads": 1.0, "chest": 0.6},
    "dose": "time",
    "posture": "standing",
    "body": {"share": 0.6, "basis": "ordinal"},
    "level": 3,
    "rep_s": 1.0,
    "typical": [20.0, 60.0],
    "outdoors_only": True,
}
FEED_SACK: dict[str, Any] = {
    "name": "Feed sack",
    "form": "sack",
    "mass_kg": [12.5, 0.3],
    "length_cm": 55.0,
    "width_cm": 35.0,
    "height_cm": 14.0,
    "closure": "sealed",
    "rigidity": "soft",
}
SCUTTLE: dict[str, Any] = {
    "name": "Coal scuttle",
    "form": "vessel",
    "icon": "bucket",
    "litres": [12.0, 0.5],
    "brimful": [1.05, 0.02],
    "tare_kg": [1.1, 0.1],
    "shape": {"form": "tapered", "top_cm": 30.0, "bottom_cm": 22.0, "height_cm": 24.0},
    "length_cm": 31.0,
    "width_cm": 31.0,
    "height_cm": 26.0,
    "closure": "open",
    "fills": "open",
    "cautions": ["A small child can drown in a bucket of water; empty it after use."],
}


def refusal(make: Any, table: dict[str, Any]) -> tuple[str, ...]:
    with pytest.raises(CatalogFaults) as told:
        make(table, CATALOG)
    return told.value.sentences


def test_an_own_movement_stands_in_the_catalog_like_a_shipped_one() -> None:
    entry = own_exercise(LOCK_BEAM_PUSH, CATALOG)
    assert (entry.kind, entry.id, entry.name) == (OwnKind.EXERCISE, "own_lock_beam_push", "Lock beam push")
    merged = with_own(CATALOG, [entry])
    made = merged.exercise_by_id[entry.id]
    assert made.patterns == ((Pattern.PUSH_LEVEL, 1.0), (Pattern.LUNGE, 0.4))
    assert made.outdoors_only
    assert len(merged.exercises) == len(CATALOG.exercises) + 1
    assert [one.id for one in merged.exercises] == sorted(one.id for one in merged.exercises)
    assert list(find_catalog_errors(merged)) == []


def test_an_own_kind_of_thing_is_found_by_what_is_typed() -> None:
    merged = with_own(CATALOG, [own_kind(FEED_SACK, CATALOG)])
    (read,) = read_things("2 feed sacks", merged.kinds)
    assert isinstance(read, ReadThing)
    kind = merged.kind_by_id["own_feed_sack"]
    assert (kind.group, kind.icon) == ("own", "other")
    assert kind.source_ids == (OWN_SOURCE.id,)
    assert OWN_SOURCE in merged.sources
    assert list(find_catalog_errors(merged)) == []


def test_an_own_vessel_can_be_filled_with_what_goes_into_its_opening() -> None:
    kind = with_own(CATALOG, [own_kind(SCUTTLE, CATALOG)]).kind_by_id["own_coal_scuttle"]
    assert kind.facts.container is not None
    assert kind.facts.container.brimful_l.value == pytest.approx(12.6)
    assert "water" in kind.fills
    assert "fills: “lake”" in refusal(own_kind, {**SCUTTLE, "fills": "lake"})[0]


def test_what_is_entered_is_kept_in_one_form_and_can_be_edited() -> None:
    entry = own_exercise(LOCK_BEAM_PUSH, CATALOG)
    assert own_exercise(dict(reversed(LOCK_BEAM_PUSH.items())), CATALOG) == entry
    merged = with_own(CATALOG, [entry])
    assert own_exercise(table_of(entry), merged) == entry
    harder = own_exercise({**table_of(entry), "level": 4, "name": "Lock gate push"}, merged)
    assert (harder.id, harder.name) == (entry.id, "Lock gate push")
    assert with_own(CATALOG, [harder]).exercise_by_id[entry.id].level == 4
    assert OWN.read(OWN.checked(entry), "") == entry


def test_a_second_entry_of_a_name_gets_another_id() -> None:
    taken = {"own_feed_sack", "own_feed_sack_2"}
    assert own_id("Feed sack", taken) == "own_feed_sack_3"
    assert own_id("漢", {"own_entry"}) == "own_entry_2"
    assert len(own_id("x" * 200, ())) <= 60


def test_neighbours_are_linked_both_ways() -> None:
    table = {**LOCK_BEAM_PUSH, "easier": ["push_up"], "harder": []}
    shipped = CATALOG.exercise_by_id["push_up"]
    entry = own_exercise({**table, "level": shipped.level + 1}, CATALOG)
    merged = with_own(CATALOG, [entry])
    assert entry.id in merged.exercise_by_id["push_up"].harder
    assert merged.exercise_by_id[entry.id].easier == ("push_up",)
    assert entry.id not in CATALOG.exercise_by_id["push_up"].harder
    again = own_exercise({**table_of(entry), "easier": []}, merged)
    assert with_own(CATALOG, [again]).exercise_by_id["push_up"] == shipped


def test_an_own_neighbour_that_was_removed_since_is_left_out() -> None:
    first = own_exercise(LOCK_BEAM_PUSH, CATALOG)
    merged = with_own(CATALOG, [first])
    second = own_exercise({**LOCK_BEAM_PUSH, "name": "Winch turn", "easier": [first.id]}, merged)
    assert with_own(CATALOG, [second]).exercise_by_id[second.id].easier == ()


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"name": ""}, "name: “” is refused: String should have at least 2 characters; correct it."),
        ({"level": 9}, "level: “9” is refused: should be less than or equal to 5; correct it."),
        ({"colour": "red"}, "colour: “red” is refused: Extra inputs are not permitted; remove the field"),
        ({"typical": [60.0, 20.0]}, "typical must be low, high"),
        ({"body": None}, "body: “None” is refused"),
        ({"aliases": ["press-up"]}, "“press-up” already means Push-up; choose another name."),
        ({"rep_s": 4.0}, "Rep_s must be 1 where time is counted; change one of them."),
        ({"name": "Push-up"}, "“Push-up” already means Push-up; choose another name."),
        ({"easier": ["moon_walk"]}, "“moon_walk” is named as easier, but there is no such movement; choose another."),
        ({"level": 1, "harder": ["push_up"], "easier": []}, "too far above level 1"),
        ({"patterns": {"squat": 1.0, "hinge": 1.0}}, "one pattern must weigh more than the others"),
    ],
)
def test_a_movement_that_cannot_be_is_refused_in_sentences(change: dict[str, Any], words: str) -> None:
    sentences = refusal(own_exercise, {**LOCK_BEAM_PUSH, **change})
    assert any(words in sentence for sentence in sentences), sentences
    assert all(sentence.endswith(".") and "\n" not in sentence for sentence in sentences)


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"mass_kg": [900.0, 1.0]}, "mass kg.0: “900.0” is refused: should be less than or equal to 400"),
        ({"mass_kg": [120.0, 1.0]}, "120 kg is more than anyone lifts; check mass_kg."),
        ({"length_cm": None}, "length_cm, width_cm and height_cm come together"),
        ({"sources": {}}, "an own entry names no sources: it is your word"),
        ({"icon": "castle"}, "There is no picture “castle”"),
        ({"name": "Kitchen chair"}, "already means"),
        ({"hazards": ["sharp"]}, "Sharp needs a caution; add one."),
    ],
)
def test_a_kind_that_cannot_be_is_refused_in_sentences(change: dict[str, Any], words: str) -> None:
    sentences = refusal(own_kind, {**FEED_SACK, **change})
    assert any(words in sentence for sentence in sentences), sentences


def test_signs_that_turn_the_writing_are_refused() -> None:
    with pytest.raises(InputError, match="holds characters that cannot be shown"):
        own_kind({**FEED_SACK, "name": "Feed\u202esack"}, CATALOG)


def test_shipped_ids_can_not_be_taken() -> None:
    assert not [one for one in (*CATALOG.exercise_by_id, *CATALOG.kind_by_id) if one.startswith(OWN_PREFIX)]
    with pytest.raises(InputError, match="should match pattern"):
        own_exercise({**LOCK_BEAM_PUSH, "id": "push_up"}, CATALOG)
    one = own_kind(FEED_SACK, CATALOG)
    with pytest.raises(InputError, match="has the id own_feed_sack, which another entry has"):
        with_own(CATALOG, [one, one])


def test_an_entry_that_cannot_be_read_is_left_out_and_named() -> None:
    good = own_exercise(LOCK_BEAM_PUSH, CATALOG)
    bad = OwnEntry(kind=OwnKind.THING, id="own_odd", name="Odd", table='{"form":"cloud"}')
    merged, faults = with_usable_own(CATALOG, [bad, good])
    assert good.id in merged.exercise_by_id
    assert bad.id not in merged.kind_by_id
    assert ["Odd" in str(fault) and "\n" not in str(fault) for fault in faults] == [True]
    with pytest.raises(InputError, match="Odd"):
        with_own(CATALOG, [bad])


def test_without_own_entries_the_catalog_is_the_same_object() -> None:
    assert with_own(CATALOG, ()) is CATALOG
    assert with_own(replace(CATALOG), []).sources == CATALOG.sources


def test_merging_again_replaces_all_own_entries() -> None:
    one, other = (
        own_exercise({**LOCK_BEAM_PUSH, "easier": ["push_up"], "level": 4}, CATALOG),
        own_kind(FEED_SACK, CATALOG),
    )
    assert with_own(with_own(CATALOG, [one]), [other]) == with_own(CATALOG, [other])
    assert shipped(with_own(CATALOG, [one, other])).exercises == CATALOG.exercises
    assert shipped(CATALOG) is CATALOG


def test_a_household_file_holds_own_entries_and_may_mention_them() -> None:
    own = (own_exercise(LOCK_BEAM_PUSH, CATALOG), own_kind(FEED_SACK, CATALOG))
    merged = with_own(CATALOG, own)
    (read,) = read_things("2 feed sacks", merged.kinds)
    assert isinstance(read, ReadThing)
    house = House(name="Dipper", things=(make_thing(read, "sacks"),), people=(INES,), own=own)
    wishes = {"ines": WeekWishes(pins=(Pin(weekday=1, exercise_id="own_lock_beam_push"),))}
    text = write_household(house, wishes, CATALOG)
    assert '"2 Feed sack"' in text
    assert "[[own_movements]]" in text
    assert "[[own_kinds]]" in text
    assert "sources" not in text
    found = read_household(text, "dipper.toml", CATALOG)
    assert (found.house, found.wishes) == (house, wishes)
    assert write_household(house, wishes, merged) == text


def test_own_entries_in_a_file_need_no_id_and_are_refused_by_name() -> None:
    head = 'fillmark = 1\n[[own_kinds]]\nname = "Feed sack"\nform = "sack"\n'
    head += "length_cm = 55\nwidth_cm = 35\nheight_cm = 14\n"
    found = read_household(f"{head}mass_kg = [12.5, 0.3]\n", "home.toml", CATALOG).house.own
    assert [(entry.id, entry.name) for entry in found] == [("own_feed_sack", "Feed sack")]
    for text, words in (
        (f"{head}mass_kg = 12\n", r"own_kinds number 1 \(Feed sack\), field mass_kg"),
        (f'{head}id = "chair"\n', r"own_kinds number 1 \(Feed sack\), field id"),
        (f"{head}{head.removeprefix('fillmark = 1')}", "has the id own_feed_sack, which another entry has"),
    ):
        with pytest.raises(CatalogFaults, match=words):
            read_household(text, "home.toml", CATALOG)
