"""Things of a household file: short words or a table, as values of the house."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial
from typing import Any

from catalog.household.exact import thing_from_table
from catalog.household.faults import FaultList, entry_words
from catalog.household.ids import ids_for
from catalog.household.schema import CheckForm, FilledForm, ThingForm, WeighedForm
from core.errors import InputError
from core.house.model import Place
from core.knowledge import Catalog
from core.mass.level_text import parse_level
from core.mass.model import ScaleKind, ScaleReading
from core.mass.naming import material_named
from core.mass.scale import MANNERS, reading_on, weighed
from core.quantity.units import parse_length_cm, parse_mass_kg, parse_volume_l
from core.things.amounts import RATING_KG
from core.things.corrections import Corrections
from core.things.corrections import corrected as told_corrected
from core.things.model import Fill, OwnCheck, Thing
from core.things.quick_add import Question, ReadThing, make_thing, read_things

SCALES = {
    "kitchen": ScaleKind.KITCHEN,
    "luggage": ScaleKind.LUGGAGE,
    "bathroom": ScaleKind.BATHROOM_DIFFERENCE,
    "direct": ScaleKind.DIRECT,
}


@dataclass(frozen=True, slots=True)
class Around:
    """What a thing's words and corrections are read against: places, the cup, the catalog; and where faults go."""

    places: Sequence[Place]
    cup_l: float
    catalog: Catalog
    faults: FaultList


def things_from(forms: Sequence[str | ThingForm], around: Around) -> tuple[Thing, ...]:
    """Every thing that could be read; what could not is in the faults."""
    found: list[tuple[str | None, Thing]] = []
    for at, form in enumerate(forms):
        if around.faults.full:
            break
        where = entry_words("things", at, form if isinstance(form, str) else form.name or form.is_)
        for thing in _read(form, where, around):
            if isinstance(form, str):
                found.append((None, thing))
            else:
                found.append((form.id, corrected(thing, form, where, around)))
    return _with_ids(found, around.faults)


def _with_ids(found: Sequence[tuple[str | None, Thing]], faults: FaultList) -> tuple[Thing, ...]:
    given = [own for own, _ in found if own is not None]
    for own in sorted({one for one in given if given.count(one) > 1}):
        faults.add("things", "id", InputError(own, "is used twice", "give each thing an id of its own"))
    made = iter(ids_for([thing.name for own, thing in found if own is None], "thing", given))
    return tuple(replace(thing, id=own if own is not None else next(made)) for own, thing in found)


def _read(form: str | ThingForm, where: str, around: Around) -> tuple[Thing, ...]:
    """The things an entry names, before corrections; several only where they are listed in one text."""
    if isinstance(form, str):
        found = around.faults.attempt(where, "", partial(things_in, form, around.catalog))
        return found or ()
    read = partial(_exact, form.exact, form) if form.exact is not None else partial(_one, form.is_, around.catalog)
    thing = around.faults.attempt(where, "is" if form.exact is None else "exact", read)
    return () if thing is None else (thing,)


def _exact(table: dict[str, Any], form: ThingForm) -> Thing:
    if form.model_fields_set - {"exact", "id"}:
        raise InputError("exact", "stands for everything but the id", "remove it, or the other fields")
    return thing_from_table(table, "new")


def _one(text: str | None, catalog: Catalog) -> Thing:
    if text is None:
        raise InputError("is", "is missing", "say what the thing is, like “5 L bottle”")
    found = things_in(text, catalog)
    if len(found) != 1:
        raise InputError(text, "names more than one thing", "write a table for each")
    return found[0]


def things_in(text: str, catalog: Catalog) -> tuple[Thing, ...]:
    """What words alone give, each thing with the id “new”; `InputError` unless all of it is understood for sure."""
    return tuple(make_thing(reading, "new") for reading in _readings(text, catalog))


def _readings(text: str, catalog: Catalog) -> tuple[ReadThing, ...]:
    """What is understood for sure; `InputError` with the question otherwise."""
    found = read_things(text, catalog.kinds)
    for one in found:
        if isinstance(one, Question):
            nearest = ", ".join(kind.name.lower() for kind in one.choices)
            raise InputError(one.item.shown, "is not a thing known here for sure", f"say which, like {nearest}")
        if one.leftover:
            left = ", ".join(one.leftover)
            raise InputError(text, f"is understood only in part (left over: {left})", "say it in other words")
    return tuple(one for one in found if isinstance(one, ReadThing))


def corrected(thing: Thing, form: ThingForm, where: str, around: Around) -> Thing:
    """The thing with every correction of the form that could be read; the rest is in the faults."""
    return thing if form.exact is not None else _Corrections(thing, form, where, around).worked_in()


