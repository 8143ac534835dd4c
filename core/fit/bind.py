"""Bind an exercise to this house: the best distinct things for its needs and a load near the wanted one, or why not.

Deterministic: offers come sorted by grade and id, and the first that meets a need's range, height and bearing is taken.
"""

from __future__ import annotations

from dataclasses import dataclass

from core.exercise.model import Demand, Exercise, Need, Posture, Use
from core.fit.geometry import ceiling_reason, knee_angle_deg, working_heights
from core.fit.model import Binding, Held, Missing, Offer
from core.fit.setting import GRADE_ORDER, Setting
from core.house.model import Experience
from core.loads.ladder import Ladder
from core.loads.model import Rung
from core.things.affordance import Grade
from core.things.model import RatingOrigin

START_PLACE: dict[Experience, float] = {Experience.NEW: 0.25, Experience.SOME: 0.45, Experience.TRAINED: 0.65}
"""Where in an exercise's sensible load range someone starts when no effort is asked for; assumed, to be light."""
USE_WORDS: dict[Use, str] = {
    Use.HUG: "something to hug to the chest",
    Use.FRONT: "something to hold in front",
    Use.ONE_HAND: "a load to hold in one hand",
    Use.TWO_HANDS: "a load to hold in two hands",
    Use.PAIR: "two alike, one for each hand",
    Use.BACK: "a loaded backpack",
    Use.SHOULDER: "a load to lay on one shoulder",
    Use.OVERHEAD: "a load safe to press overhead",
    Use.BETWEEN_FEET: "a load to lift from between the feet",
    Use.DRAG: "something to drag",
    Use.SWING: "a load safe to swing",
    Use.STEP: "something safe to step on",
    Use.SIT: "a seat",
    Use.HANDS: "something steady to lean the hands on",
    Use.FEET: "something steady to raise the feet on",
    Use.BALANCE: "something to hold for balance",
    Use.ROW_EDGE: "an edge or beam rated to row from",
    Use.HANG_BAR: "something rated to hang from",
    Use.ANCHOR: "a rated anchor for a strap or band",
    Use.TOWEL: "a towel",
    Use.BAND: "an elastic band",
    Use.STICK: "a stick or broom",
    Use.SLIDER: "something that slides on the floor",
    Use.PAD: "something soft to kneel or lie on",
    Use.WALL: "a wall",
    Use.DOOR_FRAME: "a door frame",
    Use.FLOOR: "clear floor",
    Use.STAIRS: "stairs",
    Use.ROUTE: "a clear way to walk",
    Use.BARBELL: "a barbell",
    Use.RACK: "a rack",
    Use.FLAT_BENCH: "a training bench",
    Use.MACHINE: "a machine",
    Use.CABLE: "a cable machine",
    Use.RINGS: "rings",
}


@dataclass(frozen=True, slots=True)
class _Found:
    held: Held
    cautions: tuple[str, ...]


def bind(exercise: Exercise, setting: Setting, *, wanted_kg: float | None = None) -> Binding | Missing:
    """The best way to do `exercise` here with a load near `wanted_kg`, or every reason why it can't be done.

    `wanted_kg` None takes a light start within the exercise's range for the person's experience.
    """
    why = list(place_reasons(exercise, setting))
    lacking: list[Use] = []
    fixtures: list[_Found] = []
    for need in exercise.needs:
        if need.is_load or need.optional:
            continue
        found = _fixture(need, exercise, setting, frozenset(item.held.thing_id for item in fixtures))
        if isinstance(found, str):
            why.append(found)
            lacking.append(need.uses[0])
        else:
            fixtures.append(found)
    used = frozenset(item.held.thing_id for item in fixtures if item.held.thing_id)
    load = _load(exercise, setting, wanted_kg, used)
    if isinstance(load, str):
        why.append(load)
        need_of_load = exercise.load_need
        lacking.extend(need_of_load.uses[:1] if need_of_load is not None else ())
    if why or isinstance(load, str):
        return Missing(exercise_id=exercise.id, why=tuple(why), lacking=tuple(lacking))
    heavy = _overloaded(exercise, setting, fixtures, load[0] if load is not None else None)
    if heavy:
        return Missing(exercise_id=exercise.id, why=heavy, lacking=())
    return _binding(exercise, setting, fixtures, load)


