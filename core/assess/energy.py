"""What movement costs: oxygen by the ACSM equations, heat by Pandolf's and the LCDA equations, each with its limits.

Speeds are m/s for load carriage and m/min for the ACSM equations, as they were published; grades are per cent for load
carriage and shares (0.10 for 10 %) for ACSM. Shown, if at all, with the error beside it.

Sources: ACSM metabolic equations (Bushman 2020, ACSM's Health & Fitness Journal 24(4)); Pandolf, Givoni and Goldman
1977, J Appl Physiol 43:577-81 (form as in Alberti 2019, SoftwareX); Looney et al. 2019, Med Sci Sports Exerc (LCDA
walking and graded walking, form read second-hand). Two wrong forms of LCDA are known: one with the exponents of speed
lost, one with 1.11 for 1.1 in the grade term. The LCDA equation for backpacks was not found and is not used; Vine et
al. 2020 find Pandolf low for 25 and 30 kg at 4.8 km/h, so home loads cost more than it says.
"""

from __future__ import annotations

import math

from core.errors import InputError

KCAL_H_PER_W = 0.859845
PANDOLF_LOAD_KG = (0.0, 70.0)
PANDOLF_SPEED_M_S = (0.0, 2.0)
LCDA_SPEED_M_S = (0.0, 1.97)
LCDA_GRADE_PCT = (-40.0, 45.0)
LCDA_SEE_W_KG, LCDA_GRADED_SEE_W_KG = 0.20, 0.42
WALK_M_MIN = (50.0, 100.0)
RUN_M_MIN = (80.0, 600.0)
STEP_A_MIN, STEP_M = (12.0, 30.0), (0.04, 0.40)
TERRAIN = {
    "road": 1.0,
    "dirt road or grass": 1.1,
    "light brush": 1.2,
    "heavy brush": 1.5,
    "swamp": 1.8,
    "loose sand": 2.1,
}
"""Factors for the energy equations only (Pandolf et al. 1977, as listed by Herzog 2020)."""


def pandolf_w(
    body_kg: float, load_kg: float, speed_m_s: float, *, grade_pct: float = 0.0, terrain: float = 1.0
) -> float:
    """Metabolic rate (W) of carrying a load on the back, level or uphill. It does not hold downhill."""
    _within(load_kg, PANDOLF_LOAD_KG, "kg", "load for this equation")
    _within(speed_m_s, PANDOLF_SPEED_M_S, "m/s", "speed for this equation")
    if grade_pct < 0:
        rule = "is downhill, where this equation does not hold"
        raise InputError(f"{grade_pct:g} %", rule, "give a grade of 0 % or more")
    moved = body_kg + load_kg
    standing = 1.5 * body_kg + 2.0 * moved * (load_kg / body_kg) ** 2
    return standing + terrain * moved * (1.5 * speed_m_s**2 + 0.35 * speed_m_s * grade_pct)


def lcda_w_kg(speed_m_s: float, *, grade_pct: float = 0.0) -> float:
    """Metabolic rate (W per kg) of walking without a load, level or graded; SEE 0.20 (graded 0.42) W/kg."""
    _within(speed_m_s, LCDA_SPEED_M_S, "m/s", "speed for this equation")
    _within(grade_pct, LCDA_GRADE_PCT, "%", "grade for this equation")
    level = 1.44 + 1.94 * math.pow(speed_m_s, 0.43) + 0.24 * math.pow(speed_m_s, 4)
    return level + 0.34 * speed_m_s * grade_pct * (1 - math.pow(1.05, 1 - math.pow(1.1, grade_pct + 32)))


def walking_ml(speed_m_min: float, *, grade: float = 0.0) -> float:
    """Oxygen (mL/kg/min) of walking at 50 to 100 m/min."""
    _within(speed_m_min, WALK_M_MIN, "m/min", "walking speed for this equation")
    return 0.1 * speed_m_min + 1.8 * speed_m_min * grade + 3.5


def running_ml(speed_m_min: float, *, grade: float = 0.0) -> float:
    """Oxygen (mL/kg/min) of running, from 80 m/min if it is truly a run; not for hills outdoors."""
    _within(speed_m_min, RUN_M_MIN, "m/min", "running speed for this equation")
    return 0.2 * speed_m_min + 0.9 * speed_m_min * grade + 3.5


def stepping_ml(steps_a_min: float, height_m: float) -> float:
    """Oxygen (mL/kg/min) of stepping up and down a step of 0.04 to 0.40 m, 12 to 30 times a minute."""
    _within(steps_a_min, STEP_A_MIN, "a minute", "rate of stepping for this equation")
    _within(height_m, STEP_M, "m", "height of a step for this equation")
    return 0.2 * steps_a_min + 1.33 * 1.8 * height_m * steps_a_min + 3.5


def kcal_per_min(ml_kg_min: float, body_kg: float) -> float:
    """Kilocalories a minute at an oxygen uptake: METs x 3.5 x kg / 200."""
    return ml_kg_min * body_kg / 200


def _within(value: float, limits: tuple[float, float], unit: str, what: str) -> None:
    low, high = limits
    if not low <= value <= high:
        raise InputError(f"{value:g} {unit}", f"is no {what} ({low:g} to {high:g} {unit})", "stay inside that range")
