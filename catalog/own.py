"""A person's own movements and kinds of things: checked like shipped entries, and put with them into one catalog.

`own_exercise` and `own_kind` make an entry for the record (`core.store.commands.AddOwn`) out of a table as it would
stand in a data file, without sources: what a person enters is their own word. `with_own` is the catalog to work with.
Neighbours are linked both ways, so a shipped movement leads to an own one named as easier or harder than it.
"""

from __future__ import annotations

import json
from collections.abc import Container, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from operator import attrgetter
from typing import TYPE_CHECKING, Any, TypeVar

from core.errors import InputError
from core.exercise.model import Exercise
from core.house.own import OWN_PREFIX, OwnEntry, OwnKind
from core.knowledge import Catalog
from core.store.codec_own import OWN
from core.store.json_text import to_text
from core.things.model import ThingKind

if TYPE_CHECKING:
    from pydantic import BaseModel

    from catalog.own_forms import OwnExerciseEntry, OwnThingEntry

NAME_CLASH = "also belongs to"
"""What the checker says of names that two movements have; it is said in other words to the person who chose one."""
OWN_GROUP = "own"
"""The group of own kinds of things; the shipped ones have the names of their files."""
Entry = TypeVar("Entry", Exercise, ThingKind)


def own_exercise(table: Mapping[str, Any], catalog: Catalog) -> OwnEntry:
    """A movement of one's own from the fields of an `[[exercise]]` table; without an id it gets one from its name.

    `catalog` is the one in use; an entry that is in it already is replaced. `CatalogFaults` has a sentence per fault.
    """
    return _checked(OwnKind.EXERCISE, table, catalog)


def own_kind(table: Mapping[str, Any], catalog: Catalog) -> OwnEntry:
    """A kind of thing of one's own from the fields of a `[[thing]]` table; see `own_exercise`."""
    return _checked(OwnKind.THING, table, catalog)


def table_of(entry: OwnEntry) -> dict[str, Any]:
    """The entry as the table it was made from: to edit, or to write into a file."""
    return {"id": entry.id, "name": entry.name, **json.loads(entry.table)}


def with_own(catalog: Catalog, entries: Sequence[OwnEntry]) -> Catalog:
    """The catalog with these own entries and no others; `InputError` naming the first that can't be read or clashes."""
    merged, faults = with_usable_own(catalog, entries)
    if faults:
        raise faults[0]
    return merged


def with_usable_own(catalog: Catalog, entries: Sequence[OwnEntry]) -> tuple[Catalog, tuple[InputError, ...]]:
    """The catalog with every own entry that can be used, and what is wrong with the others (a damaged table)."""
    catalog = shipped(catalog)
    if not entries:
        return catalog, ()
    exercises: dict[str, Exercise] = {}
    kinds: dict[str, ThingKind] = {}
    faults: list[InputError] = []
    for entry in entries:
        try:
            _no_clash(entry, (catalog.exercise_by_id, catalog.kind_by_id, exercises, kinds))
            if entry.kind is OwnKind.EXERCISE:
                exercises[entry.id] = _exercise(entry)
            else:
                kinds[entry.id] = _kind(entry)
        except InputError as fault:
            faults.append(fault)
    return _merged(catalog, exercises, kinds), tuple(faults)


def shipped(catalog: Catalog) -> Catalog:
    """The catalog without own entries; the same object if it has none."""
    own = [one for one in (*catalog.exercise_by_id, *catalog.kind_by_id) if one.startswith(OWN_PREFIX)]
    for entry_id in own:
        catalog = _without(catalog, entry_id)
    return catalog


def _no_clash(entry: OwnEntry, taken: Iterable[Container[str]]) -> None:
    if any(entry.id in ids for ids in taken):
        raise InputError(entry.name, f"has the id {entry.id}, which another entry has", "give it another id")


def _merged(catalog: Catalog, exercises: Mapping[str, Exercise], kinds: Mapping[str, ThingKind]) -> Catalog:
    from catalog.own_forms import OWN_SOURCE

    listed = _linked({**catalog.exercise_by_id, **exercises}, exercises)
    return Catalog(
        exercises=tuple(sorted(listed.values(), key=attrgetter("id"))),
        kinds=tuple(sorted((*catalog.kinds, *kinds.values()), key=attrgetter("id"))),
        materials=catalog.materials,
        sources=tuple(sorted({*catalog.sources, OWN_SOURCE}, key=attrgetter("id"))),
    )


