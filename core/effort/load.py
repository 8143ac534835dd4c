"""Effective load: what one working side really moves, kg.

effective = side share x (load share x external mass + body share x body mass). Body shares come from the exercise
(published series, segment masses, or an ordinal that only ranks variants).
"""

from __future__ import annotations

from bisect import bisect_right

from core.exercise.model import Basis, BodyShare, Exercise

SHARE_U: dict[Basis, float] = {Basis.PUBLISHED: 0.06, Basis.DERIVED: 0.05, Basis.ORDINAL: 0.2}
"""Relative standard uncertainty of a body share; published spread between people (Mier et al. 2014: about 6 %)."""


def body_share(body: BodyShare, height_cm: float | None = None) -> float:
    """Share of body mass that moves with hands (or feet) at `height_cm`; clamped to the published heights."""
    points = body.by_height
    if height_cm is None or not points:
        return body.share
    heights = [height for height, _ in points]
    place = bisect_right(heights, height_cm)
    if place == 0:
        return points[0][1]
    if place == len(points):
        return points[-1][1]
    (low, at_low), (high, at_high) = points[place - 1], points[place]
    return at_low + (height_cm - low) / (high - low) * (at_high - at_low)


def effective_kg(
    exercise: Exercise, external_kg: float, body_mass_kg: float, *, height_cm: float | None = None
) -> float:
    """Mass one working side moves, kg."""
    body_kg = body_share(exercise.body, height_cm) * body_mass_kg
    return exercise.side_share * (exercise.load_share * external_kg + body_kg)


def external_for_effective_kg(
    exercise: Exercise, wanted_kg: float, body_mass_kg: float, *, height_cm: float | None = None
) -> float:
    """External mass that gives an effective load of `wanted_kg`; negative when the body alone is already more."""
    body_kg = body_share(exercise.body, height_cm) * body_mass_kg
    return (wanted_kg / exercise.side_share - body_kg) / exercise.load_share


def effective_u_kg(exercise: Exercise, external_u_kg: float, body_mass_kg: float) -> float:
    """Standard uncertainty of the effective load from the external mass and the body share, kg."""
    from_body = exercise.body.share * body_mass_kg * SHARE_U[exercise.body.basis]
    from_load = exercise.load_share * external_u_kg
    return float(exercise.side_share * (from_body**2 + from_load**2) ** 0.5)
