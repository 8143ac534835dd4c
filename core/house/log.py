"""What was done: sessions with their sets, and test results. Dates are the local ones of the person who trained."""

from __future__ import annotations

import datetime
from dataclasses import dataclass

from core.errors import InputError

EFFORT = (0.0, 10.0)
"""The scale of felt effort, from rest to the most there is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LoggedSet:
    """One set: repetitions, time or distance, the load with its u95 (0 for none), felt effort and a note."""

    exercise_id: str
    reps: int | None = None
    time_s: float | None = None
    distance_m: float | None = None
    load_kg: float = 0.0
    u95_kg: float = 0.0
    effort: float | None = None
    note: str = ""

    def __post_init__(self) -> None:
        if self.reps is None and self.time_s is None and self.distance_m is None:
            raise InputError(self.exercise_id, "was logged without an amount", "give repetitions, time or distance")
        _check_effort(self.effort)


@dataclass(frozen=True, slots=True, kw_only=True)
class LoggedSession:
    """One session of one person; `effort` is felt for the whole of it, `minutes` its length."""

    id: str
    person_id: str
    date: datetime.date
    minutes: float = 0.0
    effort: float | None = None
    note: str = ""
    sets: tuple[LoggedSet, ...] = ()

    def __post_init__(self) -> None:
        _check_effort(self.effort)


@dataclass(frozen=True, slots=True, kw_only=True)
class LoggedTest:
    """The result of one test, in the unit its protocol states; `beside` pairs what was written down with it by key."""

    id: str
    person_id: str
    test_id: str
    date: datetime.date
    result: float
    note: str = ""
    beside: tuple[tuple[str, float], ...] = ()

    def __post_init__(self) -> None:
        keys = [key for key, _ in self.beside]
        if len(set(keys)) != len(keys):
            raise InputError(self.test_id, "has a number written down twice", "keep one of them")

    def beside_value(self, key: str) -> float | None:
        """The number written down under this key, if any."""
        return dict(self.beside).get(key)


@dataclass(frozen=True, slots=True, kw_only=True)
class SessionDay:
    """A session in brief, for sums over years: when, how long, how hard it felt and how many sets."""

    session_id: str
    date: datetime.date
    minutes: float
    effort: float | None
    sets: int


@dataclass(frozen=True, slots=True, kw_only=True)
class DatedSet:
    """A set with the day it was done on, for the course of one exercise over the years."""

    session_id: str
    date: datetime.date
    done: LoggedSet


@dataclass(frozen=True, slots=True, kw_only=True)
class LoggedExercise:
    """An exercise a person has logged: how many sets, and the last day."""

    exercise_id: str
    sets: int
    last: datetime.date


def _check_effort(effort: float | None) -> None:
    low, high = EFFORT
    if effort is not None and not low <= effort <= high:
        raise InputError(f"{effort:g}", f"is no effort ({low:g} to {high:g})", "give a number from that range")
