"""A retest against the test before: how much it changed, and whether that is more than published noise.

The smallest detectable change of one person is 1.96 x √2 x SEM (Weir 2005); it belongs to a protocol and the people it
was measured on. It is not the error of an equation against the laboratory, and the two are never mixed.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum

from core.assess.model import Protocol
from core.errors import InputError
from core.house.log import LoggedTest

ALIKE = 0.02
"""What must be alike in both tests (the load held, the height of the step) may differ by this share."""


class Verdict(StrEnum):
    """What a change can be called."""

    BETTER = "better"
    WORSE = "worse"
    WITHIN_NOISE = "within noise"
    UNKNOWN = "unknown"
    NOT_COMPARABLE = "not comparable"


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """The change from one result to the next, in the unit of the test, and a sentence that says what it is worth."""

    amount: float
    verdict: Verdict
    sentence: str


def standard_error(spread: float, reliability: float) -> float:
    """Standard error of measurement: SD x √(1 - ICC) (Weir 2005)."""
    if not (spread >= 0 and 0 <= reliability <= 1):
        raise ValueError(f"a spread from 0 and a reliability from 0 to 1, not {spread} and {reliability}")
    return spread * math.sqrt(1 - reliability)


def smallest_detectable(error: float, z: float = 1.96) -> float:
    """Smallest change of one person that is not noise, 95 % by default: z x √2 x SEM."""
    return z * math.sqrt(2) * error


def change_between(protocol: Protocol, first: LoggedTest, later: LoggedTest) -> Change:
    """The change from `first` to `later`; `InputError` where they are not two results of this test in order."""
    _check_pair(protocol, first, later)
    amount = later.result - first.result
    differing = _differing(protocol, first, later)
    if differing:
        sentence = f"{differing} was not the same both times, so the two can't be compared."
        return Change(amount=amount, verdict=Verdict.NOT_COMPARABLE, sentence=sentence)
    return _judged(protocol, amount)


def _judged(protocol: Protocol, amount: float) -> Change:
    moved = f"{amount:+g} {protocol.unit}" if amount else f"0 {protocol.unit}"
    real = protocol.change
    if real is None:
        sentence = f"{moved}. How much this test varies by itself is not published, so it may be noise."
        return Change(amount=amount, verdict=Verdict.UNKNOWN, sentence=sentence)
    if abs(amount) < real.amount:
        sentence = f"{moved} is less than {real.amount:g} {protocol.unit}, so it may be noise ({real.told_by})."
        return Change(amount=amount, verdict=Verdict.WITHIN_NOISE, sentence=sentence)
    verdict = Verdict.BETTER if (amount > 0) is protocol.more_is_better else Verdict.WORSE
    sentence = f"{moved} is at least {real.amount:g} {protocol.unit}: more than noise ({real.told_by})."
    return Change(amount=amount, verdict=verdict, sentence=sentence)


def _check_pair(protocol: Protocol, first: LoggedTest, later: LoggedTest) -> None:
    for one in (first, later):
        if one.test_id != protocol.id:
            raise InputError(one.test_id, f"is not the test {protocol.name.lower()}", "compare results of one test")
    if later.date < first.date or later.person_id != first.person_id:
        raise InputError(later.date.isoformat(), "is no later result of the same person", "choose a later one")


def _differing(protocol: Protocol, first: LoggedTest, later: LoggedTest) -> str:
    """The name of the first thing that must be alike and is not, or an empty text."""
    for key in protocol.same_beside:
        before, after = first.beside_value(key), later.beside_value(key)
        asked = protocol.beside_named(key)
        if before is None and after is None:
            continue
        if before is None or after is None or abs(after - before) > ALIKE * max(abs(before), abs(after)):
            return asked.name if asked is not None else key
    return ""
