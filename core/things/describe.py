"""A thing in three short lines for a card: its size or mass, how it is handled, and how far that can be trusted."""

from __future__ import annotations

import datetime
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from core.mass.model import Material
from core.quantity import Measured, Origin
from core.quantity.display import (
    UnitSystem,
    format_distance,
    format_length,
    format_mass,
    format_measured_mass,
    format_volume,
)
from core.quantity.table import INCH_CM, POUND_KG
from core.things.bearing_uses import MONTHS
from core.things.model import Facts, Form, Handle, Hazard, RatingOrigin, Rigidity, Thing
from core.things.weight import MassRange, mass_range

CUP_L = 0.25
BORNE_FORMS = frozenset(
    {Form.SEAT, Form.TABLE, Form.BED, Form.STEP, Form.FLAT_BENCH, Form.BAR, Form.ANCHOR_POINT, Form.RAIL, Form.RACK}
)
MASS_IS_NO_MATTER = frozenset(
    (Form.CLOTH, Form.ROPE, Form.STICK, Form.BAND, Form.PAD, Form.SLIDER, Form.RINGS, Form.WALL, Form.DOOR_FRAME)
)
HANDLE_WORDS: dict[Handle, str] = {
    Handle.NONE: "no handle",
    Handle.MOULDED: "moulded handle",
    Handle.BAIL: "wire handle",
    Handle.LOOP: "one loop",
    Handle.TWO_LOOPS: "two handles",
    Handle.STRAPS: "straps",
    Handle.BAR: "bar handle",
    Handle.RIM: "only a rim",
    Handle.CUT_OUT: "hand-holds",
}


class Trust(StrEnum):
    """How far a card's first line can be trusted."""

    ESTIMATED = "estimated"
    LABEL = "label"
    WEIGHED = "weighed"
    RATED = "rated"
    BUILT = "built"
    CHECKED = "checked"
    UNRATED = "unrated"
    REFUSED = "refused"
    STATED = "stated"


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """What a card says. `trust` is the last line in one word, for its colour."""

    size: str
    note: str
    standing: str
    trust: Trust

    @property
    def lines(self) -> tuple[str, ...]:
        """The lines that say something, in order."""
        return tuple(line for line in (self.size, self.note, self.standing) if line)


def describe(
    thing: Thing, system: UnitSystem, materials: Iterable[Material] = (), *, cup_l: float = CUP_L
) -> tuple[str, ...]:
    """Two or three short lines: “0.6 – 25.4 kg each”, “any fill, 250 mL cups”, “estimated ± 1.9 %”."""
    return card(thing, system, materials, cup_l=cup_l).lines


def card(thing: Thing, system: UnitSystem, materials: Iterable[Material] = (), *, cup_l: float = CUP_L) -> Card:
    """The card of a thing. `materials` are the fills at hand; without any, a container tells its capacity."""
    facts = thing.facts
    if facts.flight is not None or facts.form in BORNE_FORMS:
        return _fixture_card(thing, system)
    if facts.route_m or facts.area_m2:
        return _place_card(facts, system)
    found = mass_range(thing, materials)
    if found is None or facts.form in MASS_IS_NO_MATTER:
        return Card(size=_outer_size(facts, system), note=_manner(facts), standing="", trust=Trust.STATED)
    standing, trust = _mass_standing(thing, found)
    if facts.container is not None:
        return Card(
            size=_filled_size(thing, found, system),
            note=_fill_note(thing, system, cup_l),
            standing=standing,
            trust=trust,
        )
    if facts.hold is not None:
        empty, most = format_mass(found.low.value, system), format_mass(facts.hold.limit_kg, system)
        size = f"{_without_unit_of(empty, most)} + up to {most}"
        return Card(size=size, note="holds other things", standing=standing, trust=trust)
    exact = format_measured_mass(found.low, system) if trust is Trust.WEIGHED else format_mass(found.low.value, system)
    return Card(size=f"{exact}{_each(thing)}", note=_manner(facts), standing=standing, trust=trust)


def _each(thing: Thing) -> str:
    return " each" if thing.count > 1 else ""


def _filled_size(thing: Thing, found: MassRange, system: UnitSystem) -> str:
    container = thing.facts.container
    if found.material_id is None and container is not None:
        empty, room = format_mass(found.low.value, system), format_volume(container.nominal_l.value, system)
        return f"{empty} empty, holds {room}{_each(thing)}"
    low, high = format_mass(found.low.value, system), format_mass(found.high.value, system)
    return f"{_without_unit_of(low, high)} – {high}{_each(thing)}"


def _without_unit_of(low: str, high: str) -> str:
    """“0.6” of “0.6 kg” where what follows is in kg as well."""
    number, unit = low.rsplit(" ", 1)
    return number if high.endswith(f" {unit}") else low


