"""What a hand does to set a load up: pour in, pour off, fill, empty, put in the bag; and what then stands where.

A step compares the recipe with what is in the thing now. Sentences are ready to read, in the person's units.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from core.errors import InputError
from core.house.model import House
from core.loads.filling import filling_of
from core.loads.model import Part, Rung
from core.mass.model import Material
from core.quantity.display import UnitSystem, format_length, format_volume
from core.things.model import Fill, Thing

SAME_L = 0.005
MINUTE_S = 60.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One thing of a recipe, and what is done with it in one sentence. `ready` when it stands so already."""

    thing_id: str
    sentence: str
    ready: bool = False


def steps_of(
    rung: Rung, house: House, materials: Mapping[str, Material], *, system: UnitSystem = UnitSystem.METRIC
) -> tuple[Step, ...]:
    """What to do, thing by thing: containers first, then what is put into the bag."""
    bag = rung.recipe.parts[0] if rung.recipe.packed else None
    loose = [part for part in rung.recipe.parts if part is not bag]
    poured = [_poured(part, house, materials, system) for part in loose if part.material_id is not None]
    return (*poured, *_taken(bag, loose))


def fills_of(rung: Rung) -> tuple[tuple[str, Fill | None], ...]:
    """What is in each container once the load is set up: thing ids and fills, None for empty."""
    return tuple(
        (part.thing_id, Fill(material_id=part.material_id, volume_l=part.fill_l) if part.fill_l > 0 else None)
        for part in rung.recipe.parts
        if part.material_id is not None
    )


def time_words(seconds: float) -> str:
    """How long a set-up takes, as roughly as it is known: “under a minute”, “about 3 min”."""
    minutes = round(seconds / MINUTE_S)
    return "under a minute" if minutes < 1 else f"about {minutes} min"


def _poured(part: Part, house: House, materials: Mapping[str, Material], system: UnitSystem) -> Step:
    thing = house.thing(part.thing_id)
    words, ready = _pouring(part, thing.fill, house.cup_l, system)
    line = "" if ready or part.fill_l < SAME_L else _line(thing, part, materials, system)
    return Step(thing_id=thing.id, sentence=f"{_counted(part)}: {words}{line}.", ready=ready)


def _pouring(part: Part, now: Fill | None, cup_l: float, system: UnitSystem) -> tuple[str, bool]:
    """What to do with the contents there are, and whether there is nothing to do."""
    before_l = now.volume_l if now is not None else 0.0
    same = now is None or now.material_id == part.material_id
    change_l = part.fill_l - before_l if same else part.fill_l
    if same and abs(change_l) < SAME_L:
        return ("it stays as it is" if part.fill_l else "take it empty"), True
    if part.fill_l < SAME_L:
        return "empty it", False
    each = " each" if part.count > 1 else ""
    more = " more" if same and before_l and change_l > 0 else ""
    stuff = f"{format_volume(abs(change_l), system)}{more} {part.material_name.lower()}{each}"
    verb = "pour off" if change_l < 0 else "pour in" if same else "empty it, then pour in"
    return f"{verb} {stuff}{_cups(abs(change_l), cup_l, system)}", False


def _taken(bag: Part | None, loose: list[Part]) -> Iterator[Step]:
    """Putting things into the bag, or just taking them."""
    if bag is not None:
        inside = ", ".join(_counted(part) for part in loose)
        sentence = f"{bag.name}: put in {inside}." if inside else f"{bag.name}: take it empty."
        yield Step(thing_id=bag.thing_id, sentence=sentence)
        return
    for part in loose:
        if part.material_id is None:
            yield Step(thing_id=part.thing_id, sentence=f"{_counted(part)}: take it as it is.", ready=True)


def _counted(part: Part) -> str:
    return part.name if part.count == 1 else f"{part.count} × {part.name}"


def _cups(litres: float, cup_l: float, system: UnitSystem) -> str:
    """How many cups that is, where it comes out whole."""
    count = round(litres / cup_l)
    whole = count >= 1 and abs(count * cup_l - litres) < SAME_L
    return f" ({count} × {format_volume(cup_l, system)})" if whole else ""


def _line(thing: Thing, part: Part, materials: Mapping[str, Material], system: UnitSystem) -> str:
    """Where the line then stands; nothing for what has no line or can't be worked out."""
    if part.material_id is None:
        return ""
    try:
        gauge = filling_of(thing, materials[part.material_id]).gauge
    except InputError:
        return ""
    if not gauge.has_line:
        return ""
    return f", up to {format_length(gauge.height_of_volume(part.fill_l), system)}"