def _linked(listed: dict[str, Exercise], own: Mapping[str, Exercise]) -> dict[str, Exercise]:
    """Every neighbour an own movement names names it back; a neighbour that is not there is left out."""
    for exercise_id in own:
        exercise = listed[exercise_id]
        for near_id in exercise.easier:
            if near_id in listed:
                listed[near_id] = _naming(listed[near_id], "harder", exercise_id)
        for near_id in exercise.harder:
            if near_id in listed:
                listed[near_id] = _naming(listed[near_id], "easier", exercise_id)
    for exercise_id in own:
        one = listed[exercise_id]
        near = {side: tuple(other for other in getattr(one, side) if other in listed) for side in ("easier", "harder")}
        listed[exercise_id] = replace(one, easier=near["easier"], harder=near["harder"])
    return listed


def _naming(exercise: Exercise, side: str, other_id: str) -> Exercise:
    named: tuple[str, ...] = getattr(exercise, side)
    if other_id in named:
        return exercise
    easier, harder = (*exercise.easier,), (*exercise.harder,)
    if side == "easier":
        return replace(exercise, easier=(*easier, other_id))
    return replace(exercise, harder=(*harder, other_id))


# --- one entry through its schema -------------------------------------------------------------------------------------


def _exercise(entry: OwnEntry) -> Exercise:
    from catalog.own_forms import OwnExerciseEntry

    made = _validated(OwnExerciseEntry, table_of(entry), entry.name).exercise()
    # The record keeps the fields of a table sorted: the order of patterns and muscles is that of their weights.
    return replace(made, patterns=_by_weight(made.patterns), muscles=_by_weight(made.muscles))


def _by_weight(pairs: Iterable[tuple[Any, float]]) -> tuple[tuple[Any, float], ...]:
    return tuple(sorted(pairs, key=lambda pair: (-pair[1], pair[0])))


def _kind(entry: OwnEntry) -> ThingKind:
    from catalog.errors import CatalogFaults
    from catalog.own_forms import OwnThingEntry
    from catalog.things import load_fill_groups

    read = _validated(OwnThingEntry, table_of(entry), entry.name)
    groups = load_fill_groups() if read.fills is not None else {}
    if read.fills is not None and read.fills not in groups:
        told = f"fills: “{read.fills}” is no group of fills; use one of: {', '.join(groups)}."
        raise CatalogFaults(entry.name, [told])
    return read.kind(OWN_GROUP, groups)


Model = TypeVar("Model", bound="BaseModel")


def _validated(form: type[Model], table: dict[str, Any], name: str) -> Model:
    from pydantic import ValidationError

    from catalog.entries import WAYS_OUT
    from catalog.errors import CatalogFaults
    from catalog.faults import faults_of

    try:
        return form.model_validate(table)
    except ValidationError as error:
        errors = error.errors()
        told = zip(errors, faults_of(name, name, errors), strict=True)
        sentences = [_sentence(fault.field, fault.found, fault.rule, WAYS_OUT.get(one["type"])) for one, fault in told]
        raise CatalogFaults(name, sentences) from error


def _sentence(field: str, found: str, rule: str, way_out: str | None) -> str:
    subject = f"“{found}”" if field in {"(all)", found} else f"{field.replace('_', ' ')}: “{found}”"
    return f"{subject} {rule}; {way_out or 'correct it'}."


# --- a new or changed entry against the rest --------------------------------------------------------------------------


def _checked(kind: OwnKind, table: Mapping[str, Any], catalog: Catalog) -> OwnEntry:
    from catalog.errors import CatalogFaults
    from catalog.own_forms import OwnExerciseEntry, OwnThingEntry, own_id

    name = str(table.get("name", "")).strip()
    given = table.get("id") or own_id(name, {*catalog.exercise_by_id, *catalog.kind_by_id})
    full, words = {**table, "id": given, "name": name}, name or "the new entry"
    exercise = kind is OwnKind.EXERCISE
    entry = kept(_validated(OwnExerciseEntry, full, words) if exercise else _validated(OwnThingEntry, full, words))
    rest = _without(catalog, entry.id)
    merged = _merged_one(rest, entry)
    find = _exercise_faults if kind is OwnKind.EXERCISE else _kind_faults
    sentences = tuple(find(entry, merged, rest))
    if sentences:
        raise CatalogFaults(entry.name, sentences)
    return entry


