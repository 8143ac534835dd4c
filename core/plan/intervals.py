"""Interval schemes as data: seconds of work and rest, and rounds; the time is their exact sum."""

from __future__ import annotations

from dataclasses import dataclass

from core.errors import InputError


@dataclass(frozen=True, slots=True, kw_only=True)
class Scheme:
    """`rounds` of `work_s` and `rest_s` on each movement, the last rest included (it is the change to the next)."""

    name: str
    work_s: int
    rest_s: int
    rounds: int

    def __post_init__(self) -> None:
        if not (0 < self.work_s <= 600 and 0 <= self.rest_s <= 600 and 0 < self.rounds <= 60):
            shown = f"{self.rounds} x {self.work_s} s / {self.rest_s} s"
            raise InputError(
                shown, "is no interval scheme", "give work of 1 to 600 s, rest up to 600 s, 1 to 60 rounds"
            )

    @property
    def seconds(self) -> int:
        """Time on one movement."""
        return self.rounds * (self.work_s + self.rest_s)


STATIONS = Scheme(name="40 s on, 20 s off", work_s=40, rest_s=20, rounds=3)
SHORT_HARD = Scheme(name="20/10 intervals", work_s=20, rest_s=10, rounds=8)
"""A body-weight session of this scheme is not the laboratory dose of Tabata et al. 1996 (170 % VO2max on a bicycle)."""
