"""Rules for things in the hands or on the body. Each yields what speaks against, worst decides.

Never in the hands: what held fuel or chemicals. Never overhead: glass, unsealed, unhandled or dusty things, nor
anything above the ceiling. Outer sizes that suit the arms are common practice, no source, except the length of 40 cm
beyond which a container is harder to lift (revised NIOSH lifting equation, Pub. 94-110, revised 2021).
"""

from __future__ import annotations

from collections.abc import Iterator

from core.exercise.model import Posture
from core.things.bodies import CLEARANCE_CM, HAND_OF_STATURE, SITTING_DROP_OF_STATURE, Body
from core.things.grades import Case, Finding, fair, no, note, poor
from core.things.grip import closes_round, one_hand_grip, sides_cm, two_hand_grip
from core.things.model import Closure, Facts, Form, Handle, Hazard, Rigidity

LIFT_LENGTH_CM = 40.0
SMALLEST_DRAG_CM = 35.0
HELD_FIRMLY = frozenset({Handle.MOULDED, Handle.LOOP, Handle.TWO_LOOPS, Handle.STRAPS, Handle.BAR})
SOFT_FORMS = frozenset({Form.SACK, Form.BAG})
GLASS_LOW = "glass: keep it low, over something soft"
CHEMICALS = "it held fuel or chemicals: keep it out of training"


def holdable(facts: Facts) -> Iterator[Finding]:
    """What rules a thing out as any load at all."""
    if Hazard.HELD_CHEMICALS in facts.hazards:
        yield no(CHEMICALS)
    if facts.fixed:
        yield no("it is fixed in its place")
    elif facts.mass is None and facts.container is None:
        yield no("its mass is not known: weigh it or give its label")


def _spills(facts: Facts) -> bool:
    return facts.closure is Closure.OPEN and facts.form is Form.VESSEL


def _dust(facts: Facts) -> Iterator[Finding]:
    if Hazard.DUSTY in facts.hazards:
        yield note("dusty: keep it off your face")
    if Hazard.SPLITS in facts.hazards:
        yield note("it can split: check the seams")


def hug(case: Case) -> Iterator[Finding]:
    """Both arms round it, against the chest."""
    facts = case.facts
    longest, middle, shortest = sides_cm(facts)
    yield from holdable(facts)
    if longest > 120 or middle > 70:
        yield no("too big to hold to the chest")
    elif longest > 90 or middle > 50 or shortest > 40:
        yield poor("too wide for the arms to close round")
    if Hazard.GLASS in facts.hazards:
        yield poor(GLASS_LOW)
    if _spills(facts):
        yield poor("it is open and spills when it leans")
    if Hazard.SHARP in facts.hazards:
        yield poor("sharp edges: wrap it in a towel")
    if Hazard.WHEELED in facts.hazards:
        yield fair("wheels in the way")
    if longest < 20:
        yield fair("small: hold it with both hands")
    yield from _dust(facts)


def front(case: Case) -> Iterator[Finding]:
    """In front of the chest or the hips in two hands."""
    facts = case.facts
    longest, middle, _ = sides_cm(facts)
    yield from holdable(facts)
    if longest > 120 or middle > 60:
        yield no("too big to hold in front")
    elif middle > 45:
        yield poor("too wide to hold in front")
    elif longest > LIFT_LENGTH_CM and facts.form is not Form.BARBELL:
        yield fair(f"longer than {LIFT_LENGTH_CM:.0f} cm: hold it from below")
    if Hazard.GLASS in facts.hazards:
        yield poor(GLASS_LOW)
    if _spills(facts):
        yield fair("it is open: keep it level")
    if Hazard.SHARP in facts.hazards:
        yield fair("sharp edges: wear gloves")
    if facts.form in SOFT_FORMS and facts.rigidity is Rigidity.SOFT:
        yield fair("it sags: hold it from below")
    yield from _dust(facts)