def _fill_note(thing: Thing, system: UnitSystem, cup_l: float) -> str:
    if len(thing.fills) == 1:
        return f"{thing.fills[0].replace('_', ' ')} only, {format_volume(cup_l, system)} cups"
    return f"any fill, {format_volume(cup_l, system)} cups"


def _manner(facts: Facts) -> str:
    """How it is held and closed; soft things say so."""
    if facts.form in MASS_IS_NO_MATTER:
        return ""
    words = (HANDLE_WORDS[facts.handle], "soft" if facts.rigidity is Rigidity.SOFT else "fixed mass")
    return ", ".join(words)


def _mass_standing(thing: Thing, found: MassRange) -> tuple[str, Trust]:
    dates = [reading.date for reading in thing.readings if reading.date is not None]
    if thing.readings:
        return (f"weighed {_day(max(dates))}" if dates else "weighed"), Trust.WEIGHED
    if found.low.origin is Origin.LABEL and found.low == found.high:
        return "label", Trust.LABEL
    return f"estimated ± {_percent(found.high)}", Trust.ESTIMATED


def _day(day: datetime.date) -> str:
    return f"{day.day} {MONTHS[day.month - 1]} {day.year}"


def _percent(mass: Measured) -> str:
    """u95 as a share of the value, two digits below ten."""
    share = 100 * mass.u95 / mass.value if mass.value > 0 else 0.0
    return f"{share:.1f} %" if share < 10 else f"{share:.0f} %"


def _fixture_card(thing: Thing, system: UnitSystem) -> Card:
    facts = thing.facts
    standing, trust = _borne(thing, system)
    return Card(size=_fixture_size(facts, system), note=_fixture_note(facts), standing=standing, trust=trust)


def _fixture_size(facts: Facts, system: UnitSystem) -> str:
    if facts.flight is not None:
        rise = format_length(facts.flight.rise_cm, system)
        return f"rise {_short(rise)} · {facts.flight.count} steps"
    if facts.surface_cm is None:
        return "height not known"
    return f"{_short(format_length(facts.surface_cm, system))} high"


def _short(length: str) -> str:
    """19.0 cm as 19 cm."""
    return length.replace(".0 ", " ")


def _fixture_note(facts: Facts) -> str:
    words = ["outdoors"] if facts.outdoors else []
    words += [hazard.value for hazard in (Hazard.FOLDING, Hazard.WHEELED, Hazard.GLASS) if hazard in facts.hazards]
    return ", ".join(words)


def _borne(thing: Thing, system: UnitSystem) -> tuple[str, Trust]:
    """What it may bear, and who says so."""
    facts, check = thing.facts, thing.own_check
    if {Hazard.FOLDING, Hazard.WHEELED, Hazard.GLASS} & facts.hazards:
        return "not for stepping", Trust.REFUSED
    if facts.rating_kg is not None:
        who = "you rated it" if facts.rating_origin is RatingOrigin.OWN_CHECK else "rated"
        return f"{who} {_whole_mass(facts.rating_kg, system)}", Trust.RATED
    if facts.rating_origin is RatingOrigin.BUILDING:
        return ("built in" if facts.form is Form.RAIL else "built to walk on"), Trust.BUILT
    if check is not None:
        return f"your check {_day(check.date)}: {_whole_mass(check.took_kg, system)}", Trust.CHECKED
    return "no load rating", Trust.UNRATED


def _whole_mass(kg: float, system: UnitSystem) -> str:
    return f"{kg:.0f} kg" if system is UnitSystem.METRIC else f"{kg / POUND_KG:.0f} lb"


def _place_card(facts: Facts, system: UnitSystem) -> Card:
    parts = [format_distance(facts.route_m, system)] if facts.route_m else []
    parts += [_area(facts.area_m2, system)] if facts.area_m2 else []
    return Card(
        size=" · ".join(parts),
        note="outdoors" if facts.outdoors else "indoors",
        standing="as you say",
        trust=Trust.STATED,
    )


def _area(area_m2: float, system: UnitSystem) -> str:
    if system is UnitSystem.METRIC:
        return f"{area_m2:.0f} m²"
    return f"{area_m2 / (12 * INCH_CM / 100) ** 2:.0f} sq ft"


def _outer_size(facts: Facts, system: UnitSystem) -> str:
    longest = max(facts.length_cm, facts.width_cm, facts.height_cm)
    if facts.form in (Form.WALL, Form.DOOR_FRAME):
        return f"{_short(format_length(longest, system))} high"
    return f"{_short(format_length(longest, system))} long" if longest else "size not known"