def _merged_one(rest: Catalog, entry: OwnEntry) -> Catalog:
    """The catalog in use with one entry more, or that entry changed."""
    _no_clash(entry, (rest.exercise_by_id, rest.kind_by_id))
    if entry.kind is OwnKind.EXERCISE:
        return _merged(rest, {entry.id: _exercise(entry)}, {})
    return _merged(rest, {}, {entry.id: _kind(entry)})


def kept(read: OwnExerciseEntry | OwnThingEntry) -> OwnEntry:
    """The entry of a form that was read: without what is usual, so that equal entries are equal text."""
    from catalog.own_forms import OwnExerciseEntry

    kind = OwnKind.EXERCISE if isinstance(read, OwnExerciseEntry) else OwnKind.THING
    fields = read.model_dump(mode="json", exclude_defaults=True, exclude={"id", "name", "sources"})
    entry = OwnEntry(kind=kind, id=read.id, name=read.name, table=to_text(fields))
    OWN.checked(entry, entry.id)
    return entry


def _without(catalog: Catalog, entry_id: str) -> Catalog:
    """The catalog as if this entry were not in it."""
    if entry_id not in catalog.exercise_by_id and entry_id not in catalog.kind_by_id:
        return catalog
    return replace(
        catalog,
        exercises=tuple(_unnaming(one, entry_id) for one in catalog.exercises if one.id != entry_id),
        kinds=tuple(one for one in catalog.kinds if one.id != entry_id),
    )


def _unnaming(exercise: Exercise, entry_id: str) -> Exercise:
    if entry_id not in (*exercise.easier, *exercise.harder):
        return exercise
    easier = tuple(one for one in exercise.easier if one != entry_id)
    return replace(exercise, easier=easier, harder=tuple(one for one in exercise.harder if one != entry_id))


def _exercise_faults(entry: OwnEntry, merged: Catalog, rest: Catalog) -> Iterator[str]:
    from catalog.check_exercises import find_exercise_errors

    source_ids = frozenset(source.id for source in merged.sources)
    before = set(find_exercise_errors(rest.exercises, source_ids))
    table = json.loads(entry.table)
    for side in ("easier", "harder"):
        missing = (one for one in table.get(side, ()) if one not in rest.exercise_by_id)
        yield from (f"“{one}” is named as {side}, but there is no such movement; choose another." for one in missing)
    yield from _taken_names(entry, merged, rest)
    for found in find_exercise_errors(merged.exercises, source_ids):
        if found not in before and NAME_CLASH not in found:
            yield _plainly(found.removeprefix(f"{entry.id}: "), entry, merged)


def _taken_names(entry: OwnEntry, merged: Catalog, rest: Catalog) -> Iterator[str]:
    made = merged.exercise_by_id[entry.id]
    owners = {word.casefold(): one.name for one in rest.exercises for word in (one.name, *one.aliases)}
    for word in (made.name, *made.aliases):
        if word.casefold() in owners:
            yield f"“{word}” already means {owners[word.casefold()]}; choose another name."


def _plainly(told: str, entry: OwnEntry, merged: Catalog) -> str:
    """The checker's words with names for ids."""
    own = merged.exercise_by_id[entry.id]
    for near_id in (entry.id, *own.easier, *own.harder):
        told = told.replace(near_id, f"“{merged.exercise_by_id[near_id].name}”")
    return f"{told[:1].upper()}{told[1:]}; change one of them."


def _kind_faults(entry: OwnEntry, merged: Catalog, rest: Catalog) -> Iterator[str]:
    from catalog.check_things import find_thing_errors

    source_ids = frozenset(source.id for source in merged.sources)
    before = set(find_thing_errors(rest.kinds, source_ids, rest.materials))
    for found in find_thing_errors(merged.kinds, source_ids, merged.materials):
        if found not in before:
            told = found.removeprefix("thing ").removeprefix(f"{entry.id}: ")
            yield f"{told[:1].upper()}{told[1:]}"
