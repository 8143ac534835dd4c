"""What the builder shows, as ready words: ladder, ways, and the load in hand with its parts and steps."""

from __future__ import annotations

import itertools
from bisect import bisect_left, bisect_right
from dataclasses import dataclass

from core.exercise.model import Use
from core.house.model import House
from core.knowledge import Catalog
from core.loads.building import Built, Way
from core.loads.ladder import WIDE_STEP_PCT, Ladder
from core.loads.model import Part, part_name, recipe_name
from core.loads.set_up import fills_of, steps_of, time_words
from core.quantity.display import UnitSystem, format_mass
from core.things.fill_cautions import fill_cautions
from gui.desk.names import USE_NAMES, thing_picture
from gui.fill.present import MassView, mass_view
from gui.fill.words import mass_text, measured_text, nb, whole
from gui.widgets import RungMark, ThingView, Tone, Twin

FROM_KG = 1.0
"""Below this every step is wide, and none is marked."""
USABLE_STEP = 1.02
"""Loads are raised by 2 % at the least (ACSM 2009): what lies nearer is no step of its own."""
NEAR = 3
"""Steps shown below the load in hand, and above."""
EXACT_KG = 0.005


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadView:
    """The load in hand: mass, how far off, its parts with their ±, what to do, what to mind."""

    mass: MassView
    caption: str
    off: str
    parts: tuple[str, ...]
    steps: tuple[str, ...]
    time: str
    cautions: tuple[str, ...]
    pours: bool


def rung_marks(ladder: Ladder, system: UnitSystem) -> tuple[RungMark, ...]:
    """Every load of the ladder; recipes are made only for the one in hand."""
    masses = ladder.masses_kg
    marks = [RungMark(load_kg=kg, load_text=mass_text(kg, system)) for kg in masses[:1]]
    for low, high in itertools.pairwise(masses):
        step_pct = 100 * (high - low) / low
        wide = low >= FROM_KG and step_pct > WIDE_STEP_PCT
        marks.append(
            RungMark(
                load_kg=high,
                load_text=mass_text(high, system),
                step_text=nb(f"+{step_pct:.0f} %") if wide else "",
                wide_step=wide,
            )
        )
    return tuple(marks)


def steps_round(ladder: Ladder, mass_kg: float) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """Places of the next usable steps below and above a mass, each the nearest first."""
    masses = ladder.masses_kg
    below: list[int] = []
    above: list[int] = []
    last = mass_kg
    while len(below) < NEAR and (at := bisect_right(masses, last / USABLE_STEP) - 1) >= 0:
        below.append(at)
        last = masses[at]
    last = mass_kg
    while len(above) < NEAR and (at := bisect_left(masses, last * USABLE_STEP)) < len(masses):
        above.append(at)
        last = masses[at]
    return tuple(below), tuple(above)


def near_marks(ladder: Ladder, way: Way, places: tuple[int | None, ...], system: UnitSystem) -> tuple[RungMark, ...]:
    """The load in hand (place None) among the steps round it, lightest first, each with its recipe."""
    rungs = [way.rung if at is None else ladder.rung(at) for at in places]
    marks: list[RungMark] = []
    below_kg = 0.0
    for rung in rungs:
        kg = rung.mass.value
        step_pct = 100 * (kg - below_kg) / below_kg if below_kg else 0.0
        marks.append(
            RungMark(
                load_kg=kg,
                load_text=mass_text(kg, system),
                recipe=recipe_name(rung.recipe, system),
                step_text=nb(f"+{step_pct:.0f} %") if step_pct else "",
                wide_step=step_pct > WIDE_STEP_PCT,
            )
        )
        below_kg = kg
    return tuple(marks)


def ladder_twin(ladder: Ladder, system: UnitSystem) -> Twin:
    """The ladder as a table, heaviest first, with the wide steps; loads that hardly differ share a line."""
    rows: list[tuple[str, str, str]] = []
    last = 0.0
    for at, kg in enumerate(ladder.masses_kg):
        if kg >= last * USABLE_STEP or at == len(ladder) - 1:
            step = f"+{100 * (kg - last) / last:.0f} %" if last else ""
            rows.append((mass_text(kg, system), nb(step), recipe_name(ladder.rung(at).recipe, system)))
            last = kg
    return Twin(caption=ladder_words(ladder), columns=("load", "step", "how"), rows=tuple(reversed(rows)))