@dataclass(frozen=True, slots=True)
class _Corrections:
    """The corrections of one entry and the thing they are for."""

    thing: Thing
    form: ThingForm
    where: str
    around: Around

    def worked_in(self) -> Thing:
        """The thing with everything that could be read."""
        thing = self.thing
        for field, read in self._told(thing):
            changed = self.around.faults.attempt(self.where, field, partial(self._changed, thing, read))
            thing = thing if changed is None else changed
        form = self.form
        places = tuple(one for one in map(self._place, form.places) if one is not None)
        thing = replace(thing, place_ids=places, own_check=self._check(form.check) if form.check is not None else None)
        if form.fills is not None:
            thing = replace(thing, fills=tuple(one for one in map(self._fill_id, form.fills) if one is not None))
        filled = self._filled(form.filled, thing) if form.filled is not None else None
        readings = (self._weighed(weighed_form, thing, at) for at, weighed_form in enumerate(form.weighed))
        return replace(thing, fill=filled, readings=tuple(one for one in readings if one is not None))

    def _told(self, thing: Thing) -> Iterator[tuple[str, Callable[[], Corrections]]]:
        """Each figure the form states, to be read and worked in on its own, so that each fault names its field."""
        form = self.form
        if form.name is not None:
            yield "name", partial(Corrections, name=form.name)
        if form.surface is not None:
            yield "surface", partial(_surface, form.surface)
        if form.rating is not None:
            yield "rating", partial(_rating, form.rating, of_bag=thing.facts.hold is not None)
        if form.mass is not None:
            yield "mass", partial(_mass, form.mass)
        if form.hazards is not None:
            yield "hazards", partial(Corrections, hazards=frozenset(form.hazards))

    def _changed(self, thing: Thing, read: Callable[[], Corrections]) -> Thing:
        return told_corrected(thing, read(), self.around.catalog.kind_by_id.get(thing.kind_id))

    def _place(self, name: str) -> str | None:
        return self.around.faults.attempt(self.where, "places", lambda: place_named(name, self.around.places).id)

    def _fill_id(self, name: str) -> str | None:
        named = self.around.faults.attempt(
            self.where, "fills", lambda: material_named(name, self.around.catalog.materials)
        )
        return None if named is None else named.id

    def _check(self, form: CheckForm) -> OwnCheck | None:
        took_kg = self.around.faults.attempt(self.where, "check.took", partial(_borne_kg, form.took))
        return None if took_kg is None else OwnCheck(date=form.date, took_kg=took_kg)

    def _filled(self, form: FilledForm, thing: Thing) -> Fill | None:
        container = thing.facts.container

        def read() -> Fill:
            if container is None:
                raise InputError(thing.name, "is nothing that can be filled", "remove it")
            volume_l = parse_volume_l(form.volume)
            if volume_l > container.brimful_l.value:
                rule = f"is more than it holds to the brim ({container.brimful_l.value:.4g} L)"
                raise InputError(form.volume, rule, "write less, or another size")
            material = material_named(form.material, self.around.catalog.materials)
            return Fill(material_id=material.id, volume_l=volume_l, packing=form.packing)

        return self.around.faults.attempt(self.where, "filled", read)

    def _weighed(self, form: WeighedForm, thing: Thing, at: int) -> ScaleReading | None:
        where = f"weighed {at + 1}"
        return self.around.faults.attempt(self.where, where, lambda: _scale_reading(form, thing, self.around))


def _surface(text: str) -> Corrections:
    return Corrections(height_cm=parse_length_cm(text))


def _mass(text: str) -> Corrections:
    return Corrections(mass_kg=parse_mass_kg(text))


def _rating(text: str, *, of_bag: bool) -> Corrections:
    kg = parse_mass_kg(text)
    return Corrections(limit_kg=kg) if of_bag else Corrections(rating_kg=kg)


def _borne_kg(text: str) -> float:
    low, high = RATING_KG
    took_kg = parse_mass_kg(text)
    if not low <= took_kg <= high:
        raise InputError(text, f"is no load to check with ({low:g} to {high:,.0f} kg)", "check the number and its unit")
    return took_kg


def _scale_reading(form: WeighedForm, thing: Thing, around: Around) -> ScaleReading:
    """A reading that could be one; of a container the fill must be said."""
    fillable = thing.facts.container is not None
    if fillable and form.fill is None:
        raise InputError(form.reading, "is of a container, and does not say how full it was", "add fill = “empty”")
    if not fillable and form.fill is not None:
        raise InputError(form.fill, "is a fill, and this thing can't be filled", "remove it")
    reading = reading_on(
        SCALES[form.scale],
        parse_mass_kg(form.reading),
        without_kg=None if form.without is None else parse_mass_kg(form.without),
        at_level=None if form.fill is None else parse_level(form.fill, cup_l=around.cup_l),
        date=form.date,
    )
    if form.material is not None:
        reading = replace(reading, material_id=material_named(form.material, around.catalog.materials).id)
    reading = replace(reading, packing=form.packing)
    weighed(reading)  # says what is wrong with a reading that cannot be one
    return reading


def scale_word(reading: ScaleReading) -> str | None:
    """The word a file uses for the scale, where the reading has that scale's usual manners."""
    manner = MANNERS[reading.kind]
    usual = (manner.resolution_kg, manner.repeatability_kg, manner.offset_doubt_kg)
    if (reading.resolution_kg, reading.repeatability_kg, reading.offset_doubt_kg) != usual:
        return None
    return next(word for word, kind in SCALES.items() if kind is reading.kind)


def place_named(name: str, places: Sequence[Place]) -> Place:
    """The place with exactly this name or id, else the one that differs only in case; `InputError` lists all."""
    wanted = name.strip().casefold()
    for same in (
        lambda place: place.name == name,
        lambda place: place.id == name,
        lambda place: place.name.strip().casefold() == wanted,
    ):
        if found := next(filter(same, places), None):
            return found
    listed = ", ".join(place.name for place in places[:5])
    raise InputError(name, "is no place of this household", f"use one of: {listed}" if listed else "list it in places")
