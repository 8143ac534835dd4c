"""Writing a household as a file that people can read and that reads back equal.

A thing is written in as few words as read back to the same thing: its name, its name with corrections, or, where that
would lose something, field by field (`exact`).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Any

import tomli_w

from catalog.household.exact import exact_table
from catalog.household.faults import FaultList
from catalog.household.ids import ids_for
from catalog.household.load import read_household
from catalog.household.schema import FILE_VERSION, WEEKDAY_KEYS, PlaceForm, ThingForm
from catalog.household.things import Around, corrected, scale_word, things_in
from catalog.own import table_of, with_own
from core.errors import InputError
from core.house.model import Capacity, House, Person, Place
from core.house.own import OwnKind
from core.house.wishes import DayWish, Goals, Pin, WeekWishes
from core.knowledge import Catalog
from core.mass.level_text import level_text
from core.mass.model import Packing, ScaleReading
from core.quantity import Origin
from core.things.item_text import LONGEST_ITEM
from core.things.model import Facts, Thing

FILE = "the household"
NEW = "new"
"""The id of a thing that has none of its own yet."""


def write_household(house: House, wishes: Mapping[str, WeekWishes], catalog: Catalog, *, invented: bool = False) -> str:
    """The text of the file; `InputError` for a house that a file can't hold (such as a name of 100 letters)."""
    merged = with_own(catalog, house.own)
    house = replace(house, own=tuple(sorted(house.own, key=lambda own: own.kind)))  # a file has each kind on its own
    shared = _shared_week(house, wishes)
    places = {place.id: place.name for place in house.places}
    data: dict[str, Any] = {"fillmark": FILE_VERSION, "name": house.name}
    data |= {"invented": True} if invented else {}
    data |= {"cup": _with_unit(house.cup_l, "L"), "fills": list(house.fills)}
    data["things"] = list(_things(house, merged))
    data["people"] = list(_people(house, wishes, shared, places))
    data["places"] = list(_places(house.places))
    if shared is not None:
        data["week"] = _week(shared, places)
    data |= _only(
        own_movements=[table_of(own) for own in house.own if own.kind is OwnKind.EXERCISE],
        own_kinds=[table_of(own) for own in house.own if own.kind is OwnKind.THING],
    )
    text = tomli_w.dumps(data)
    read = read_household(text, FILE, catalog)
    if (read.house, dict(read.wishes)) != (house, _kept(house, wishes)):
        raise InputError(house.name, "can't be written as a household file", "export everything as JSON instead")
    return text


def _kept(house: House, wishes: Mapping[str, WeekWishes]) -> dict[str, WeekWishes]:
    """A file has wishes for everyone in the house and for nobody else."""
    return {person.id: wishes.get(person.id, WeekWishes()) for person in house.people}


def _shared_week(house: House, wishes: Mapping[str, WeekWishes]) -> WeekWishes | None:
    """The week to write for all: the one everybody has, if they all have the same."""
    weeks = [wishes.get(person.id, WeekWishes()) for person in house.people]
    return weeks[0] if weeks and all(week == weeks[0] for week in weeks) and weeks[0] != WeekWishes() else None


def _with_unit(value: float, unit: str) -> str:
    """“25 L”, or all the digits it takes to read back the same."""
    short = f"{value:g}"
    return f"{short if float(short) == value else repr(value)} {unit}"


def _only(**fields: object) -> dict[str, Any]:
    """The fields that say something."""
    return {name.rstrip("_"): value for name, value in fields.items() if value not in (None, [], "", False)}


# --- things ---------------------------------------------------------------------------------------------------------


def _things(house: House, catalog: Catalog) -> Iterator[str | dict[str, Any]]:
    made = ids_for([thing.name for thing in house.things], "thing")
    for thing, usual_id in zip(house.things, made, strict=True):
        written = _shortest(thing, house, catalog)
        if thing.id == usual_id:
            yield written
        elif isinstance(written, str):
            yield {"is": written, "id": thing.id}
        else:
            yield {**written, "id": thing.id}


def _shortest(thing: Thing, house: House, catalog: Catalog) -> str | dict[str, Any]:
    """The first way to write a thing that reads back as the same."""
    plain = replace(thing, id=NEW)
    for words, base in _bases(plain, catalog):
        if base == plain:
            return words
        corrections = _corrections(plain, house)
        for own in _own_facts(plain, base):
            if corrections is None:
                break
            written = {"is": words, **_only(name=plain.name if plain.name != base.name else None), **own, **corrections}
            around = Around(house.places, house.cup_l, catalog, FaultList(FILE))
            read = corrected(base, ThingForm.model_validate(written), "", around)
            if read == plain and not around.faults.sentences:
                return written
    return {"exact": {key: value for key, value in exact_table(thing).items() if key != "id"}}


