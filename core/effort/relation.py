"""Repetitions and share of the one-repetition maximum.

The relation is Epley's (1985): 1RM = load x (1 + r / 30) with r repetitions to failure. It is meant for up to about ten
repetitions. At one repetition the share is 1 by definition; between one and two it is joined by a straight line.
Measured against real maxima the prediction error is 6 to 7 % of the load (Hutchins & Gearhart 2010); people differ
far more at many repetitions (Zourdos et al. 2021 quote 6 to 26 repetitions at 70 %), so doubt grows past ten.
"""

from __future__ import annotations

EPLEY_REPS = 30.0
VALID_REPS = (1.0, 10.0)
LONGEST_REPS = 30.0
RELATION_U = 0.065
"""Relative standard uncertainty of a maximum predicted inside the valid range."""
GROWTH_U_PER_REP = 0.012
"""Added for each repetition past the valid range; assumed, from the spread between people."""


def share_of_max(reps_to_failure: float) -> float:
    """Share of the one-repetition maximum that allows `reps_to_failure` repetitions (0 to 1); needs at least one."""
    if reps_to_failure < 1:
        raise ValueError(f"repetitions to failure start at 1, not {reps_to_failure}")
    if reps_to_failure < 2:
        at_two = 1 / (1 + 2 / EPLEY_REPS)
        return 1 + (reps_to_failure - 1) * (at_two - 1)
    return 1 / (1 + reps_to_failure / EPLEY_REPS)


def reps_at_share(share: float) -> float:
    """Repetitions to failure at a share of the maximum; 0 above the maximum, the inverse of `share_of_max` below it."""
    if share <= 0:
        raise ValueError(f"a share of the maximum is above 0, not {share}")
    if share > 1:
        return 0.0
    at_two = 1 / (1 + 2 / EPLEY_REPS)
    if share > at_two:
        return 1 + (1 - share) / (1 - at_two)
    return EPLEY_REPS * (1 / share - 1)


def relation_u(reps_to_failure: float) -> float:
    """Relative standard uncertainty of the relation at this many repetitions."""
    beyond = max(0.0, reps_to_failure - VALID_REPS[1])
    return RELATION_U + GROWTH_U_PER_REP * beyond


def reps_in_reserve(effort: float) -> float:
    """Repetitions left at an effort of 1 to 10: 10 minus effort (Zourdos et al. 2016), from effort 5 up."""
    return 10.0 - effort
