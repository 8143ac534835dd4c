"""What a thing is good for, computed from its facts, the person and the place; never ticked by hand.

`grade_use` answers for one use, `affordances` for every use worth naming. Both are pure: the same thing, person and
place give the same answer. A use a thing's form can't serve is refused at once with one shared answer, so that a swap
can ask about thousands of pairs. Limits on mass belong to the needs of an exercise, not here.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from core.exercise.model import Posture, Use
from core.things import bearing_uses, load_uses, plain_uses
from core.things.bodies import Body, Room, knee_angle_deg
from core.things.grades import RANK, Affordance, Case, Finding, Grade, judged, no
from core.things.grip import grip_words
from core.things.model import Facts, Form, Thing

__all__ = ["RANK", "Affordance", "Body", "Grade", "Room", "affordances", "grade_use", "knee_angle_deg"]

LOADS = frozenset({Form.VESSEL, Form.TIN, Form.SACK, Form.BLOCK, Form.BOOK, Form.BAG, Form.FREE_WEIGHT})
STOOD_ON = frozenset({Form.STEP, Form.STAIRS, Form.SEAT, Form.TABLE, Form.FLAT_BENCH, Form.BLOCK})
SAT_ON = frozenset({Form.SEAT, Form.STEP, Form.STAIRS, Form.FLAT_BENCH, Form.BED, Form.TABLE, Form.BLOCK})
LEANED_ON = frozenset({Form.SEAT, Form.TABLE, Form.STEP, Form.STAIRS, Form.FLAT_BENCH, Form.BED, Form.BLOCK})
STEADY = frozenset(
    {Form.WALL, Form.DOOR_FRAME, Form.RAIL, Form.TABLE, Form.SEAT, Form.BAR, Form.ANCHOR_POINT, Form.RACK, Form.STICK}
)
PULLED_ON = frozenset({Form.BAR, Form.ANCHOR_POINT, Form.RAIL, Form.RACK})
BORNE_BY = frozenset({Use.STEP, Use.SIT, Use.HANDS, Use.FEET})


@dataclass(frozen=True, slots=True, kw_only=True)
class _Rule:
    """Which forms a use takes, what speaks against, the words for a good grade and for a form that can't."""

    forms: frozenset[Form]
    findings: Callable[[Case], Iterator[Finding]]
    praise: str
    otherwise: str


def _only(*forms: Form) -> frozenset[Form]:
    return frozenset(forms)


