"""Oxygen uptake (mL per kg and minute) from simple tests, each equation only inside the range it was made for.

Every function answers with an estimate and its standard error of estimate (SEE, error against the laboratory), or with
the reason why there is none. The SEE says nothing about how far two tests of one person differ; see
`core.assess.retest` for that. Times are minutes, masses kg, pulses beats a minute; `male` is 1 for men, 0 for women.

Sources: Kline et al. 1987, Med Sci Sports Exerc 19:253-9 (mile walk; absolute form and its SEE read in the abstract,
relative form and its SEE second-hand); Keller et al. 2002 (Kline reads low at 18 to 29); George et al. 1993, Med Sci
Sports Exerc 25:401-6 (mile jog, abstract); Larsen et al. 2002 (1.5 miles at "somewhat hard", abstract); Cureton et al.
1995, Med Sci Sports Exerc 27:445-51 (mile run, equation from memory).
"""

from __future__ import annotations

from dataclasses import dataclass

from core.house.model import Sex

KG_PER_LB = 0.45359237
MILE_M = 1609.344
CURETON_TURN_MIN = 8.41 / 0.68
"""Where the quadratic of the mile run turns (12.37 min): past it slower runners would score better."""
LIKELY_ML = (10.0, 90.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Estimate:
    """Maximal oxygen uptake in mL/kg/min, the SEE in the same unit (None: none seen), the source and what to know."""

    ml_kg_min: float
    see_ml: float | None
    source_id: str
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class NoEstimate:
    """The equation does not hold here; `why` is a sentence."""

    why: str


Answer = Estimate | NoEstimate


@dataclass(frozen=True, slots=True, kw_only=True)
class Runner:
    """Who did the test: body mass, age and sex; None where unknown."""

    body_mass_kg: float
    age: int | None
    sex: Sex | None

    @property
    def male(self) -> int:
        """1 for men, 0 for women."""
        return int(self.sex is Sex.MALE)


def kline_1987(runner: Runner, time_min: float, pulse_bpm: float) -> Answer:
    """One mile walked as fast as possible; pulse over the last quarter. Ages 30 to 69 (343 people)."""
    age = runner.age
    if age is None or runner.sex is None:
        return _unknown()
    if not 30 <= age <= 69:
        return NoEstimate(why=f"The walk equation was made for ages 30 to 69, not {age}; at 18 to 29 it reads low.")
    pounds = runner.body_mass_kg / KG_PER_LB
    found = 132.853 - 0.0769 * pounds - 0.3877 * age + 6.315 * runner.male - 3.2649 * time_min - 0.1565 * pulse_bpm
    return _likely(Estimate(ml_kg_min=found, see_ml=5.0, source_id="kline_1987"))


def kline_1987_l_min(runner: Runner, time_min: float, pulse_bpm: float) -> float:
    """The absolute form of the same equation, L/min (SEE 0.325); the two forms differ by about 1 mL/kg/min."""
    pounds, age = runner.body_mass_kg / KG_PER_LB, runner.age or 0
    return 6.9652 + 0.0091 * pounds - 0.0257 * age + 0.5955 * runner.male - 0.2240 * time_min - 0.0115 * pulse_bpm


def george_1993(runner: Runner, time_min: float, pulse_bpm: float) -> Answer:
    """One mile jogged steadily, not raced; pulse at the end. Fit people of 18 to 29."""
    age = runner.age
    if age is None or runner.sex is None:
        return _unknown()
    if not 18 <= age <= 29:
        return NoEstimate(why=f"The jog equation was made for ages 18 to 29, not {age}.")
    fastest = 8.0 if runner.sex is Sex.MALE else 9.0
    if time_min < fastest:
        return NoEstimate(why=f"The jog must be steady: {fastest:g} min or slower for the mile, not {time_min:.1f}.")
    if pulse_bpm > 180:
        return NoEstimate(why=f"The jog must stay at a pulse of 180 or lower, not {pulse_bpm:.0f}.")
    found = 100.5 + 8.344 * runner.male - 0.1636 * runner.body_mass_kg - 1.438 * time_min - 0.1928 * pulse_bpm
    return _likely(Estimate(ml_kg_min=found, see_ml=3.0, source_id="george_1993"))


def larsen_2002(runner: Runner, time_min: float, pulse_bpm: float | None = None) -> Answer:
    """One and a half miles at a steady "somewhat hard" pace, walked or run. Ages 18 to 26."""
    age = runner.age
    if age is None or runner.sex is None:
        return _unknown()
    if not 18 <= age <= 26:
        return NoEstimate(why=f"The equation for 1.5 miles was made for ages 18 to 26, not {age}.")
    mass = runner.body_mass_kg
    if pulse_bpm is None:
        found = 65.404 + 7.707 * runner.male - 0.159 * mass - 0.843 * time_min
        return _likely(Estimate(ml_kg_min=found, see_ml=3.37, source_id="larsen_2002"))
    found = 100.162 + 7.301 * runner.male - 0.164 * mass - 1.273 * time_min - 0.156 * pulse_bpm
    return _likely(Estimate(ml_kg_min=found, see_ml=2.87, source_id="larsen_2002"))


def cureton_1995(runner: Runner, height_cm: float, time_min: float) -> Answer:
    """One mile raced. Ages 8 to 25, and no slower than the turn of the equation (12.37 min)."""
    age = runner.age
    if age is None or runner.sex is None:
        return _unknown()
    if not 8 <= age <= 25:
        return NoEstimate(why=f"The run equation was made for ages 8 to 25, not {age}.")
    if time_min > CURETON_TURN_MIN:
        turn = f"{CURETON_TURN_MIN:.1f}"
        return NoEstimate(why=f"Slower than {turn} min the run equation turns round, so it gives no score here.")
    bmi = runner.body_mass_kg / (height_cm / 100) ** 2
    found = 108.94 - 8.41 * time_min + 0.34 * time_min**2 + 0.21 * age * runner.male - 0.84 * bmi
    note = "The equation is given from memory; read it as a rough guide."
    return _likely(Estimate(ml_kg_min=found, see_ml=4.8, source_id="cureton_1995", note=note))


def _unknown() -> NoEstimate:
    return NoEstimate(why="The equation needs age and sex. Add your year of birth and sex to get an estimate.")


def _likely(found: Estimate) -> Answer:
    """The estimate, unless it is none a living person has."""
    low, high = LIKELY_ML
    if not low <= found.ml_kg_min <= high:
        return NoEstimate(why=f"These numbers give {found.ml_kg_min:.0f} mL/kg/min, which can't be. Check them.")
    return found
