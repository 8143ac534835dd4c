"""What meets a need that is no load: a thing (or the place itself) to stand, lean, hang or move on, or why none."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from core.exercise.model import Demand, Exercise, Need, Posture, Use
from core.fit.geometry import ceiling_reason, too_high_to_stand_on, working_heights
from core.fit.model import Held, Offer
from core.fit.setting import Setting
from core.fit.words import nothing_listed
from core.things.affordance import Grade, knee_angle_deg
from core.things.model import Thing

HELD_BY = frozenset({Use.HANG_BAR, Use.ANCHOR, Use.RINGS})
LIGHT_HOLD = 0.2
"""A door frame may be leaned and pressed on by its nature; a pull of more than this share of the body needs a check."""


@dataclass(frozen=True, slots=True)
class Fixture:
    """One way to meet a need: what holds it, the thing (None: the place) and how much more it may bear, kg."""

    held: Held
    thing: Thing | None
    spare_kg: float


def fixed_needs(exercise: Exercise) -> tuple[Need, ...]:
    """Needs that must be met by something to stand, lean, hang or move on."""
    return tuple(need for need in exercise.needs if not need.optional and not need.is_load)


def place_reasons(exercise: Exercise, setting: Setting) -> Iterator[str]:
    """Why the place itself rules the exercise out: floor, ceiling, sky, wet."""
    place = setting.place
    if exercise.outdoors_only and not place.outdoors:
        yield f"it is done outdoors, {place.name} is indoors"
    if exercise.floor_m2 > place.floor_m2 and not exercise.outdoors_only:
        yield f"it needs {exercise.floor_m2:.1f} m² of clear floor, {place.name} has {place.floor_m2:.1f}"
    if exercise.skip_when_wet and place.wet:
        yield f"it is not safe on a wet surface, and {place.name} is wet"
    if place.ceiling_cm is not None:
        reason = ceiling_reason(exercise, setting.person, place)
        if reason:
            yield reason


def fixtures_for(need: Need, exercise: Exercise, setting: Setting) -> tuple[Fixture, ...]:
    """Everything here that meets the need by itself: earlier uses first, then better grades, then by id."""
    found = []
    for use in need.uses:
        for offer in setting.offers(use):
            fixture = as_fixture(need, exercise, setting, offer)
            if fixture is not None:
                found.append(fixture)
    return tuple(found)


def as_fixture(need: Need, exercise: Exercise, setting: Setting, offer: Offer) -> Fixture | None:
    """The offer as what meets the need, or None where height, number, way or rating don't do."""
    held = _holds(need, exercise, setting, offer)
    spare_kg = _spare_kg(need, offer.thing, exercise, setting)
    return None if isinstance(held, str) or spare_kg < 0 else Fixture(held, offer.thing, spare_kg)


def _spare_kg(need: Need, thing: Thing | None, exercise: Exercise, setting: Setting) -> float:
    """What the thing may bear beyond the share of the body on it; negative when it may not even bear that."""
    limit_kg = None if thing is None or not need.bears else bearing_limit_kg(thing)
    return math.inf if limit_kg is None else limit_kg - borne_kg(need, exercise, setting)


def borne_kg(need: Need, exercise: Exercise, setting: Setting) -> float:
    """What of the body may come onto the fixture: where the movement hangs, all of it, for the feet may slip."""
    hangs = Demand.HANGING in exercise.demands and not HELD_BY.isdisjoint(need.uses)
    return (1.0 if hangs else need.bears) * setting.person.body_mass_kg


def bearing_limit_kg(thing: Thing) -> float | None:
    """The rating, else what the person's own check took; None where neither is recorded."""
    if thing.facts.rating_kg is not None:
        return thing.facts.rating_kg
    return thing.own_check.took_kg if thing.own_check is not None else None


def _holds(need: Need, exercise: Exercise, setting: Setting, offer: Offer) -> Held | str:
    thing = offer.thing
    if offer.use is Use.ROUTE:
        way_m = thing.facts.route_m if thing is not None else setting.place.walk_m
        if way_m < need.space_m:
            return f"{offer.name} gives {way_m:.0f} m, it needs {need.space_m:.0f} m"
    if offer.use is Use.DOOR_FRAME and need.bears > LIGHT_HOLD:
        return _pulled_frame(offer)
    if thing is None:
        return _held(offer, None)
    if need.count > thing.count:
        return f"it needs {need.count} alike, you list one {thing.name.lower()}"
    heights = working_heights(thing, offer.use)
    if need.height_cm is None and offer.use is not Use.STEP:
        return _held(offer, heights[0] if heights else None)
    low, high = need.height_cm or (0.0, math.inf)
    in_range = [height for height in heights if low <= height <= high]
    fitting = [height for height in in_range if not _step_reason(exercise, setting, offer, height)]
    if fitting:
        return _held(offer, fitting[0])
    if in_range:
        return _step_reason(exercise, setting, offer, in_range[0])
    if not heights:
        return f"the height of {thing.name.lower()} is not known: add it"
    return f"{thing.name} is {heights[0]:.0f} cm high, it needs {low:.0f} to {high:.0f} cm"


def _pulled_frame(offer: Offer) -> Held | str:
    """A door frame that part of the body hangs back from: only what its owner has checked, or what is rated."""
    thing = offer.thing
    if thing is None or bearing_limit_kg(thing) is None:
        return f"{offer.name} is not made to be pulled on: list it with your own check that it holds"
    if thing.facts.rating_kg is not None:
        return _held(offer, None)
    return replace(_held(offer, None), grade=Grade.FAIR, reason="your own check, no rating: start with your feet close")


def _held(offer: Offer, height_cm: float | None) -> Held:
    return Held(
        use=offer.use,
        thing_id=offer.thing_id,
        name=offer.name,
        grade=offer.grade,
        reason=offer.reason,
        height_cm=height_cm,
    )


def _step_reason(exercise: Exercise, setting: Setting, offer: Offer, height_cm: float) -> str:
    """Why this person can't step up to this height here, or an empty string."""
    if offer.use is not Use.STEP:
        return ""
    person, place = setting.person, setting.place
    if Demand.DEEP_KNEE_BEND in person.spares and knee_angle_deg(height_cm, person) > 90.0:
        return f"{offer.name} bends your knee past a right angle"
    if exercise.posture in (Posture.STANDING, Posture.MOVING) and too_high_to_stand_on(
        exercise, person, place, height_cm
    ):
        return f"{offer.name} is {height_cm:.0f} cm high, too much under the ceiling of {place.name}"
    return ""


def why_no_fixture(need: Need, exercise: Exercise, setting: Setting) -> str:
    """Name the nearest thing that may not serve, with the reason, else just what is lacking."""
    for use in need.uses:
        for offer in sorted(setting.offers(use), key=lambda offer: offer.thing is None):
            held = _holds(need, exercise, setting, offer)
            if isinstance(held, str):
                return held
            if offer.thing is not None and _spare_kg(need, offer.thing, exercise, setting) < 0:
                return _too_much_on(offer.thing, borne_kg(need, exercise, setting))
        refused = setting.refusals(use)
        if refused and not need.is_load:
            return f"{refused[0].name}: {refused[0].reason}"
    return nothing_listed(need.uses[0])


def _too_much_on(thing: Thing, bears_kg: float) -> str:
    who = "it is rated" if thing.facts.rating_kg is not None else "your check took"
    return f"{thing.name}: {who} {bearing_limit_kg(thing) or 0.0:.0f} kg, this puts {bears_kg:.0f} kg on it"