def place_reasons(exercise: Exercise, setting: Setting) -> tuple[str, ...]:
    """Why the place itself rules the exercise out: floor, ceiling, sky, wet."""
    place = setting.place
    found = []
    if exercise.outdoors_only and not place.outdoors:
        found.append(f"it is done outdoors, {place.name} is indoors")
    if exercise.floor_m2 > place.floor_m2 and not exercise.outdoors_only:
        found.append(f"it needs {exercise.floor_m2:.1f} m² of clear floor, {place.name} has {place.floor_m2:.1f}")
    if exercise.skip_when_wet and place.wet:
        found.append(f"it is not safe on a wet surface, and {place.name} is wet")
    if exercise.reach_over_head:
        reason = ceiling_reason(setting.person, place, seated=exercise.posture in (Posture.SEATED, Posture.FLOOR))
        found.extend([reason] if reason else [])
    return tuple(found)


def _fixture(need: Need, exercise: Exercise, setting: Setting, taken: frozenset[str]) -> _Found | str:
    refused = ""
    for use in need.uses:
        for offer in setting.offers(use):
            if offer.thing_id and offer.thing_id in taken:
                continue
            held = _holds(need, exercise, setting, offer)
            if not isinstance(held, str):
                return _Found(held, offer.thing.cautions if offer.thing is not None else ())
            refused = refused or held
    return refused or _nothing_for(need, setting)


def _nothing_for(need: Need, setting: Setting) -> str:
    """Name the nearest refused thing when there is one worth naming, else just what is lacking."""
    for use in need.uses:
        for refusal in setting.refusals(use):
            if refusal.thing is not None and refusal.reason and _looks_like(refusal, use):
                return f"{refusal.name}: {refusal.reason}"
    return f"you list no {_bare(USE_WORDS[need.uses[0]])}"


def _bare(words: str) -> str:
    """“a wall” after “no”: “wall”; “something …” becomes “thing …”."""
    for article, instead in (("something ", "thing "), ("an ", ""), ("a ", "")):
        if words.startswith(article):
            return instead + words[len(article) :]
    return words


def _looks_like(refusal: Offer, use: Use) -> bool:
    """Whether refusing this thing tells the person something: it has a surface or rating that the use is about."""
    facts = refusal.thing.facts if refusal.thing is not None else None
    upright = (Use.STEP, Use.SIT, Use.HANDS, Use.FEET, Use.ROW_EDGE, Use.HANG_BAR, Use.BALANCE)
    return facts is not None and use in upright and (facts.surface_cm is not None or facts.flight is not None)


def _holds(need: Need, exercise: Exercise, setting: Setting, offer: Offer) -> Held | str:
    thing = offer.thing
    if offer.use is Use.ROUTE:
        way_m = thing.facts.route_m if thing is not None else setting.place.walk_m
        if way_m < need.space_m:
            return f"{offer.name} gives {way_m:.0f} m, it needs {need.space_m:.0f} m"
    if thing is None:
        return _held(offer, None)
    if need.count > thing.count:
        return f"it needs {need.count} alike, you list one {thing.name.lower()}"
    heights = working_heights(thing, offer.use)
    if need.height_cm is None:
        return _held(offer, heights[0] if heights else None)
    low, high = need.height_cm
    fitting = [height for height in heights if low <= height <= high]
    fitting = [height for height in fitting if not _too_deep(exercise, setting, offer.use, height)]
    if fitting:
        return _held(offer, fitting[0])
    if not heights:
        return f"the height of {thing.name.lower()} is not known: add it"
    if any(low <= height <= high for height in heights):
        return f"{thing.name} bends your knee past a right angle"
    return f"{thing.name} is {heights[0]:.0f} cm high, it needs {low:.0f} to {high:.0f} cm"


def _held(offer: Offer, height_cm: float | None) -> Held:
    return Held(
        use=offer.use,
        thing_id=offer.thing_id,
        name=offer.name,
        grade=offer.grade,
        reason=offer.reason,
        height_cm=height_cm,
    )


def _too_deep(exercise: Exercise, setting: Setting, use: Use, height_cm: float) -> bool:
    spares = Demand.DEEP_KNEE_BEND in setting.person.spares
    return spares and use is Use.STEP and knee_angle_deg(height_cm, setting.person) > 90.0


def load_limits_kg(need: Need, body_mass_kg: float) -> tuple[float, float]:
    """The sensible range of the external load, kg."""
    low, high = need.mass_share or (0.0, 1.0)
    return low * body_mass_kg, high * body_mass_kg


