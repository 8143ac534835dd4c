"""Every value reads back equal, every field is written, and anything else is refused by name."""

from __future__ import annotations

import dataclasses
import json
import typing
from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.errors import InputError
from core.store import codec, codec_own, codec_people
from core.store.changes import HOUSE_FACTS, Change, Part, read_changes, write_changes
from core.store.contents import CONTENTS, Contents
from core.store.encoding import Codec
from core.store.encoding_groups import TAG
from core.store.json_text import from_text, to_text
from tests.core.mass.examples import SHAPES
from tests.core.store import strategies
from tests.core.store.examples import COAL_BAG, INES, LOCK_STEPS, LOCK_WALK, SESSION, WATER_CARRIER, WISHES

CASES: tuple[tuple[Codec[Any], st.SearchStrategy[Any]], ...] = (
    (codec.MEASURED, strategies.measured),
    (codec.SHAPE, SHAPES),
    (codec.CONTAINER, strategies.containers),
    (codec.LEVEL, strategies.levels),
    (codec.READING, strategies.readings),
    (codec.FACTS, strategies.facts),
    (codec.THING, strategies.things()),
    (codec_people.PERSON, strategies.people()),
    (codec_people.PLACE, strategies.places()),
    (codec_people.WISHES, strategies.wishes()),
    (codec_people.SAVED_WEEK, strategies.weeks),
    (codec_people.SAVED_BLOCK, strategies.blocks),
    (codec_people.SETTINGS, strategies.settings()),
    (codec_people.SESSION, strategies.sessions()),
    (codec_people.TEST, strategies.results_of()),
    (HOUSE_FACTS, strategies.house_facts),
    (codec_own.OWN, strategies.own_entries()),
)


@pytest.mark.parametrize(("one", "values"), CASES)
@given(st.data())
@settings(max_examples=25)
def test_every_value_reads_back_equal_through_text(
    one: Codec[Any], values: st.SearchStrategy[Any], data: st.DataObject
) -> None:
    value = data.draw(values)
    assert one.read(from_text(to_text(one.checked(value)), ""), "") == value


@settings(max_examples=10)
@given(strategies.things(), strategies.things())
def test_changes_read_back_equal(before: object, after: Any) -> None:
    change = Change(part=Part.THING, id=after.id, before=before, after=after, stood=3)  # type: ignore[arg-type]  # drawn as a thing
    assert read_changes(write_changes([change, change.reversed()]), "") == (change, change.reversed())


def test_a_change_turned_round_twice_is_itself() -> None:
    change = Change(part=Part.THING, id="coal_bag", before=None, after=COAL_BAG, stands=4)
    assert change.reversed() != change
    assert change.reversed().reversed() == change


def test_every_field_of_every_value_is_written() -> None:
    written = set(_written(CONTENTS.schema))
    for made in _reachable(Contents):
        assert frozenset({TAG, *(field.name for field in dataclasses.fields(made) if field.init)}) in written, made


def _written(schema: Any) -> Iterator[frozenset[str]]:
    """The fields of every object in a schema."""
    if isinstance(schema, dict) and "properties" in schema:
        yield frozenset(schema["properties"])
    inner = schema.values() if isinstance(schema, dict) else schema if isinstance(schema, list) else ()
    for part in inner:
        yield from _written(part)


def _reachable(hint: Any) -> Iterator[Any]:
    """Every dataclass that a value of this type can hold."""
    if dataclasses.is_dataclass(hint):
        yield hint
        for inner in typing.get_type_hints(hint).values():
            yield from _reachable(inner)
    for inner in typing.get_args(hint):
        yield from _reachable(inner)