def _bases(thing: Thing, catalog: Catalog) -> Iterator[tuple[str, Thing]]:
    """Words that give the thing but for what corrections can change, with what they give."""
    kind = catalog.kind_by_id.get(thing.kind_id)
    if kind is None:
        return
    count = "" if thing.count == 1 else str(thing.count)
    tries = (f"{count} {name}{size}".strip() for name in (thing.name, kind.name) for size in _sizes(thing.facts))
    for words in dict.fromkeys(tries):
        base = _thing_in(words, catalog)
        if base is not None and _described(base) == _described(thing) and _alike(base, thing):
            yield words, base


def _thing_in(words: str, catalog: Catalog) -> Thing | None:
    try:
        found = things_in(words, catalog)
    except InputError:
        return None  # these words say something else; others may do
    return found[0] if len(found) == 1 and len(words) <= LONGEST_ITEM else None


def _alike(base: Thing, thing: Thing) -> bool:
    """Whether both are the same vessel, but perhaps for what it weighs empty."""
    own, other = thing.facts.container, base.facts.container
    if own is None or other is None:
        return own is other
    return replace(other, tare_kg=own.tare_kg) == own


def _described(thing: Thing) -> tuple[object, ...]:
    facts = thing.facts
    plan = (facts.length_cm, facts.width_cm, facts.pack_l, facts.form, facts.handle, facts.closure, facts.rigidity)
    return thing.kind_id, thing.count, thing.icon, thing.cautions, plan


def _sizes(facts: Facts) -> list[str]:
    """Sizes that may follow the name: none, the capacity, the label, the steps, the height, the way."""
    hold_l = facts.hold.volume_l if facts.hold is not None else None
    litres = facts.container.nominal_l.value if facts.container is not None else hold_l
    kg = (facts.label_kg, facts.mass.value if facts.mass is not None else None)
    found = ["", *(f" {_with_unit(one, 'kg')}" for one in kg if one is not None)]
    found.extend([] if litres is None else [f" {_with_unit(litres, 'L')}"])
    if facts.flight is not None:
        found.append(f", {facts.flight.count} steps, {_with_unit(facts.flight.rise_cm, 'cm')} rise")
    found.extend([] if facts.surface_cm is None else [f", {_with_unit(facts.surface_cm, 'cm')} high"])
    found.extend([f" {_with_unit(facts.route_m, 'm')}"] if facts.route_m else [])
    return found


def _own_facts(thing: Thing, base: Thing) -> Iterator[dict[str, Any]]:
    """Corrections to the facts, alone and together, none first."""
    facts = thing.facts
    mass = facts.container.tare_kg if facts.container is not None else facts.mass
    hazards = {"hazards": sorted(hazard.value for hazard in facts.hazards)}
    surface = {} if facts.surface_cm is None else {"surface": _with_unit(facts.surface_cm, "cm")}
    rating_kg = facts.hold.limit_kg if facts.hold is not None else facts.rating_kg
    rating = {} if rating_kg is None else {"rating": _with_unit(rating_kg, "kg")}
    weight = {} if mass is None else {"mass": _with_unit(mass.value, "kg")}
    fills = {"fills": list(thing.fills)} if thing.fills != base.fills else {}
    for one in ({}, surface, rating, {**surface, **rating}, weight, {**surface, **rating, **weight}):
        yield {**one, **fills}
        yield {**one, **hazards, **fills}


def _corrections(thing: Thing, house: House) -> dict[str, Any] | None:
    """Places, fill, check and weighings; None where one of them can't be said in words."""
    names = {place.id: place.name for place in house.places}
    weighed = [_weighed(reading) for reading in thing.readings]
    if any(one is None for one in weighed):
        return None
    fill, check = thing.fill, thing.own_check
    filled = (
        None
        if fill is None
        else _only(
            material=fill.material_id,
            volume=_with_unit(fill.volume_l, "L"),
            packing=fill.packing.value if fill.packing is not Packing.LOOSE else None,
        )
    )
    return _only(
        places=[names.get(place_id, place_id) for place_id in thing.place_ids],
        filled=filled,
        check=None if check is None else {"date": check.date, "took": _with_unit(check.took_kg, "kg")},
        weighed=weighed,
    )


