"""Doses that are pinned: which one holds for a movement, and the block's dose, rest and words that keep it exactly."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, replace

from core.effort.dose import Dose
from core.errors import InputError
from core.exercise.model import DoseKind, Exercise
from core.house.wishes import WEEKDAYS, Pin, PinnedDose
from core.plan.model import DayKind

LONG_KINDS = (DayKind.EASY, DayKind.LOADED_WALK)


@dataclass(frozen=True, slots=True, kw_only=True)
class DayPins:
    """What is pinned on one kind of day: movements, those named for this very kind, and doses.

    `doses` go with movements; `dose` holds for every movement of the day that has none of its own.
    """

    movements: frozenset[str] = frozenset()
    named: frozenset[str] = frozenset()
    doses: tuple[tuple[str, PinnedDose], ...] = ()
    dose: PinnedDose | None = None

    def dose_of(self, exercise: Exercise) -> PinnedDose | None:
        """The dose this movement must be done at, if one is pinned."""
        own = next((dose for exercise_id, dose in self.doses if exercise_id == exercise.id), None)
        if own is not None or self.dose is None:
            return own
        return self.dose if _counts(exercise, self.dose) else None


NO_PINS = DayPins()


def _counts(exercise: Exercise, dose: PinnedDose) -> bool:
    """Whether a dose for the whole day can be the dose of this movement: reps for reps; seconds for any."""
    return dose.reps is None or exercise.dose is DoseKind.REPS


def day_pins(pins: Iterable[Pin], weekday: int, kind: DayKind) -> DayPins:
    """The pins that concern a kind of day on a weekday."""
    mine = [pin for pin in pins if pin.weekday == weekday and pin.kind in (None, kind.value)]
    return DayPins(
        movements=frozenset(pin.exercise_id for pin in mine if pin.exercise_id),
        named=frozenset(pin.exercise_id for pin in mine if pin.exercise_id and pin.kind is not None),
        doses=tuple((pin.exercise_id, pin.dose) for pin in mine if pin.exercise_id and pin.dose is not None),
        dose=next((pin.dose for pin in mine if pin.exercise_id is None), None),
    )


def check_pinned_dose(pin: Pin) -> None:
    """InputError for a dose that no day of the pinned kind can have."""
    dose, day = pin.dose, WEEKDAYS[pin.weekday]
    if dose is None:
        return
    if pin.kind == DayKind.REST:
        raise InputError(day, "is pinned to rest with a dose", "take one of them off")
    if pin.kind == DayKind.INTERVALS and dose.work_s is None:
        raise InputError(f"{dose.sets} rounds", "of intervals are pinned in reps", "give the seconds of work")
    if pin.kind in LONG_KINDS and (dose.work_s is None or dose.sets != 1):
        raise InputError(day, "is pinned to one long way with another dose", "give 1 set and its time")


def check_one_dose_each(pins: Iterable[Pin]) -> None:
    """InputError for a movement, or a whole day, pinned to two doses."""
    pinned = Counter((pin.weekday, pin.exercise_id) for pin in pins if pin.dose is not None)
    for (weekday, exercise_id), times in sorted(pinned.items(), key=str):
        if times > 1:
            what = f"{WEEKDAYS[weekday]} {exercise_id or 'as a whole'}"
            raise InputError(what, "is pinned to more than one dose", "keep one of them")


def rest_of(pinned: PinnedDose, usual_s: int) -> int:
    """The rest the minutes count: the longest that is allowed, so that the time suffices."""
    return usual_s if pinned.rest_s is None else pinned.rest_s[1]


def kept_to(pinned: PinnedDose, dose: Dose) -> Dose:
    """The dose as it is pinned, with a note where its reps and the load don't go together."""
    if pinned.work_s is not None:
        seconds = (pinned.work_s, pinned.work_s)
        return replace(dose, sets=pinned.sets, reps=None, distance_m=None, seconds=seconds, options=())
    reps = pinned.reps or (1, 1)
    notes = (*dose.notes, *_mismatch(reps, dose.reps))
    return replace(dose, sets=pinned.sets, reps=reps, seconds=None, distance_m=None, options=(), notes=notes)


def _mismatch(pinned: tuple[int, int], fitting: tuple[int, int] | None) -> tuple[str, ...]:
    if fitting is None:
        return ()
    span = f"{fitting[0]} to {fitting[1]} reps"
    if fitting[0] > pinned[1]:
        return (f"The load is light for the reps you pinned: {span} would be as hard.",)
    if fitting[1] < pinned[0]:
        return (f"The load is heavy for the reps you pinned: {span} would be as hard.",)
    return ()


def dose_words(pinned: PinnedDose) -> str:
    """“4 × 4–6, rest 30 to 45 s”."""
    if pinned.work_s is not None:
        amount = f"{pinned.work_s // 60} min" if pinned.work_s % 60 == 0 else f"{pinned.work_s} s"
    else:
        low, high = pinned.reps or (1, 1)
        amount = f"{low}" if low == high else f"{low}–{high}"
    words = amount if pinned.sets == 1 and pinned.work_s is not None else f"{pinned.sets} × {amount}"
    if pinned.rest_s is None or (pinned.sets == 1 and pinned.rest_s[1] == 0):
        return words
    low_s, high_s = pinned.rest_s
    return f"{words}, rest {low_s} s" if low_s == high_s else f"{words}, rest {low_s} to {high_s} s"


def why_pinned(pinned: PinnedDose) -> str:
    """The reason a block carries."""
    counted = ""
    if pinned.rest_s is not None and pinned.rest_s[0] < pinned.rest_s[1]:
        counted = f"; the minutes count {pinned.rest_s[1]} s of rest"
    return f"The dose is pinned: {dose_words(pinned)}{counted}."
