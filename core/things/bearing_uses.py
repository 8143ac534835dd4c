"""Rules for things that carry a person: stand, sit, lean hands or feet, balance, row, hang, tie to.

Standing needs a load rating or the person's own recorded check that took body and load; folding, wheeled and glass
things never. Hanging needs a rating. Sitting, leaning and balance are milder, so that an ordinary chair stays useful;
a rating, where there is one, always holds. Shares of body mass: hands 0.64 (Ebben et al. 2011, JSCR 25(10):2891-4,
hands on the floor, the most a raised-hands push-up puts there); the others are assumed on the safe side.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from core.things.bodies import HIP_OF_STATURE, SHOULDER_OF_STATURE, knee_angle_deg
from core.things.grades import Case, Finding, fair, no, note, poor
from core.things.model import Facts, Form, Handle, Hazard, OwnCheck, RatingOrigin, Rigidity

STANDS, SITS, HANDS_SHARE, FEET_SHARE, BALANCE_SHARE = 1.0, 1.0, 0.64, 0.5, 0.1
ROWS, HANGS, PULLS = 0.8, 1.0, 0.5
FOOT_CM = (25.0, 20.0)
"""Least length and width to put a whole foot on (judgement)."""
STEADY_RATING = 1.25
"""A hanging person who moves pulls with more than the own mass; below this multiple, keep still (judgement)."""
HELD_AT_SURFACE = frozenset({Form.BAR, Form.ANCHOR_POINT})
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def check_words(check: OwnCheck) -> str:
    """The person's own check, dated: “your check of 3 Nov 2026 took 95 kg”."""
    day = check.date
    return f"your check of {day.day} {MONTHS[day.month - 1]} {day.year} took {check.took_kg:.0f} kg"


def rating_words(facts: Facts) -> str:
    """“rated 150 kg”, with who says so when it is the owner."""
    who = ", by you" if facts.rating_origin is RatingOrigin.OWN_CHECK else ""
    return f"rated {facts.rating_kg:.0f} kg{who}"


def _put_on_it(needed_kg: float) -> str:
    """Rounded up, so that it never reads as the very mass that is allowed."""
    return f"this puts {math.ceil(needed_kg)} kg on it"


def rating_exceeded(case: Case, needed_kg: float | None) -> Iterator[Finding]:
    """The rating, where there is one, against the mass it must carry."""
    facts = case.facts
    if facts.rating_kg is None:
        return
    if needed_kg is not None and needed_kg > facts.rating_kg:
        yield no(f"{rating_words(facts)}: {_put_on_it(needed_kg)}")
    else:
        yield note(rating_words(facts))


def borne(case: Case, needed_kg: float | None, without: str) -> Iterator[Finding]:
    """A rating or the person's own recorded check must cover the load; a label's figure goes before the check."""
    facts, check = case.facts, case.thing.own_check
    if facts.rating_kg is not None:
        yield from rating_exceeded(case, needed_kg)
    elif check is None:
        yield no(without)
    elif needed_kg is not None and needed_kg > check.took_kg:
        yield no(f"{check_words(check)}: {_put_on_it(needed_kg)}")
    else:
        yield note(check_words(check))


def _slippery(case: Case) -> bool:
    wet = case.place is not None and case.place.wet
    return wet and Hazard.SLIPPERY_WET in case.facts.hazards


def step(case: Case) -> Iterator[Finding]:
    """To stand and step on."""
    facts = case.facts
    if Hazard.FOLDING in facts.hazards:
        yield no("it folds: never stand on it")
    if Hazard.WHEELED in facts.hazards:
        yield no("it rolls: never stand on it")
    if Hazard.GLASS in facts.hazards:
        yield no("glass: never stand on it")
    if facts.rigidity is Rigidity.SOFT:
        yield no("it gives way under the foot")
    if _slippery(case):
        yield no("slippery when wet: wait until it is dry")
    if facts.rating_kg is not None or facts.rating_origin is not RatingOrigin.BUILDING:
        yield from borne(case, case.needed_kg(STANDS, STANDS), "no load rating; record your own check first")
    if facts.flight is None and not _room_for_foot(facts):
        yield no("too small for a whole foot")
    if Hazard.TIPS in facts.hazards:
        yield poor("it can tip: set it against a wall, step on the middle")
    yield from _step_height(case)