_RULES: dict[Use, _Rule] = {
    Use.HUG: _Rule(
        forms=LOADS, findings=load_uses.hug, praise="the arms close round it", otherwise="not a load to hold"
    ),
    Use.FRONT: _Rule(
        forms=LOADS | {Form.BARBELL},
        findings=load_uses.front,
        praise="two hands hold it",
        otherwise="not a load to hold",
    ),
    Use.ONE_HAND: _Rule(forms=LOADS, findings=load_uses.one_hand, praise="", otherwise="not a load to hold"),
    Use.PAIR: _Rule(forms=LOADS, findings=load_uses.pair, praise="", otherwise="not a load to hold"),
    Use.TWO_HANDS: _Rule(
        forms=LOADS | {Form.BARBELL},
        findings=load_uses.two_hands,
        praise="room for both hands",
        otherwise="not a load to hold",
    ),
    Use.BETWEEN_FEET: _Rule(
        forms=LOADS | {Form.BARBELL},
        findings=load_uses.between_feet,
        praise="both hands reach it between the feet",
        otherwise="not a load to lift",
    ),
    Use.BACK: _Rule(
        forms=LOADS | {Form.BARBELL},
        findings=load_uses.back,
        praise="made for the back",
        otherwise="not a load to carry",
    ),
    Use.SHOULDER: _Rule(
        forms=LOADS,
        findings=load_uses.shoulder,
        praise="soft: it lies on the shoulder",
        otherwise="not a load to carry",
    ),
    Use.OVERHEAD: _Rule(
        forms=LOADS | {Form.BARBELL}, findings=load_uses.overhead, praise="", otherwise="not a load to press"
    ),
    Use.DRAG: _Rule(
        forms=LOADS | {Form.WHEELED}, findings=load_uses.drag, praise="it slides or rolls", otherwise="nothing to drag"
    ),
    Use.SWING: _Rule(
        forms=LOADS, findings=load_uses.swing, praise="one solid piece with a handle", otherwise="nothing to swing"
    ),
    Use.STEP: _Rule(
        forms=STOOD_ON, findings=bearing_uses.step, praise="it bears you", otherwise="not made to stand on"
    ),
    Use.SIT: _Rule(forms=SAT_ON, findings=bearing_uses.sit, praise="a firm seat", otherwise="not a seat"),
    Use.HANDS: _Rule(
        forms=LEANED_ON | {Form.RAIL},
        findings=bearing_uses.hands,
        praise="steady under the hands",
        otherwise="not to lean on",
    ),
    Use.FEET: _Rule(
        forms=LEANED_ON,
        findings=bearing_uses.feet,
        praise="steady under the feet",
        otherwise="nothing to rest the feet on",
    ),
    Use.BALANCE: _Rule(
        forms=STEADY, findings=bearing_uses.balance, praise="steady to hold", otherwise="nothing to hold on to"
    ),
    Use.ROW_EDGE: _Rule(
        forms=PULLED_ON | {Form.TABLE},
        findings=bearing_uses.row_edge,
        praise="rated to pull on",
        otherwise="no edge to pull on",
    ),
    Use.HANG_BAR: _Rule(
        forms=_only(Form.BAR, Form.ANCHOR_POINT, Form.RACK),
        findings=bearing_uses.hang_bar,
        praise="rated to hang from",
        otherwise="not made to hang from",
    ),
    Use.ANCHOR: _Rule(
        forms=PULLED_ON | {Form.DOOR_FRAME},
        findings=bearing_uses.anchor,
        praise="rated to pull on",
        otherwise="nothing to tie to",
    ),
    Use.TOWEL: _Rule(
        forms=_only(Form.CLOTH, Form.ROPE),
        findings=plain_uses.towel,
        praise="long and soft to grip",
        otherwise="not a towel",
    ),
    Use.BAND: _Rule(forms=_only(Form.BAND), findings=plain_uses.suits, praise="it stretches", otherwise="not elastic"),
    Use.STICK: _Rule(
        forms=_only(Form.STICK, Form.BARBELL),
        findings=plain_uses.stick,
        praise="long, straight and light",
        otherwise="not a stick",
    ),
    Use.SLIDER: _Rule(
        forms=_only(Form.SLIDER, Form.CLOTH),
        findings=plain_uses.slider,
        praise="it slides",
        otherwise="it does not slide",
    ),
    Use.PAD: _Rule(
        forms=_only(Form.PAD, Form.CLOTH),
        findings=plain_uses.pad,
        praise="soft to kneel and lie on",
        otherwise="not a pad",
    ),
    Use.WALL: _Rule(
        forms=_only(Form.WALL), findings=plain_uses.suits, praise="firm to lean on", otherwise="not a wall"
    ),
    Use.DOOR_FRAME: _Rule(
        forms=_only(Form.DOOR_FRAME),
        findings=plain_uses.suits,
        praise="two sides to press on",
        otherwise="not a door frame",
    ),
    Use.FLOOR: _Rule(
        forms=_only(Form.FLOOR, Form.ROUTE),
        findings=plain_uses.floor,
        praise="room to lie down",
        otherwise="not clear floor",
    ),
    Use.STAIRS: _Rule(
        forms=_only(Form.STAIRS), findings=plain_uses.stairs, praise="an even flight of steps", otherwise="not stairs"
    ),
    Use.ROUTE: _Rule(
        forms=_only(Form.ROUTE, Form.FLOOR),
        findings=plain_uses.route,
        praise="a clear way",
        otherwise="not a way to walk",
    ),
    Use.BARBELL: _Rule(
        forms=_only(Form.BARBELL), findings=plain_uses.suits, praise="a barbell", otherwise="not a barbell"
    ),
    Use.RACK: _Rule(forms=_only(Form.RACK), findings=plain_uses.suits, praise="a rack", otherwise="not a rack"),
    Use.FLAT_BENCH: _Rule(
        forms=_only(Form.FLAT_BENCH),
        findings=plain_uses.suits,
        praise="a training bench",
        otherwise="not a training bench",
    ),
    Use.MACHINE: _Rule(
        forms=_only(Form.MACHINE), findings=plain_uses.suits, praise="a machine", otherwise="not a machine"
    ),
    Use.CABLE: _Rule(
        forms=_only(Form.CABLE), findings=plain_uses.suits, praise="a cable machine", otherwise="no cable"
    ),
    Use.RINGS: _Rule(forms=_only(Form.RINGS), findings=plain_uses.rings, praise="rings", otherwise="not rings"),
}
_REFUSED: dict[Use, Affordance] = {
    use: Affordance(use=use, grade=Grade.NO, reason=rule.otherwise) for use, rule in _RULES.items()
}


def grade_use(
    thing: Thing,
    use: Use,
    person: Body | None = None,
    place: Room | None = None,
    *,
    load_kg: float = 0.0,
    bears: float | None = None,
    posture: Posture = Posture.STANDING,
) -> Affordance:
    """How well `thing` serves `use` for this person here, and why.

    `load_kg` is held meanwhile and counts against ratings, as does `bears`, the share of body mass the thing must carry
    (None takes the use's own; standing and hanging never count less than all of it). `posture` matters overhead:
    seated lowers the reach, lying takes the ceiling out of it.
    """
    rule = _RULES[use]
    if not form_serves(thing.facts, use):
        return _REFUSED[use]
    case = Case(thing=thing, person=person, place=place, load_kg=load_kg, bears=bears, posture=posture)
    elsewhere = _elsewhere(case)
    if elsewhere is not None:
        return Affordance(use=use, grade=Grade.NO, reason=elsewhere.text)
    return judged(use, rule.praise or grip_words(thing.facts), rule.findings(case))


def affordances(thing: Thing, person: Body | None = None, place: Room | None = None) -> tuple[Affordance, ...]:
    """Every use the thing's form can serve, in the order of `Use`, refusals with their reason among them."""
    return tuple(grade_use(thing, use, person, place) for use in Use if form_serves(thing.facts, use))


def form_serves(facts: Facts, use: Use) -> bool:
    """Whether such a form can serve the use at all, ratings and sizes aside; small blocks bear nobody."""
    if facts.form is Form.BLOCK and facts.surface_cm is None and use in BORNE_BY:
        return False
    return facts.form in _RULES[use].forms


def _elsewhere(case: Case) -> Finding | None:
    """Why the thing is not here. Without places of its own, only a fixed thing is tied to in or out of doors."""
    thing, place = case.thing, case.place
    if place is None:
        return None
    if thing.place_ids:
        return None if place.id in thing.place_ids else no(f"it is not in {place.name}")
    if not thing.facts.fixed:
        return None
    if thing.facts.outdoors and not place.outdoors and place.ceiling_cm is not None:
        return no(f"it is outdoors, {place.name} is indoors")
    if not thing.facts.outdoors and place.outdoors:
        return no(f"it is indoors, {place.name} is outdoors")
    return None
