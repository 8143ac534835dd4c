"""Plane areas and solids of revolution that the vessel shapes are built from.

Lengths in cm, areas in cm², volumes in cm³. Formulas are school geometry; the inverses avoid cancellation, so that they
undo the forward formulas to a relative 1e-9 for any taper, however slight.
"""

from __future__ import annotations

import math


def disc_cm2(diameter_cm: float) -> float:
    """Area of a circle."""
    return math.pi / 4 * diameter_cm**2


def rounded_box_cm2(length_cm: float, width_cm: float, corner_radius_cm: float) -> float:
    """Area of a rectangle with rounded corners: a b - (4 - π) r²."""
    return length_cm * width_cm - (4 - math.pi) * corner_radius_cm**2


def frustum_cm3(bottom_side: float, top_side: float, height_cm: float) -> float:
    """Volume of a frustum whose square-rooted areas run linearly from `bottom_side` to `top_side` (cm)."""
    return height_cm / 3 * (bottom_side**2 + bottom_side * top_side + top_side**2)


def frustum_part_cm3(bottom_side: float, top_side: float, height_cm: float, depth_cm: float) -> float:
    """Volume of that frustum filled to `depth_cm`."""
    level_side = bottom_side + (top_side - bottom_side) * depth_cm / height_cm
    return frustum_cm3(bottom_side, level_side, depth_cm)


def frustum_depth_cm(bottom_side: float, top_side: float, height_cm: float, volume_cm3: float) -> float:
    """Depth at which that frustum holds `volume_cm3`.

    With slope k the level side is (s³ + 3 k V)^(1/3); written with expm1 and log1p it keeps its digits as k nears zero.
    """
    slope = (top_side - bottom_side) / height_cm
    growth = 3 * slope * volume_cm3 / bottom_side**3
    if abs(growth) < 1e-300:
        return volume_cm3 / bottom_side**2
    if growth <= -1:
        return height_cm
    return bottom_side / slope * math.expm1(math.log1p(growth) / 3)


def segment_fraction(angle: float) -> float:
    """θ - sin θ cos θ for half the angle a chord spans: a circular segment's area in units of R²."""
    if angle > 0.3:
        return angle - math.sin(angle) * math.cos(angle)
    # Near zero the difference cancels; the series of (2θ - sin 2θ) / 2 keeps full precision.
    double = 2 * angle
    square = double * double
    series = 1 / 6 - square * (1 / 120 - square * (1 / 5040 - square * (1 / 362880 - square / 39916800)))
    return double * square * series / 2


def segment_angle(fraction: float) -> float:
    """The half angle θ in 0..π whose `segment_fraction` is `fraction`, by Newton's rule kept inside a bracket."""
    if fraction <= 0:
        return 0.0
    low, high = 0.0, math.pi
    # For small θ the fraction is 2/3 θ³: a start with the right power, so that Newton meets its root in a few steps.
    angle = min(math.cbrt(1.5 * fraction), math.pi)
    for _ in range(200):
        gap = segment_fraction(angle) - fraction
        if gap == 0:
            return angle
        low, high = (low, angle) if gap > 0 else (angle, high)
        slope = 2 * math.sin(angle) ** 2
        step = angle - gap / slope if slope > 0 else low
        following = step if low < step < high else (low + high) / 2
        if abs(following - angle) <= 1e-15 * angle:
            return following
        angle = following
    return angle