def one_hand(case: Case) -> Iterator[Finding]:
    """Hanging at the side in one hand."""
    facts = case.facts
    longest, middle, _ = sides_cm(facts)
    yield from holdable(facts)
    yield from one_hand_grip(facts)
    if longest > 130:
        yield no("too long to hang at the side")
    elif longest > 90 or middle > 45:
        yield poor("too big to hang clear of the leg")
    if Hazard.GLASS in facts.hazards:
        yield fair(GLASS_LOW)
    if Hazard.SHARP in facts.hazards:
        yield fair("sharp edges: wear gloves")
    if _spills(facts):
        yield note("it is open: leave a hand's breadth below the rim")
    yield from _dust(facts)


def pair(case: Case) -> Iterator[Finding]:
    """Two alike, one in each hand."""
    if case.thing.count < 2:
        yield no("you have one: it takes two alike")
    yield from one_hand(case)


def two_hands(case: Case) -> Iterator[Finding]:
    """Hanging down in two hands."""
    facts = case.facts
    yield from holdable(facts)
    yield from two_hand_grip(facts)
    if facts.form is not Form.BARBELL and sides_cm(facts)[1] > 50:
        yield poor("too wide to hang in front of the legs")
    if Hazard.GLASS in facts.hazards:
        yield fair(GLASS_LOW)
    if Hazard.SHARP in facts.hazards:
        yield fair("sharp edges: wear gloves")
    yield from _dust(facts)


def between_feet(case: Case) -> Iterator[Finding]:
    """Lifted from the floor between the feet."""
    facts = case.facts
    yield from two_hands(case)
    if facts.form is Form.BARBELL:
        yield fair("the bar lies in front of the feet, not between them")
    elif min(facts.length_cm, facts.width_cm) > LIFT_LENGTH_CM:
        yield poor("too wide to stand over")


def back(case: Case) -> Iterator[Finding]:
    """Worn or carried on the back."""
    facts = case.facts
    yield from holdable(facts)
    if facts.handle is Handle.STRAPS:
        if facts.closure is Closure.OPEN:
            yield poor("it is open: things fall out when you bend")
        return
    if facts.form is Form.BARBELL:
        return
    if facts.form is not Form.SACK and not (facts.form is Form.BAG and facts.rigidity is Rigidity.SOFT):
        yield no("no straps: put it in a backpack")
        return
    if sides_cm(facts)[0] < 50:
        yield no("too short to lie across the back: put it in a backpack")
    if Hazard.DUSTY in facts.hazards:
        yield poor("dusty and close to your face: put it in a backpack")
    yield fair("across the upper back, held with both hands")


def shoulder(case: Case) -> Iterator[Finding]:
    """On one shoulder."""
    facts = case.facts
    longest, middle, _ = sides_cm(facts)
    yield from holdable(facts)
    if Hazard.GLASS in facts.hazards or Hazard.SHARP in facts.hazards:
        yield no("glass or sharp edges: never beside your head")
    if facts.closure is Closure.OPEN and facts.form is not Form.BLOCK:
        yield no("it is open: it empties over you")
    if middle > 60:
        yield no("too big for one shoulder")
    if facts.rigidity is not Rigidity.SOFT:
        yield _hard_on_shoulder(facts)
    if 0 < longest < 35:
        yield poor("too small to lie on the shoulder")
    yield from _dust(facts)


def _hard_on_shoulder(facts: Facts) -> Finding:
    if facts.form is Form.BLOCK and facts.length_cm >= 60:
        return fair("hard: pad the shoulder")
    return poor("hard edges on the shoulder: pad it well")


def drag(case: Case) -> Iterator[Finding]:
    """Pulled or pushed along the ground."""
    facts = case.facts
    yield from holdable(facts)
    if Hazard.GLASS in facts.hazards:
        yield no("glass breaks when it is dragged")
    if facts.form is Form.WHEELED:
        yield note("push it at walking pace")
        if Hazard.FOLDING in facts.hazards:
            yield fair("it folds: check that the lock holds")
        return
    if sides_cm(facts)[0] < SMALLEST_DRAG_CM:
        yield poor("too small to drag")
    if _spills(facts):
        yield fair("it is open: it spills on bumps")
    if facts.handle is Handle.NONE and facts.form is not Form.SACK:
        yield no("nothing to pull it by")
    if case.place is None:
        yield note("needs clear ground outdoors")
    elif not case.place.outdoors:
        yield fair("it can mark the floor: put a towel under it")
    yield from _dust(facts)