def _spots(document: Any, path: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    """The way to every value inside a document."""
    inner = (
        document.items() if isinstance(document, dict) else enumerate(document) if isinstance(document, list) else ()
    )
    return [path] * bool(path) + [spot for key, value in inner for spot in _spots(value, (*path, key))]


def _changed(document: Any, path: tuple[str | int, ...], value: object) -> Any:
    copy = json.loads(json.dumps(document))
    inner = copy
    for key in path[:-1]:
        inner = inner[key]
    inner[path[-1]] = value
    return copy


def _try(one: Codec[Any], document: object) -> tuple[InputError | None, object]:
    try:
        return None, one.read(document, "entry")
    except InputError as fault:
        return fault, None


DOCUMENTS = (
    (codec.THING, WATER_CARRIER),
    (codec.THING, LOCK_STEPS),
    (codec_people.PERSON, INES),
    (codec_people.WISHES, WISHES),
    (codec_people.SESSION, SESSION),
    (codec_own.OWN, LOCK_WALK),
)
ODD: tuple[object, ...] = (
    None,
    True,
    -1,
    7.5,
    1e300,
    float("inf"),
    float("nan"),
    "",
    "nonsense",
    "\ud800",
    "a\u202eb",
    [],
    [[]],
    {},
    {"is": "x"},
)


@pytest.mark.parametrize(("one", "value"), DOCUMENTS)
@pytest.mark.parametrize("odd", ODD, ids=repr)
def test_an_odd_value_is_kept_whole_or_refused_by_name(one: Codec[Any], value: object, odd: object) -> None:
    document = one.write(value)
    for spot in _spots(document):
        fault, read = _try(one, _changed(document, spot, odd))
        if fault is None:
            assert one.read(one.checked(read), "entry") == read
        else:
            assert fault.where.startswith("entry")
            assert "\n" not in str(fault)


@pytest.mark.parametrize(("one", "value"), DOCUMENTS)
def test_a_missing_or_unknown_field_is_refused_by_name(one: Codec[Any], value: object) -> None:
    document: Any = one.write(value)
    for name in one.schema["required"]:  # type: ignore[attr-defined]  # the schema of an object
        with pytest.raises(InputError, match=r"missing|stands where"):
            one.read({key: kept for key, kept in document.items() if key != name}, "")
    with pytest.raises(InputError, match="“colour” is not known here"):
        one.read(document | {"colour": "red"}, "")


def test_a_fault_deep_inside_names_its_place() -> None:
    document = _changed(codec.THING.write(WATER_CARRIER), ("readings", 0, "reading_kg"), "heavy")
    with pytest.raises(InputError, match=r"^thing\.readings\[0\]\.reading_kg: “heavy” is not a number"):
        codec.THING.read(document, "thing")


def test_the_rules_of_a_value_name_its_place() -> None:
    document = codec_people.PERSON.write(INES)
    assert isinstance(document, dict)
    with pytest.raises(InputError, match=r"^person: “500 kg” is not a body mass"):
        codec_people.PERSON.read(document | {"body_mass_kg": 500}, "person")


def test_a_value_that_would_not_read_back_is_refused_before_it_is_written() -> None:
    with pytest.raises(InputError, match="cannot be shown"):
        codec.THING.checked(dataclasses.replace(COAL_BAG, name="Coal\x00bag"))
    with pytest.raises(InputError, match="is not from 1 to 999"):
        codec.THING.checked(dataclasses.replace(COAL_BAG, count=0))
    with pytest.raises(InputError, match="cannot be kept as it is"):
        codec.THING.checked(dataclasses.replace(COAL_BAG, fills=["water"]))  # type: ignore[arg-type]  # the fault tested


def test_older_files_may_lack_a_field_that_was_added_since() -> None:
    from core.house.model import QuietHours
    from core.store.encoding import TIME
    from core.store.encoding_groups import record

    with_end = record("quiet_hours", QuietHours, {"start": TIME, "end": TIME}, added={"end": "07:00"})
    assert with_end.read({"is": "quiet_hours", "start": "22:00"}, "").end.hour == 7
    assert "end" not in list(with_end.schema["required"])  # type: ignore[call-overload]  # a list