def _room_for_foot(facts: Facts) -> bool:
    return facts.length_cm >= FOOT_CM[0] and facts.width_cm >= FOOT_CM[1]


def step_height_cm(facts: Facts) -> float | None:
    """Height of one step up onto it."""
    return facts.flight.rise_cm if facts.flight is not None else facts.surface_cm


def _step_height(case: Case) -> Iterator[Finding]:
    height_cm, person = step_height_cm(case.facts), case.person
    if height_cm is None:
        yield poor("its height is not known: measure it")
        return
    if person is None:
        return
    bend_deg = knee_angle_deg(height_cm, person)
    if height_cm > 0.35 * person.height_cm:
        yield no(f"{height_cm:.0f} cm is too high to step on")
    elif bend_deg > 105:
        yield poor(f"a very high step: your knee starts bent to {bend_deg:.0f}°")
    elif bend_deg > 90:
        yield fair(f"a high step: your knee starts bent to {bend_deg:.0f}°")
    else:
        yield note(f"your knee starts bent to {bend_deg:.0f}°")


def sit(case: Case) -> Iterator[Finding]:
    """To sit down on and stand up from."""
    facts = case.facts
    if Hazard.GLASS in facts.hazards:
        yield no("glass: never sit on it")
    yield from rating_exceeded(case, case.needed_kg(SITS))
    if Hazard.WHEELED in facts.hazards:
        yield poor("it rolls: set its back against a wall, lock the wheels")
    if Hazard.FOLDING in facts.hazards:
        yield fair("it folds: open it fully and sit down slowly")
    if Hazard.TIPS in facts.hazards:
        yield fair("it can tip: set it against a wall")
    if facts.form is Form.TABLE:
        yield poor("a table is not made to sit on")
    if facts.rigidity is Rigidity.SOFT:
        yield fair("soft: you sink in, so it is lower than it looks")
    yield from _seat_height(case)


def _seat_height(case: Case) -> Iterator[Finding]:
    facts = case.facts
    if facts.surface_cm is None and facts.flight is None:
        yield poor("its height is not known: measure it")
    elif facts.surface_cm is not None and facts.surface_cm > 75:
        yield no(f"{facts.surface_cm:.0f} cm is too high to sit on")


def _leaned_on(case: Case, share: float) -> Iterator[Finding]:
    """What hands and feet that lean on a thing have in common."""
    facts = case.facts
    if Hazard.WHEELED in facts.hazards:
        yield no("it rolls away")
    if Hazard.FOLDING in facts.hazards:
        yield no("it can fold under a push")
    if Hazard.GLASS in facts.hazards:
        yield no("glass: never lean on it")
    yield from rating_exceeded(case, case.needed_kg(share))
    if _slippery(case):
        yield poor("slippery when wet")
    if Hazard.TIPS in facts.hazards:
        yield fair("it can tip: set it against a wall")
    if facts.surface_cm is None and facts.flight is None:
        yield poor("its height is not known: measure it")


def hands(case: Case) -> Iterator[Finding]:
    """To lean both hands on, for an easier push-up or plank."""
    facts = case.facts
    yield from _leaned_on(case, HANDS_SHARE)
    if facts.form is Form.BLOCK and facts.length_cm < 35:
        yield poor("too small for both hands")
    if facts.rigidity is Rigidity.SOFT:
        yield fair("soft: the wrists sink in, use the frame or the arm rest")
    if facts.form is Form.SEAT and facts.rigidity is not Rigidity.SOFT:
        yield note("set it against a wall")


def feet(case: Case) -> Iterator[Finding]:
    """To raise the feet on."""
    facts = case.facts
    yield from _leaned_on(case, FEET_SHARE)
    if facts.surface_cm is not None and facts.surface_cm > 80:
        yield poor(f"{facts.surface_cm:.0f} cm is high for the feet")


