"""What the rules ask of a person and a place, and the bend of the knee at a step.

`core.house` describes people and places and builds on things, so it fits these outlines without being imported here.
Segment lengths are fractions of stature: thigh 0.245 (Drillis & Contini 1966), top of the shin 0.267 and hand 0.11
(ANSUR II, US Army 2012; Gordon et al. 2014). They describe fit adults; allow a few cm.
"""

from __future__ import annotations

import math
from typing import Protocol

THIGH_OF_STATURE = 0.245
HAND_OF_STATURE = 0.11
HIP_OF_STATURE = 0.515
SHOULDER_OF_STATURE = 0.820
SITTING_DROP_OF_STATURE = 0.24
"""Seated on a seat of one's own height the shoulders are lower by 0.820 less 0.242 (seat) and 0.34 (ANSUR II)."""
CLEARANCE_CM = 5.0
"""Room left under a ceiling, for the doubt of the body proportions (judgement)."""


class Body(Protocol):
    """Someone who trains: body mass kg, stature cm, and the height of the fingertips with the arms up, cm."""

    @property
    def body_mass_kg(self) -> float:
        """Body mass."""

    @property
    def height_cm(self) -> float:
        """Stature."""

    @property
    def reach_cm(self) -> float:
        """Fingertips above the floor, arms straight up."""


class Room(Protocol):
    """Somewhere to train; `ceiling_cm` None is open sky or unknown."""

    @property
    def id(self) -> str:
        """Its id."""

    @property
    def name(self) -> str:
        """Its name."""

    @property
    def ceiling_cm(self) -> float | None:
        """Height of the ceiling."""

    @property
    def outdoors(self) -> bool:
        """Whether it is outdoors."""

    @property
    def wet(self) -> bool:
        """Whether the ground is wet."""


def knee_angle_deg(step_cm: float, person: Body) -> float:
    """Bend of the knee (0 straight, 90 a right angle) with one foot flat on a step and the other on the floor.

    With the shin of the raised leg upright, its knee is at step + shin; the hip stays at shin + thigh, held up by the
    straight other leg. The thigh so slopes down from the vertical by φ with cos φ = (thigh - step) / thigh, and φ is
    the bend of the knee. A thigh-high step gives a right angle. Leaning the shin forward adds to it.
    """
    thigh_cm = THIGH_OF_STATURE * person.height_cm
    share = (thigh_cm - step_cm) / thigh_cm
    return math.degrees(math.acos(min(max(share, -1.0), 1.0)))