def _weighed(reading: ScaleReading) -> dict[str, Any] | None:
    scale = scale_word(reading)
    level = None if reading.at_level is None else level_text(reading.at_level)
    if scale is None or (reading.at_level is not None and level is None):
        return None
    without = None if reading.without_kg is None else _with_unit(reading.without_kg, "kg")
    reads = _with_unit(reading.reading_kg, "kg")
    packing = None if reading.packing is Packing.LOOSE else reading.packing.value
    material = reading.material_id
    more = _only(material=material, packing=packing, date=reading.date)
    return _only(scale=scale, reading=reads, without=without, fill=level) | more


# --- people, places and the week ------------------------------------------------------------------------------------


def _people(
    house: House, wishes: Mapping[str, WeekWishes], shared: WeekWishes | None, places: Mapping[str, str]
) -> Iterator[dict[str, Any]]:
    made = ids_for([person.name for person in house.people], "person")
    for person, usual_id in zip(house.people, made, strict=True):
        own = wishes.get(person.id, WeekWishes())
        week = _week(own, places) if shared is None and own != WeekWishes() else None
        yield _person(person, usual_id) | _only(week=week)


def _person(person: Person, usual_id: str) -> dict[str, Any]:
    return _only(
        name=person.name,
        id=None if person.id == usual_id else person.id,
        body_mass=_with_unit(person.body_mass_kg, "kg"),
        height=_with_unit(person.height_cm, "cm"),
        experience=person.experience.value,
        spares=sorted(demand.value for demand in person.spares),
        born=person.birth_year,
        sex=None if person.sex is None else person.sex.value,
        best=[_capacity(capacity) for capacity in person.capacities],
    )


def _capacity(capacity: Capacity) -> dict[str, Any]:
    one_rep = capacity.one_rep_kg
    return {
        "pattern": capacity.pattern.value,
        "one_rep": _with_unit(one_rep.value, "kg"),
        "plus_minus": _with_unit(one_rep.u95, "kg"),
        "exercise": capacity.exercise_id,
        "told_by": capacity.told_by,
    } | _only(origin=one_rep.origin.value if one_rep.origin is not Origin.ESTIMATE else None)


def _places(places: Sequence[Place]) -> Iterator[dict[str, Any]]:
    usual = PlaceForm(name="usual")
    for place, usual_id in zip(places, ids_for([place.name for place in places], "place"), strict=True):
        quiet = None if place.quiet is None else {"from": place.quiet.start, "to": place.quiet.end}
        walk = _with_unit(place.walk_m, "m")
        written = _only(
            name=place.name,
            id=None if place.id == usual_id else place.id,
            ceiling=None if place.ceiling_cm is None else _with_unit(place.ceiling_cm, "cm"),
            walk=None if walk == usual.walk else walk,
            outdoors=place.outdoors,
            neighbours=place.neighbours,
            wet=place.wet,
            quiet=quiet,
        )
        yield written if place.floor_m2 == usual.floor_m2 else {**written, "floor_m2": place.floor_m2}


def _week(wishes: WeekWishes, places: Mapping[str, str]) -> dict[str, Any]:
    days = {WEEKDAY_KEYS[day.weekday]: _day(day, places) for day in wishes.days}
    goals = {} if wishes.goals == Goals() else {"goals": _goals(wishes.goals)}
    return _only(days=days or None, bans=list(wishes.bans), pins=[_pin(pin) for pin in wishes.pins]) | goals


def _day(day: DayWish, places: Mapping[str, str]) -> str | dict[str, Any]:
    minutes = _with_unit(day.minutes, "min")
    if day.place_id is None and day.start is None:
        return minutes
    place = None if day.place_id is None else places.get(day.place_id, day.place_id)
    return _only(minutes=minutes, place=place) | ({} if day.start is None else {"start": day.start})


def _goals(goals: Goals) -> dict[str, float]:
    return {name: getattr(goals, name) for name in ("strength", "run_walk", "loaded_walk", "mobility")}


def _pin(pin: Pin) -> dict[str, Any]:
    found = {"day": WEEKDAY_KEYS[pin.weekday]} | _only(exercise=pin.exercise_id, kind=pin.kind)
    dose = pin.dose
    if dose is None:
        return found
    work = None if dose.work_s is None else f"{dose.work_s} s"
    rest = None if dose.rest_s is None else [f"{seconds} s" for seconds in dose.rest_s]
    return found | _only(sets=dose.sets, reps=None if dose.reps is None else list(dose.reps), work=work, rest=rest)
