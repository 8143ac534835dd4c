"""Entering a result: the number and what is written down beside it are checked before anything is kept."""

from __future__ import annotations

import datetime
import math
from collections.abc import Mapping

from core.assess.model import Beside, Counted, Protocol
from core.errors import InputError
from core.house.log import LoggedTest

EARLIEST = datetime.date(1990, 1, 1)


def new_result(
    protocol: Protocol,
    result: float,
    beside: Mapping[str, float],
    *,
    result_id: str,
    person_id: str,
    date: datetime.date,
    today: datetime.date,
    note: str = "",
) -> LoggedTest:
    """The result to keep; `InputError` names the number that can't be and what would do."""
    _check_date(date, today)
    _check_result(protocol, result)
    return LoggedTest(
        id=result_id,
        person_id=person_id,
        test_id=protocol.id,
        date=date,
        result=float(result),
        note=note,
        beside=_checked_beside(protocol, beside),
    )


def _check_date(date: datetime.date, today: datetime.date) -> None:
    if date > today:
        raise InputError(date.isoformat(), "lies ahead", "give the day the test was done")
    if date < EARLIEST:
        raise InputError(date.isoformat(), f"is before {EARLIEST.isoformat()}", "check the year")


def _check_result(protocol: Protocol, result: float) -> None:
    shown = f"{result:g} {protocol.unit}"
    if not (math.isfinite(result) and protocol.low <= result <= protocol.high):
        rule = f"is no result of this test ({protocol.low:g} to {protocol.high:g} {protocol.unit})"
        raise InputError(shown, rule, "check the number and its unit")
    if protocol.counted is Counted.REPS and result != int(result):
        raise InputError(shown, "is no whole number of repetitions", "count only complete ones")


def _checked_beside(protocol: Protocol, given: Mapping[str, float]) -> tuple[tuple[str, float], ...]:
    for key in sorted(given):
        if protocol.beside_named(key) is None:
            known = ", ".join(one.key for one in protocol.beside) or "nothing"
            raise InputError(key, "is not written down in this test", f"it asks for: {known}")
    for one in protocol.beside:
        _check_one(one, given.get(one.key))
    return tuple((one.key, float(given[one.key])) for one in protocol.beside if one.key in given)


def _check_one(asked: Beside, value: float | None) -> None:
    if value is None:
        if asked.needed:
            raise InputError(asked.name, "is missing", f"give it in {asked.unit}")
        return
    if not (math.isfinite(value) and asked.low <= value <= asked.high):
        rule = f"is no {asked.name.lower()} for this test ({asked.low:g} to {asked.high:g} {asked.unit})"
        raise InputError(f"{value:g} {asked.unit}", rule, "check the number and its unit")
