"""How well a hand holds a thing: its handle, or its body where the hand can close round that.

Comfortable handle: 1.9 to 3.8 cm thick, 11.5 cm long, 5 cm of room for the fingers (coupling classes of the revised
NIOSH lifting equation, Pub. 94-110, revised 2021). Those sizes are for two-handed lifts and leave room for gloves, so a
shorter handle that takes four bare fingers (8.5 cm, 3 cm) is only noted. How far a hand closes round a body without a
handle is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from core.things.grades import Finding, fair, no, note, poor
from core.things.model import Facts, Form, Handle, Rigidity

HANDLE_CM = (1.9, 3.8)
HANDLE_LENGTH_CM, FINGERS_CM = 11.5, 8.5
HANDLE_ROOM_CM, KNUCKLES_CM = 5.0, 3.0
CLOSES_ROUND_CM = 8.0
HARDLY_ROUND_CM = 10.0
SLIPS_CM = 12.0
TWO_PALMS_CM = 17.0
ONE_HANDLE = frozenset({Handle.MOULDED, Handle.BAIL, Handle.LOOP, Handle.BAR})
ROUND_FORMS = frozenset({Form.VESSEL, Form.TIN, Form.FREE_WEIGHT, Form.STICK, Form.ROPE})


def sides_cm(facts: Facts) -> tuple[float, float, float]:
    """Outer sizes, longest first; zeros while they are not known."""
    longest, middle, shortest = sorted((facts.length_cm, facts.width_cm, facts.height_cm), reverse=True)
    return longest, middle, shortest


def grip_words(facts: Facts) -> str:
    """What holds it, for a good grip."""
    return "the hand closes round it" if facts.handle is Handle.NONE else "the handle fits the hand"


def one_hand_grip(facts: Facts) -> Iterator[Finding]:
    """Findings on holding it in one hand."""
    handle = facts.handle
    if handle in ONE_HANDLE:
        yield from handle_findings(facts)
    elif handle is Handle.NONE:
        yield from _body_grip(facts)
    elif handle is Handle.STRAPS:
        yield fair("it hangs by a strap and swings")
    elif handle is Handle.RIM:
        yield poor("only a rim to hold: it can slip")
    elif facts.form is Form.FREE_WEIGHT:
        yield fair("a hole to hold, not a handle")
    elif handle is Handle.CUT_OUT or facts.rigidity is Rigidity.RIGID:
        yield poor("it has two handles and tips when held by one")


def handle_findings(facts: Facts) -> Iterator[Finding]:
    """Findings on the handle's own sizes."""
    thin, thick = HANDLE_CM
    if facts.grip_cm < thin / 2:
        yield poor("the handle is thin and cuts in: wrap a cloth round it")
    elif facts.grip_cm < thin:
        yield fair("the handle is thin: wrap a cloth round it")
    elif facts.grip_cm > 2 * thick:
        yield poor("the handle is too thick to close the hand")
    elif facts.grip_cm > thick:
        yield fair("the handle is thick")
    if facts.grip_length_cm < FINGERS_CM:
        yield fair("the handle is too short for four fingers")
    elif facts.grip_length_cm < HANDLE_LENGTH_CM:
        yield note(f"short handle: {facts.grip_length_cm:.0f} cm")
    if facts.grip_room_cm < KNUCKLES_CM:
        yield fair("little room for the fingers under the handle")


def _body_grip(facts: Facts) -> Iterator[Finding]:
    thickness_cm = sides_cm(facts)[2]
    if thickness_cm <= 0:
        yield fair("its size is not known: measure it")
    elif thickness_cm > SLIPS_CM or (facts.form is Form.SACK and thickness_cm > CLOSES_ROUND_CM):
        yield no("nothing to grip")
    elif thickness_cm > HARDLY_ROUND_CM:
        yield poor("barely a grip: it can slip out of the hand")
    elif facts.form not in ROUND_FORMS:
        yield fair("no handle: a pinch grip")
    elif thickness_cm > CLOSES_ROUND_CM:
        yield fair("the hand only just closes round it")


def closes_round(facts: Facts) -> bool:
    """Whether a hand without a handle still closes round a round, firm body."""
    thickness_cm = sides_cm(facts)[2]
    firm = facts.form in ROUND_FORMS and facts.rigidity is not Rigidity.SOFT
    return facts.handle is Handle.NONE and firm and 0 < thickness_cm <= CLOSES_ROUND_CM


def two_hand_grip(facts: Facts) -> Iterator[Finding]:
    """Findings on holding it with two hands hanging down."""
    handle = facts.handle
    if handle in (Handle.TWO_LOOPS, Handle.CUT_OUT):
        return
    if handle in ONE_HANDLE:
        yield from handle_findings(facts)
        if facts.grip_length_cm < TWO_PALMS_CM:
            yield fair("the hands overlap on one handle")
    elif handle is Handle.STRAPS:
        yield fair("both hands on the straps")
    elif handle is Handle.RIM:
        yield fair("both hands on the rim")
    elif facts.form is Form.SACK:
        yield fair("no handle: grip the cloth with both hands")
    elif sides_cm(facts)[1] > 40:
        yield no("nothing to grip, and too wide to hold from both sides")
    else:
        yield fair("no handle: both hands under it")