def _load(
    exercise: Exercise, setting: Setting, wanted_kg: float | None, used: frozenset[str]
) -> tuple[Rung, Grade] | None | str:
    need = exercise.load_need
    if need is None:
        return None
    low_kg, high_kg = load_limits_kg(need, setting.person.body_mass_kg)
    start_kg = low_kg + START_PLACE[setting.person.experience] * (high_kg - low_kg)
    target_kg = min(max(start_kg if wanted_kg is None else wanted_kg, 0.0), high_kg)
    found = _best_rung(need, setting, target_kg, (low_kg, high_kg), used)
    if need.optional:
        nothing_is_nearer = found is None or target_kg < found[0].mass.value / 2
        return None if nothing_is_nearer else found
    if found is not None:
        return found
    ladders = [ladder for use in need.uses if len(ladder := setting.ladder(use, need.count))]
    if not ladders:
        return f"you list no {_bare(USE_WORDS[need.uses[0]])}"
    return _out_of_range(ladders[0], low_kg, high_kg)


def _out_of_range(ladder: Ladder, low_kg: float, high_kg: float) -> str:
    lightest, heaviest = ladder.masses_kg[0], ladder.masses_kg[-1]
    if heaviest < low_kg:
        return f"the heaviest you can make for it is {heaviest:.1f} kg, it needs at least {low_kg:.1f} kg"
    if lightest > high_kg:
        return f"the lightest you can make for it is {lightest:.1f} kg, it takes at most {high_kg:.1f} kg"
    return f"no load between {low_kg:.1f} and {high_kg:.1f} kg is free"


def _best_rung(
    need: Need, setting: Setting, target_kg: float, limits: tuple[float, float], used: frozenset[str]
) -> tuple[Rung, Grade] | None:
    """The rung nearest the target over all uses; an earlier use wins unless a later one is clearly nearer."""
    best: tuple[float, Rung] | None = None
    for order, use in enumerate(need.uses):
        rung = setting.ladder(use, need.count).nearest(target_kg, *limits, without=used)
        if rung is None:
            continue
        off = abs(rung.mass.value - target_kg) + 0.05 * order * target_kg
        if best is None or off < best[0] - 1e-9:
            best = (off, rung)
    if best is None:
        return None
    return best[1], _grade_of(best[1], setting)


def _grade_of(rung: Rung, setting: Setting) -> Grade:
    first = rung.recipe.parts[0].thing_id
    return next(offer.grade for offer in setting.offers(rung.use) if offer.thing_id == first)


def _overloaded(exercise: Exercise, setting: Setting, fixtures: list[_Found], load: Rung | None) -> tuple[str, ...]:
    """Fixtures whose rating, or the person's own check, is below what this would put on them."""
    found = []
    needs = [need for need in exercise.needs if not need.is_load and not need.optional]
    load_kg = load.mass.value + load.mass.u95 if load is not None else 0.0
    for need, item in zip(needs, fixtures, strict=True):
        if not item.held.thing_id or not need.bears:
            continue
        thing = setting.house.thing(item.held.thing_id)
        rating_kg = thing.facts.rating_kg
        checked = thing.facts.rating_origin is RatingOrigin.NONE and thing.own_check is not None
        limit_kg = thing.own_check.took_kg if checked and thing.own_check is not None else rating_kg
        bears_kg = need.bears * setting.person.body_mass_kg + load_kg
        if limit_kg is not None and bears_kg > limit_kg:
            said = "your check took" if checked else "it is rated"
            found.append(f"{thing.name}: {said} {limit_kg:.0f} kg, this puts {bears_kg:.0f} kg on it")
    return tuple(found)


def _binding(exercise: Exercise, setting: Setting, fixtures: list[_Found], load: tuple[Rung, Grade] | None) -> Binding:
    cautions = list(exercise.cautions)
    for item in fixtures:
        cautions.extend(item.cautions)
    if load is not None:
        for thing_id in load[0].recipe.thing_ids:
            cautions.extend(setting.house.thing(thing_id).cautions)
    held = tuple(item.held for item in fixtures)
    worse = sum(GRADE_ORDER[item.grade] for item in held)
    return Binding(
        exercise_id=exercise.id,
        fixtures=held,
        load=load[0] if load is not None else None,
        load_grade=load[1] if load is not None else None,
        cautions=tuple(dict.fromkeys(cautions)),
        set_up_s=(load[0].set_up_s if load is not None else 0.0) + 10.0 * len(held) + 10.0 * worse,
    )