def balance(case: Case) -> Iterator[Finding]:
    """To rest a hand on for balance."""
    facts = case.facts
    if Hazard.WHEELED in facts.hazards:
        yield no("it rolls away")
    if Hazard.GLASS in facts.hazards:
        yield no("glass: never lean on it")
    yield from rating_exceeded(case, case.needed_kg(BALANCE_SHARE))
    if Hazard.FOLDING in facts.hazards:
        yield poor("it can fold: touch it only lightly")
    if Hazard.TIPS in facts.hazards:
        yield fair("light: set it against a wall")
    if facts.form is Form.STICK:
        yield fair("a stick helps a little: keep a wall near")
    elif facts.form in HELD_AT_SURFACE and facts.surface_cm is not None and facts.surface_cm > 160:
        yield no("too high to hold for balance")
    elif 0 < facts.height_cm < 60 and not facts.fixed:
        yield poor("too low to hold while standing")


def row_edge(case: Case) -> Iterator[Finding]:
    """An edge, bar or beam to hold while leaning back under it."""
    facts = case.facts
    yield from _pulled(case)
    yield from borne(case, case.needed_kg(ROWS), "no load rating: row only on what is rated or what you have checked")
    if facts.rating_kg is None and case.thing.own_check is not None:
        yield fair("your own check, no rating: start with your feet close")
    if facts.surface_cm is None:
        yield poor("its height is not known: measure it")
    elif facts.surface_cm < 50:
        yield no("too low to lie under")
    elif case.person is not None and facts.surface_cm > SHOULDER_OF_STATURE * case.person.height_cm:
        yield fair("above your shoulders: hang a towel or strap from it to row")


def _pulled(case: Case) -> Iterator[Finding]:
    hazards = case.facts.hazards
    if Hazard.FOLDING in hazards or Hazard.WHEELED in hazards or Hazard.GLASS in hazards:
        yield no("folding, wheeled or glass: never pull yourself up on it")
    if Hazard.TIPS in hazards:
        yield no("it can tip over onto you")


def hang_bar(case: Case) -> Iterator[Finding]:
    """To hang from with the whole body. Only a rating counts; a check made standing on a thing says nothing here."""
    facts = case.facts
    yield from _pulled(case)
    needed_kg = case.needed_kg(HANGS, HANGS)
    if facts.rating_kg is None:
        yield no("hanging needs a load rating")
    else:
        yield from rating_exceeded(case, needed_kg)
        if needed_kg is not None and facts.rating_kg < STEADY_RATING * needed_kg:
            yield fair("little to spare in the rating: no swinging, no jerks")
    yield from _bar_thickness(facts)
    yield from _bar_height(case)


def _bar_thickness(facts: Facts) -> Iterator[Finding]:
    if facts.handle is Handle.NONE or facts.grip_cm > 8:
        yield poor("too thick to hang from by hand: put rings or a towel over it")
    elif facts.grip_cm > 5:
        yield fair("thick to hang from")


def _bar_height(case: Case) -> Iterator[Finding]:
    height_cm, person = case.facts.surface_cm, case.person
    if height_cm is None:
        yield poor("its height is not known: measure it")
        return
    if person is None:
        return
    if height_cm < HIP_OF_STATURE * person.height_cm + 50:
        yield no(f"{height_cm:.0f} cm is too low to hang from: row under it")
    elif height_cm < person.reach_cm:
        yield fair("lower than your reach: bend your knees to hang")
    elif height_cm > person.reach_cm + 35:
        yield fair("above your reach: step up to it on something rated")


def anchor(case: Case) -> Iterator[Finding]:
    """To fix a strap, a towel or a band to."""
    yield from _pulled(case)
    if case.facts.form is Form.DOOR_FRAME and case.facts.rating_kg is None:
        yield no("a door and its frame are not made to be pulled on")
    yield from borne(case, case.needed_kg(PULLS), "no load rating: tie only to what is rated or what you have checked")
    if case.facts.rating_kg is None and case.thing.own_check is not None:
        yield fair("your own check, no rating: start light")
