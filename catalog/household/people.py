"""People, places and wishes of a household file as values."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from catalog.household.faults import FaultList, entry_words
from catalog.household.ids import ids_for
from catalog.household.schema import (
    WEEKDAY_KEYS,
    CapacityForm,
    DayForm,
    NamedForm,
    PersonForm,
    PinForm,
    PlaceForm,
    WeekForm,
)
from catalog.household.things import place_named
from core.errors import InputError
from core.exercise.find import exercise_named
from core.house.model import Capacity, Person, Place, QuietHours
from core.house.wishes import DayWish, Goals, Pin, PinnedDose, WeekWishes
from core.knowledge import Catalog
from core.plan.model import DayKind
from core.quantity import Measured
from core.quantity.units import parse_distance_m, parse_length_cm, parse_mass_kg, parse_time_min

MOST_WALK_M = 100_000.0
CEILING_CM = (100.0, 5000.0)


def places_from(forms: Sequence[PlaceForm], faults: FaultList) -> tuple[Place, ...]:
    """Every place that could be read, in order."""
    ids = _ids(forms, "places", "place", faults)
    found = (_place(form, ids[at], entry_words("places", at, form.name), faults) for at, form in enumerate(forms))
    return tuple(place for place in found if place is not None)


def _ids(forms: Sequence[NamedForm], section: str, what: str, faults: FaultList) -> list[str]:
    """The id given, or one made from the name; the same name or id twice is a fault, since others refer to it."""
    given = [form.id for form in forms if form.id is not None]
    made = iter(ids_for([form.name for form in forms if form.id is None], what, given))
    ids = [form.id if form.id is not None else next(made) for form in forms]
    names = [form.name.casefold() for form in forms]
    for at, form in enumerate(forms):
        if names.index(names[at]) != at or (form.id is not None and ids.index(ids[at]) != at):
            error = InputError(form.name, "is there twice", f"give each {what} a name and id of its own")
            faults.add(entry_words(section, at, form.name), "name", error)
    return ids


def _place(form: PlaceForm, place_id: str, where: str, faults: FaultList) -> Place | None:
    walk_m = faults.attempt(where, "walk", lambda: _within_m(form.walk))
    ceiling_cm = None
    if form.ceiling is not None:
        ceiling = form.ceiling
        ceiling_cm = faults.attempt(where, "ceiling", lambda: _ceiling_cm(ceiling))
    return Place(
        id=place_id,
        name=form.name,
        ceiling_cm=ceiling_cm,
        floor_m2=form.floor_m2,
        walk_m=walk_m or 0.0,
        outdoors=form.outdoors,
        neighbours=form.neighbours,
        wet=form.wet,
        quiet=None if form.quiet is None else QuietHours(start=form.quiet.start, end=form.quiet.end),
    )


def _within_m(text: str) -> float:
    walk_m = parse_distance_m(text)
    if walk_m > MOST_WALK_M:
        raise InputError(text, f"is longer than a walk is planned here ({MOST_WALK_M / 1000:g} km)", "write less")
    return walk_m


def _ceiling_cm(text: str) -> float:
    low, high = CEILING_CM
    ceiling_cm = parse_length_cm(text)
    if not low <= ceiling_cm <= high:
        rule = f"is no height of a ceiling ({low:g} to {high:g} cm)"
        raise InputError(text, rule, "check the number and its unit, or leave it out under open sky")
    return ceiling_cm


def people_from(forms: Sequence[PersonForm], catalog: Catalog, faults: FaultList) -> tuple[Person, ...]:
    """Every person that could be read, in order."""
    ids = _ids(forms, "people", "person", faults)
    found = [_person(form, ids[at], at, catalog, faults) for at, form in enumerate(forms)]
    return tuple(person for person in found if person is not None)


def _person(form: PersonForm, person_id: str, at: int, catalog: Catalog, faults: FaultList) -> Person | None:
    where = entry_words("people", at, form.name)
    body_kg = faults.attempt(where, "body_mass", lambda: parse_mass_kg(form.body_mass))
    height_cm = faults.attempt(where, "height", lambda: parse_length_cm(form.height))
    known = [
        faults.attempt(where, f"best {n + 1}", partial(_capacity, one, catalog)) for n, one in enumerate(form.best)
    ]
    capacities = tuple(one for one in known if one is not None)
    if body_kg is None or height_cm is None:
        return None

    def make() -> Person:
        return Person(
            id=person_id,
            name=form.name,
            body_mass_kg=body_kg,
            height_cm=height_cm,
            experience=form.experience,
            spares=frozenset(form.spares),
            capacities=capacities,
            birth_year=form.born,
            sex=form.sex,
        )

    return faults.attempt(where, "body_mass, height", make)


def _capacity(form: CapacityForm, catalog: Catalog) -> Capacity:
    exercise = exercise_named(form.exercise, catalog)
    one_rep = Measured(parse_mass_kg(form.one_rep), parse_mass_kg(form.plus_minus) / 2, form.origin)
    return Capacity(pattern=form.pattern, one_rep_kg=one_rep, exercise_id=exercise.id, told_by=form.told_by)


def wishes_from(form: WeekForm, where: str, places: Sequence[Place], catalog: Catalog, faults: FaultList) -> WeekWishes:
    """The wishes of a week, as far as they could be read."""
    read = [_day(WEEKDAY_KEYS.index(key), day, where, places, faults) for key, day in form.days.items()]
    days = tuple(sorted((day for day in read if day is not None), key=lambda day: day.weekday))
    goals = faults.attempt(where, "goals", lambda: Goals(**form.goals.model_dump()))
    bans = [faults.attempt(where, "bans", partial(exercise_named, name, catalog)) for name in form.bans]
    pins = [_pin(pin, f"pins {at + 1}", where, catalog, faults) for at, pin in enumerate(form.pins)]
    return WeekWishes(
        days=days,
        goals=goals or Goals(),
        bans=tuple(one.id for one in bans if one is not None),
        pins=tuple(pin for pin in pins if pin is not None),
    )


def _day(weekday: int, form: str | DayForm, where: str, places: Sequence[Place], faults: FaultList) -> DayWish | None:
    table = DayForm(minutes=form) if isinstance(form, str) else form
    field = f"days.{WEEKDAY_KEYS[weekday]}"

    def make() -> DayWish:
        place = None if table.place is None else place_named(table.place, places).id
        return DayWish(weekday=weekday, minutes=parse_time_min(table.minutes), place_id=place, start=table.start)

    return faults.attempt(where, field, make)


def _pin(form: PinForm, field: str, where: str, catalog: Catalog, faults: FaultList) -> Pin | None:
    def make() -> Pin:
        if form.kind is not None and form.kind not in tuple(DayKind):
            raise InputError(form.kind, "is no kind of day", f"use one of {', '.join(DayKind)}")
        exercise_id = None if form.exercise is None else exercise_named(form.exercise, catalog).id
        weekday = WEEKDAY_KEYS.index(form.day)
        return Pin(weekday=weekday, exercise_id=exercise_id, kind=form.kind, dose=_pinned_dose(form))

    return faults.attempt(where, field, make)


def _pinned_dose(form: PinForm) -> PinnedDose | None:
    if form.sets is None:
        if (form.reps, form.work, form.rest) != (None, None, None):
            raise InputError(form.day, "is pinned with a dose but no sets", "add sets = 3 or how many there are")
        return None
    reps = (form.reps, form.reps) if isinstance(form.reps, int) else form.reps
    rest = [form.rest, form.rest] if isinstance(form.rest, str) else form.rest
    return PinnedDose(
        sets=form.sets,
        reps=None if reps is None else (reps[0], reps[1]),
        work_s=None if form.work is None else _seconds(form.work),
        rest_s=None if rest is None else (_seconds(rest[0]), _seconds(rest[1])),
    )


def _seconds(text: str) -> int:
    return round(parse_time_min(text, "s") * 60)