def swing(case: Case) -> Iterator[Finding]:
    """Swung between the legs with both hands, never let go."""
    facts = case.facts
    yield from holdable(facts)
    if Hazard.GLASS in facts.hazards or Hazard.SPLITS in facts.hazards or Hazard.DUSTY in facts.hazards:
        yield no("it can break open when it swings")
    if facts.closure in (Closure.OPEN, Closure.LID, Closure.TIED):
        yield no("not sealed: it opens when it swings")
    if facts.handle not in HELD_FIRMLY or Hazard.WHEELED in facts.hazards:
        yield no("nothing to hold on to firmly")
    elif facts.form is Form.FREE_WEIGHT and facts.handle is Handle.BAR:
        yield fair("hold one end in both hands")
    elif facts.rigidity is Rigidity.SOFT:
        yield fair("soft: pack it tight and check the loop")
    elif facts.form is Form.VESSEL:
        yield poor("what is inside shifts: fill it to the top, tape the cap")
    elif facts.form is not Form.FREE_WEIGHT:
        yield poor("not made to swing: check that every part is tight")


def overhead(case: Case) -> Iterator[Finding]:
    """Pressed or held above the head."""
    facts = case.facts
    yield from holdable(facts)
    yield from _unsafe_overhead(facts)
    yield from _overhead_grip(facts)
    ceiling = ceiling_finding(case)
    if ceiling is not None:
        yield ceiling
    if facts.form is not Form.BARBELL and sides_cm(facts)[0] > 60:
        yield poor("long and hard to balance overhead")


def safe_over_face(facts: Facts) -> bool:
    """Whether nothing of it can fall, spill or break onto the face of someone who holds it above."""
    return not any(True for _ in _unsafe_overhead(facts))


def _unsafe_overhead(facts: Facts) -> Iterator[Finding]:
    if Hazard.GLASS in facts.hazards:
        yield no("glass: never overhead")
    if Hazard.DUSTY in facts.hazards:
        yield no("dusty: never over your face")
    if Hazard.SPLITS in facts.hazards:
        yield no("it can split: never overhead")
    if Hazard.WHEELED in facts.hazards or Hazard.SHARP in facts.hazards:
        yield no("wheels or sharp edges: never overhead")
    if facts.closure in (Closure.OPEN, Closure.TIED, Closure.LID):
        yield no("not sealed: never overhead")


def _overhead_grip(facts: Facts) -> Iterator[Finding]:
    if facts.handle is Handle.RIM or (facts.handle is Handle.NONE and not closes_round(facts)):
        yield no("no handle: never overhead")
    elif facts.handle is Handle.BAIL:
        yield poor("it hangs and swings on its handle")
    elif facts.form in SOFT_FORMS:
        yield fair("soft: pack it tight")
    else:
        yield from one_hand_grip(facts)


def overhead_top_cm(facts: Facts, person: Body, posture: Posture) -> float:
    """Highest point, arms straight up: the fingertips, or the part of the thing that stands above the palm.

    Held by a handle, half its height stands above; without one it lies along the hand, its thinnest side up.
    """
    lowered = SITTING_DROP_OF_STATURE * person.height_cm if posture is Posture.SEATED else 0.0
    palm_cm = person.reach_cm - HAND_OF_STATURE * person.height_cm / 2
    above_cm = sides_cm(facts)[2] if facts.handle is Handle.NONE else facts.height_cm / 2
    return max(person.reach_cm, palm_cm + above_cm) - lowered


def ceiling_finding(case: Case) -> Finding | None:
    """Why the ceiling is in the way, if it is."""
    place, person = case.place, case.person
    if place is None or place.ceiling_cm is None or case.posture is Posture.FLOOR:
        return None
    if person is None:
        return note(f"{place.name} is {place.ceiling_cm / 100:.2f} m high: choose a person to check the reach")
    top_cm = overhead_top_cm(case.facts, person, case.posture)
    if top_cm + CLEARANCE_CM <= place.ceiling_cm:
        return None
    seated = " seated" if case.posture is Posture.SEATED else ""
    return no(f"{place.name} is {place.ceiling_cm / 100:.2f} m high, you reach {top_cm / 100:.2f} m{seated}")