def ladder_words(ladder: Ladder) -> str:
    """How many loads there are, and how many wide steps between them."""
    if not len(ladder):
        return "no load for this use"
    gaps = len(ladder.gaps())
    loads = f"{len(ladder):,} load{'s' if len(ladder) != 1 else ''}"
    return f"{loads}, {gaps or 'no'} wide step{'s' if gaps != 1 else ''}"


def way_views(built: Built, house: House, system: UnitSystem) -> tuple[ThingView, ...]:
    """A card for each way, best first."""
    return tuple(
        ThingView(
            thing_id=str(place),
            title=measured_text(way.rung.mass, system),
            line=recipe_name(way.rung.recipe, system),
            detail=f"{off_words(way, system)} · {time_words(way.rung.set_up_s)} to set up",
            chip="" if built.ways else "outside your limit",
            chip_tone=Tone.FAIR,
            picture=thing_picture(house.thing(way.rung.recipe.thing_ids[0]).icon),
        )
        for place, way in enumerate(built.nearest)
    )


def answer_words(built: Built, use: Use, system: UnitSystem) -> str:
    """The sentence above the ways."""
    target = format_mass(built.target_kg, system)
    if built.ways:
        ways = "One way" if len(built.ways) == 1 else f"{len(built.ways)} ways"
        return whole(f"{ways} to {target}, the best first")
    if built.nearest:
        return whole(f"Nothing here makes {target} within {built.within_pct:g} %. The nearest:")
    return f"Nothing you list can be held this way: {USE_NAMES[use]}."


def off_words(way: Way, system: UnitSystem) -> str:
    """How far off the wanted mass it is, and how far two hands are apart."""
    off = (
        "as you want it" if abs(way.off_kg) < EXACT_KG else f"{mass_text(abs(way.off_kg), system)} {_side(way.off_kg)}"
    )
    if way.apart_kg is None:
        return off
    alike = "both alike" if way.apart_kg < EXACT_KG else f"hands {mass_text(way.apart_kg, system)} apart"
    return f"{off}, {alike}"


def _off_sentence(way: Way, target_kg: float, system: UnitSystem) -> str:
    """“0.16 kg over the 12.0 kg you want, both alike.”"""
    off, comma, hands = off_words(way, system).partition(",")
    if abs(way.off_kg) >= EXACT_KG:
        off += f" the {format_mass(target_kg, system)} you want"
    return whole(f"{off[0].upper()}{off[1:]}{comma}{hands}.")


def load_view(
    way: Way, house: House, catalog: Catalog, system: UnitSystem, *, target_kg: float | None = None
) -> LoadView:
    """One load as it is shown in full, against `target_kg` when a mass was asked for."""
    rung = way.rung
    steps = steps_of(rung, house, catalog.material_by_id, system=system)
    both = rung.use is Use.PAIR
    return LoadView(
        mass=mass_view(rung.mass, system),
        caption="Both together weigh" if both else "This load weighs",
        off="" if target_kg is None else _off_sentence(way, target_kg, system),
        parts=tuple(_part_words(part, system) for part in rung.recipe.parts),
        steps=tuple(whole(step.sentence) for step in steps),
        time=f"{time_words(rung.set_up_s)} to set up",
        cautions=_cautions(rung.recipe.parts, house, catalog),
        pours=bool(fills_of(rung)),
    )


def _part_words(part: Part, system: UnitSystem) -> str:
    each = " each" if part.count > 1 else ""
    return f"{part_name(part, system)}: {measured_text(part.each, system)}{each}"


def _side(off_kg: float) -> str:
    return "over" if off_kg > 0 else "under"


def _cautions(parts: tuple[Part, ...], house: House, catalog: Catalog) -> tuple[str, ...]:
    found: list[str] = []
    for part in parts:
        thing = house.thing(part.thing_id)
        if part.material_id is None:
            found.extend(thing.cautions)
            continue
        material = catalog.material_by_id[part.material_id]
        found.extend((*fill_cautions(thing, material, part.fill_l), *(material.cautions if part.fill_l else ())))
    return tuple(dict.fromkeys(whole(one) for one in found))
