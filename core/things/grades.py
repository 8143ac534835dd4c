"""Grades, what a rule finds, and how findings become an affordance."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from core.exercise.model import Posture, Use
from core.things.bodies import Body, Room
from core.things.model import Facts, Thing


class Grade(StrEnum):
    """How well a thing serves a use."""

    GOOD = "good"
    FAIR = "fair"
    POOR = "poor"
    NO = "no"


RANK: dict[Grade, int] = {Grade.GOOD: 0, Grade.FAIR: 1, Grade.POOR: 2, Grade.NO: 3}


@dataclass(frozen=True, slots=True, kw_only=True)
class Affordance:
    """How well one thing serves one use, the deciding reason, and whatever else is worth knowing."""

    use: Use
    grade: Grade
    reason: str
    factors: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Finding:
    """One fact that speaks for or against a use; `GOOD` findings are notes."""

    grade: Grade
    text: str


def note(text: str) -> Finding:
    """Worth knowing, costs no grade."""
    return Finding(Grade.GOOD, text)


def fair(text: str) -> Finding:
    """Works, with a drawback."""
    return Finding(Grade.FAIR, text)


def poor(text: str) -> Finding:
    """Works only badly."""
    return Finding(Grade.POOR, text)


def no(text: str) -> Finding:
    """Must not, or cannot, be used so."""
    return Finding(Grade.NO, text)


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """The question a rule answers. `load_kg` is what the person holds meanwhile, `bears` the share of body mass the
    thing must carry (None: the use's own), `posture` decides how high the arms reach.
    """

    thing: Thing
    person: Body | None = None
    place: Room | None = None
    load_kg: float = 0.0
    bears: float | None = None
    posture: Posture = Posture.STANDING

    @property
    def facts(self) -> Facts:
        """Facts of the thing."""
        return self.thing.facts

    def needed_kg(self, usual_share: float, least_share: float = 0.0) -> float | None:
        """Mass the thing must carry, or None while nobody is chosen."""
        if self.person is None:
            return None
        share = max(usual_share if self.bears is None else self.bears, least_share)
        return share * self.person.body_mass_kg + self.load_kg


def judged(use: Use, praise: str, findings: Iterable[Finding]) -> Affordance:
    """The worst finding decides; with none against it the grade is good and `praise` is the reason."""
    grade, reason, worst = Grade.GOOD, praise, 0
    factors: list[str] = []
    for finding in findings:
        if RANK[finding.grade] > worst:
            factors.extend((reason,) if worst else ())
            grade, reason, worst = finding.grade, finding.text, RANK[finding.grade]
        else:
            factors.append(finding.text)
    return Affordance(use=use, grade=grade, reason=reason, factors=tuple(factors))
