"""The checks at the door of every shape: sizes that make a vessel, heights and volumes that lie inside it."""

from __future__ import annotations

import math

from core.errors import InputError

CM3_PER_L = 1000.0
LONGEST_CM = 1000.0
LARGEST_L = 10_000.0
# A height or volume this little (relative) past the rim is rounding, not a mistake.
SLACK = 1e-9

Outline = tuple[tuple[float, float], ...]
"""(half width, height) in cm from the base to the rim."""


def check_size(what: str, value: float, *, most: float = LONGEST_CM, may_be_zero: bool = False) -> None:
    """Raise `InputError` unless `value` is finite, above zero (or zero where allowed) and not absurd."""
    enough = value >= 0 if may_be_zero else value > 0
    if not (math.isfinite(value) and enough and value <= most):
        lowest = "0" if may_be_zero else "more than 0"
        raise InputError(f"{value:g}", f"is not a usable {what} of a container", f"give {lowest}, up to {most:g}")


def inside_height(height_cm: float, full_height_cm: float) -> float:
    """`height_cm` if it lies between the base and the rim, else `InputError`."""
    if not -SLACK * full_height_cm <= height_cm <= full_height_cm * (1 + SLACK):
        rule = f"is not a height inside the container, whose rim is at {full_height_cm:.1f} cm"
        raise InputError(f"{height_cm:g} cm", rule, f"give a height from 0 to {full_height_cm:.1f} cm")
    return min(max(height_cm, 0.0), full_height_cm)


def inside_volume(volume_l: float, full_volume_l: float) -> float:
    """`volume_l` if it fits below the rim, else `InputError`."""
    if not -SLACK * full_volume_l <= volume_l <= full_volume_l * (1 + SLACK):
        rule = f"does not fit: the container holds {full_volume_l:.2f} L to the brim"
        raise InputError(f"{volume_l:g} L", rule, f"give a volume from 0 to {full_volume_l:.2f} L")
    return min(max(volume_l, 0.0), full_volume_l)
