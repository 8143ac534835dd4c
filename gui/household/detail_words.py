"""What the detail card of a thing says: what it weighs and how that is known, what it is good for and not, and why."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from core.exercise.model import Use
from core.house.model import House, Person, Place
from core.knowledge import Catalog
from core.mass.model import Material
from core.quantity import Measured, Origin
from core.quantity.display import UnitSystem, format_length, format_mass, format_measured_mass
from core.things.affordance import RANK, Affordance, Grade, affordances
from core.things.describe import BORNE_FORMS, HANDLE_WORDS, MASS_IS_NO_MATTER, card
from core.things.model import Facts, Form, Handle, Thing
from core.things.weight import MassRange, mass_range
from gui.desk.names import USE_NAMES, thing_picture
from gui.household.thing_words import place_names, thing_title
from gui.theme import ThingPicture
from gui.widgets import Tone

SPACE = "\u00a0"
_KNOWN_BY: dict[Origin, str] = {
    Origin.EXACT: "exact",
    Origin.SCALE: "your scale",
    Origin.LABEL: "from its label",
    Origin.MEASURED: "as you said",
    Origin.COMBINED: "estimate and your scale, combined",
    Origin.ESTIMATE: "estimated from its kind",
}
_HELD = frozenset({Form.VESSEL, Form.TIN, Form.SACK, Form.BLOCK, Form.BOOK, Form.BAG, Form.FREE_WEIGHT})


@dataclass(frozen=True, slots=True, kw_only=True)
class UseLine:
    """One way to use it: the chip, its tone and the words beside it; `why` is a reason they leave out."""

    chip: str
    tone: Tone
    text: str
    why: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class DetailView:
    """The card, ready to paint. `label` and `figure` are the fact that matters most, `known` where it comes from."""

    thing_id: str
    title: str
    picture: ThingPicture
    facts: str
    label: str
    figure: str
    doubt: str
    known: str
    good: tuple[UseLine, ...]
    fair: tuple[UseLine, ...]
    bad: tuple[UseLine, ...]
    caution: str
    weighable: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Viewpoint:
    """For whom the card is written: the house, who trains, the units, and the words for movements."""

    house: House
    person: Person | None
    system: UnitSystem
    materials: tuple[Material, ...]
    movements: Mapping[Use, str]


def materials_at_hand(house: House, catalog: Catalog) -> tuple[Material, ...]:
    """The fills of this house, as the catalog knows them."""
    return tuple(catalog.material_by_id[fill] for fill in house.fills if fill in catalog.material_by_id)


def detail_view(thing: Thing, kind_name: str, seen: Viewpoint) -> DetailView:
    """The whole card."""
    label, figure, doubt, known = _figure(thing, seen)
    lines = use_lines(thing, seen)
    return DetailView(
        thing_id=thing.id,
        title=thing_title(thing),
        picture=thing_picture(thing.icon),
        facts=_facts_line(thing, kind_name, seen),
        label=label,
        figure=figure,
        doubt=doubt,
        known=known,
        good=tuple(line for line in lines if line.tone is Tone.GOOD),
        fair=tuple(line for line in lines if line.tone is Tone.FAIR),
        bad=tuple(line for line in lines if line.tone is Tone.BAD),
        caution=" ".join(thing.cautions),
        weighable=is_weighable(thing),
    )


def is_weighable(thing: Thing) -> bool:
    """Whether its mass matters and can be found on a scale."""
    return thing.facts.form in _HELD and not thing.facts.fixed


def use_lines(thing: Thing, seen: Viewpoint) -> tuple[UseLine, ...]:
    """Every way its form could serve, judged in the place of this house where it serves best, best grade first."""
    asked = _by_place(thing, seen)
    lines = []
    for use in tuple(found.use for found in asked[0][1]):
        graded = [(place, next(one for one in answers if one.use is use)) for place, answers in asked]
        best = min(graded, key=lambda pair: RANK[pair[1].grade])[1]
        lines.append((RANK[best.grade], _use_line(use, best, graded, seen)))
    return tuple(line for _, line in sorted(lines, key=lambda pair: pair[0]))


_Answers = tuple[Place | None, tuple[Affordance, ...]]


def _by_place(thing: Thing, seen: Viewpoint) -> list[_Answers]:
    """The answers in each place where the thing can be at all; all of them where it can be nowhere."""
    places: tuple[Place | None, ...] = seen.house.places or (None,)
    asked: list[_Answers] = [(place, affordances(thing, seen.person, place)) for place in places]
    there = [pair for pair in asked if any(one.grade is not Grade.NO for one in pair[1])]
    return there or asked


def _use_line(use: Use, best: Affordance, graded: list[tuple[Place | None, Affordance]], seen: Viewpoint) -> UseLine:
    tone = {Grade.GOOD: Tone.GOOD, Grade.NO: Tone.BAD}.get(best.grade, Tone.FAIR)
    movements = seen.movements.get(use, "") if best.grade is Grade.GOOD else ""
    text = movements or best.reason
    if best.grade is not Grade.NO:
        refused = [(place, one) for place, one in graded if place is not None and one.grade is Grade.NO]
        text = "; ".join((text, *(_elsewhere(place, one) for place, one in refused)))
    return UseLine(chip=USE_NAMES[use], tone=tone, text=text, why=best.reason if movements else "")


def _elsewhere(place: Place | None, refused: Affordance) -> str:
    """A reason that names the place itself needs no second mention of it."""
    name = place.name if place is not None else ""
    return f"not there: {refused.reason}" if name in refused.reason else f"not in {name}: {refused.reason}"


def _facts_line(thing: Thing, kind_name: str, seen: Viewpoint) -> str:
    facts = thing.facts
    parts = [kind_name.lower() if kind_name and kind_name.casefold() != thing.name.casefold() else ""]
    parts.append(sides_words(facts, seen.system))
    if facts.form in _HELD:
        parts.append("no handles" if facts.handle is Handle.NONE else HANDLE_WORDS[facts.handle])
    parts.append(" and ".join(place_names(thing, seen.house)))
    return ", ".join(part for part in parts if part)


def sides_words(facts: Facts, system: UnitSystem) -> str:
    """“62 × 38 × 12 cm”; nothing where the outer size is not known."""
    sides = [side for side in (facts.length_cm, facts.width_cm, facts.height_cm) if side > 0]
    if len(sides) < 3:
        return ""
    written = [format_length(side, system).replace(".0 ", " ").rsplit(" ", 1) for side in sides]
    if len({unit for _, unit in written}) > 1 or any(" " in number for number, _ in written):
        return " × ".join(" ".join(pair) for pair in written)
    return f"{' × '.join(number for number, _ in written)}{SPACE}{written[0][1]}"


def _figure(thing: Thing, seen: Viewpoint) -> tuple[str, str, str, str]:
    """Label, figure, ± and where it comes from: the mass of a load, the height of what bears you, else the size."""
    told = card(thing, seen.system, seen.materials, cup_l=seen.house.cup_l)
    if thing.facts.flight is not None or thing.facts.form in BORNE_FORMS:
        label = "Steps" if thing.facts.flight is not None else "Height"
        return label, told.size.removesuffix(" high"), "", told.standing
    found = mass_range(thing, seen.materials)
    if found is None or thing.facts.form in MASS_IS_NO_MATTER:
        return "Size", told.size, "", told.standing or "the usual size of its kind; edit it if yours differs"
    return _mass_figure(thing, found, seen)


def _mass_figure(thing: Thing, found: MassRange, seen: Viewpoint) -> tuple[str, str, str, str]:
    each = " each" if thing.count > 1 else ""
    facts = thing.facts
    if facts.container is not None and found.material_id is not None:
        fill = next(one.name.lower() for one in seen.materials if one.id == found.material_id)
        figure, doubt = _parted(found.high, seen.system)
        empty = format_measured_mass(found.low, seen.system)
        known = f"empty {empty}, {_KNOWN_BY[found.low.origin]}"
        return f"Mass{each}, full of {fill}", figure, doubt, known
    figure, doubt = _parted(found.low, seen.system)
    known = _KNOWN_BY[found.low.origin]
    if facts.hold is not None:
        return "Mass, empty", figure, doubt, f"{known}; carries up to {format_mass(facts.hold.limit_kg, seen.system)}"
    return f"Mass{each}", figure, doubt, _weighed_words(thing, known)


def _weighed_words(thing: Thing, known: str) -> str:
    times = len(thing.readings)
    if not times:
        return known
    return f"{known}; weighed {'once' if times == 1 else f'{times} times'}"


def _parted(mass: Measured, system: UnitSystem) -> tuple[str, str]:
    """The figure and its ± apart, so that they can be set in two sizes."""
    figure, _, doubt = format_measured_mass(mass, system).partition(" ± ")
    return figure.replace(" ", SPACE), f"±{SPACE}{doubt}" if doubt else ""
