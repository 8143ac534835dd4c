"""What the owner says of a thing after it was added, worked into its facts.

A stated figure goes before the kind's usual one. Every figure is checked against what such a thing can be, so a slip
of the unit is told at once (`InputError`) and never kept.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from core.errors import InputError
from core.mass.bounds import LARGEST_L
from core.quantity import Measured, Origin
from core.things.amounts import (
    LENGTH_CM,
    MOST_ALIKE,
    MOST_STEPS,
    RATING_KG,
    RISE_CM,
    SIZE_RATIO,
    SURFACE_CM,
    WAY_CM,
    Changes,
)
from core.things.making import with_changes
from core.things.model import Facts, Hazard, RatingOrigin, Thing, ThingKind
from core.things.typed_numbers import Measure
from core.things.words import typical_amount

STATED_SHARE = 0.02
"""Half-width of a mass the owner states without a weighing (assumed, as for a label)."""
MOST_PIECE_KG = 1000.0
LIMIT_KG = (0.5, 500.0)
LONGEST_NAME = 80


@dataclass(frozen=True, slots=True, kw_only=True)
class Corrections:
    """Facts to change; None leaves what is there. `unrated` takes a rating away; litres, kg, cm and m.

    `mass_kg` is one piece as it is, or the empty piece where it can be filled or packed. `limit_kg` is what a bag may
    carry, `height_cm` the surface where there is one.
    """

    name: str | None = None
    count: int | None = None
    capacity_l: float | None = None
    mass_kg: float | None = None
    limit_kg: float | None = None
    height_cm: float | None = None
    length_cm: float | None = None
    steps: int | None = None
    rise_cm: float | None = None
    route_m: float | None = None
    rating_kg: float | None = None
    unrated: bool = False
    place_ids: tuple[str, ...] | None = None
    hazards: frozenset[Hazard] | None = None


def corrected(thing: Thing, told: Corrections, kind: ThingKind | None = None) -> Thing:
    """The thing with every correction; `InputError` names the first figure such a thing can't have."""
    _check(told, kind)
    facts = _sized(thing.facts, told)
    if told.mass_kg is not None:
        facts = with_stated_mass(facts, told.mass_kg)
    facts = _rated(facts, told, kind)
    changed = replace(
        thing,
        name=thing.name if told.name is None else " ".join(told.name.split()),
        count=thing.count if told.count is None else told.count,
        facts=facts,
        place_ids=thing.place_ids if told.place_ids is None else told.place_ids,
    )
    return changed if told.hazards is None else _with_hazards(changed, told.hazards, kind)


def with_stated_mass(facts: Facts, kg: float) -> Facts:
    """The facts with the owner's figure for one piece: of a container what it weighs empty."""
    stated = Measured.rectangular(kg, STATED_SHARE * kg, Origin.MEASURED)
    if facts.container is not None:
        return replace(facts, container=replace(facts.container, tare_kg=stated))
    return replace(facts, mass=stated)


def _sized(facts: Facts, told: Corrections) -> Facts:
    """A vessel of another size keeps an empty mass that was stated for it."""
    changes = Changes(
        capacity_l=told.capacity_l,
        height_cm=told.height_cm,
        length_cm=told.length_cm,
        steps=told.steps,
        rise_cm=told.rise_cm,
        route_m=told.route_m,
        rating_kg=told.limit_kg if facts.hold is not None else None,
    )
    changed = with_changes(facts, changes)
    before, after = facts.container, changed.container
    if before is not None and after is not None and before.tare_kg.origin is Origin.MEASURED:
        return replace(changed, container=replace(after, tare_kg=before.tare_kg))
    return changed


def _rated(facts: Facts, told: Corrections, kind: ThingKind | None) -> Facts:
    if told.unrated:
        built = kind is not None and kind.facts.rating_origin is RatingOrigin.BUILDING
        return replace(facts, rating_kg=None, rating_origin=RatingOrigin.BUILDING if built else RatingOrigin.NONE)
    return facts if told.rating_kg is None else with_changes(facts, Changes(rating_kg=told.rating_kg))


def _with_hazards(thing: Thing, hazards: frozenset[Hazard], kind: ThingKind | None) -> Thing:
    """What held chemicals is never filled again; when that was a slip, the kind's own fills come back."""
    facts = replace(thing.facts, hazards=hazards)
    if Hazard.HELD_CHEMICALS in hazards:
        return replace(thing, facts=facts, fills=(), fill=None)
    fills = kind.fills if kind is not None and Hazard.HELD_CHEMICALS in thing.facts.hazards else thing.fills
    return replace(thing, facts=facts, fills=fills)


def _check(told: Corrections, kind: ThingKind | None) -> None:
    if told.name is not None and not 0 < len(" ".join(told.name.split())) <= LONGEST_NAME:
        raise InputError(told.name, f"is no name (1 to {LONGEST_NAME} letters)", "write what you call it")
    if told.count is not None and not 1 <= told.count <= MOST_ALIKE:
        raise InputError(told.count, f"is no number of things (1 to {MOST_ALIKE})", "remove it if you have none")
    if told.steps is not None and not 1 <= told.steps <= MOST_STEPS:
        raise InputError(told.steps, f"is no number of steps (1 to {MOST_STEPS})", "count them again")
    _within(told.mass_kg, (0.0, MOST_PIECE_KG), "mass", "kg")
    _within(told.limit_kg, LIMIT_KG, "load for a bag", "kg")
    _within(told.height_cm, SURFACE_CM, "height", "cm")
    _within(told.length_cm, LENGTH_CM, "length", "cm")
    _within(told.rise_cm, RISE_CM, "height of a step", "cm")
    _within(told.route_m, (WAY_CM[0] / 100, WAY_CM[1] / 100), "way", "m")
    _within(told.rating_kg, RATING_KG, "rating", "kg")
    _within(told.capacity_l, _capacity_limits(kind), "capacity for this kind of thing", "L")


def _capacity_limits(kind: ThingKind | None) -> tuple[float, float]:
    usual_l = typical_amount(kind, Measure.VOLUME) if kind is not None else None
    if usual_l is None:
        return (0.01, LARGEST_L)
    low, high = SIZE_RATIO[Measure.VOLUME]
    return (low * usual_l, high * usual_l)


def _within(value: float | None, limits: tuple[float, float], what: str, unit: str) -> None:
    low, high = limits
    if value is not None and not low <= value <= high:
        rule = f"is no usable {what} ({low:.3g} to {high:,.5g} {unit})"
        raise InputError(f"{value:g} {unit}", rule, "check the number and its unit")
