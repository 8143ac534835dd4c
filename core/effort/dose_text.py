"""A dose as a coach writes it: "4 x 5 at 40 kg, effort 8", "3 x 30 s", "3 x 40 m at 20 kg", "4 sets of 8", "20 min".

A range of repetitions ("3 x 8-12") counts as its middle. "2 in reserve" is the same as effort 8. Whatever cannot be
read raises `InputError`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from core.effort.capacity import Prescription
from core.errors import InputError
from core.quantity.table import DISTANCE, TIME
from core.quantity.units import parse_distance_m, parse_mass_kg, parse_time_min

EXAMPLE = "4 x 5 at 40 kg, effort 8"
LONGEST_TEXT = 120
MOST_SETS = 20
MOST_REPS = 200.0
LONGEST_S = 4 * 3600.0
LONGEST_M = 100_000.0
MOST_LOAD_KG = 500.0
EFFORT = (1.0, 10.0)

_NUMBER = r"\d{1,6}(?:[.,]\d{1,3})?"
_HEAD = re.compile(
    rf"""(?:(?P<sets>\d{{1,6}})\s*(?:x|\bsets?\s+of\b)\s*)?
        (?P<low>{_NUMBER})(?:\s*(?:-|–|\bto\b)\s*(?P<high>{_NUMBER}))?\s*(?P<unit>(?!x\b)[a-zµ]*)
        (?:\s*\b(?:each|per|a|on\ each)\s+(?:side|leg|arm|hand))?""",
    re.VERBOSE,
)
_EFFORT = re.compile(rf"(?:effort|rpe)\s*(?:of\s+)?(?P<effort>{_NUMBER})")
_RESERVE = re.compile(rf"(?P<left>{_NUMBER})\s*(?:reps?\s+)?(?:in reserve|left)")
# A comma between digits is a decimal comma; "at", "with" and "effort" begin a new part on their own.
_BETWEEN = re.compile(r"(?<!\d)[,;]|[,;](?!\d)|(?=\b(?:at|with|effort|rpe)\b)|(?=@)")
_REP_WORDS = frozenset({"", "rep", "reps", "repetition", "repetitions"})


@dataclass(frozen=True, slots=True)
class _Typed:
    """What was typed, to name it in a fault."""

    text: str

    def fault(self, rule: str, way_out: str = f"write it like {EXAMPLE}") -> InputError:
        return InputError(self.text, rule, way_out)


def parse_dose(text: str) -> Prescription:
    """The prescription `text` stands for; `InputError` if it is none or lies outside what can be trained."""
    typed = _Typed(text)
    if len(text) > LONGEST_TEXT:
        raise typed.fault(f"is longer than {LONGEST_TEXT} characters")
    plain = " ".join(text.lower().replace("×", "x").replace("*", "x").split())
    head, *rest = [part.strip() for part in _BETWEEN.split(plain) if part.strip()] or [""]
    found = _amount(head, typed)
    for part in rest:
        found = _with_part(found, part, typed)
    return found


def _amount(head: str, typed: _Typed) -> Prescription:
    match = _HEAD.fullmatch(head)
    if match is None:
        raise typed.fault("is not a dose that can be read")
    sets = _within(float(match["sets"] or 1), (1, MOST_SETS), "sets", typed)
    unit = match["unit"]
    if match["sets"] is None and unit in _REP_WORDS - {"reps", "repetitions"}:
        raise typed.fault("does not say how many sets of what")
    numbers = [match["low"], match["high"] or match["low"]]
    return _counted(int(sets), numbers, unit, typed)


def _counted(sets: int, numbers: list[str], unit: str, typed: _Typed) -> Prescription:
    """The amount in repetitions, seconds or metres, told apart by the unit; plain "m" is metres."""
    if unit in _REP_WORDS:
        reps = sum(_plain(number) for number in numbers) / 2
        return Prescription(sets=sets, reps=_within(reps, (1, MOST_REPS), "repetitions", typed))
    if unit in TIME.factors and unit != "m":
        seconds = sum(parse_time_min(f"{number} {unit}") for number in numbers) / 2 * 60
        return Prescription(sets=sets, seconds=_within(seconds, (1, LONGEST_S), "seconds", typed))
    if unit in DISTANCE.factors:
        distance_m = sum(parse_distance_m(f"{number} {unit}") for number in numbers) / 2
        return Prescription(sets=sets, distance_m=_within(distance_m, (1, LONGEST_M), "metres", typed))
    raise typed.fault(f"counts in {unit}, which is neither repetitions, time nor distance")


def _with_part(found: Prescription, part: str, typed: _Typed) -> Prescription:
    effort, reserve = _EFFORT.fullmatch(part), _RESERVE.fullmatch(part)
    if effort is not None:
        return replace(found, effort=_within(_plain(effort["effort"]), EFFORT, "of effort", typed))
    if reserve is not None:
        return replace(found, effort=_within(10 - _plain(reserve["left"]), EFFORT, "of effort", typed))
    load_kg = parse_mass_kg(re.sub(r"^(?:at|with|@)\s*", "", part))
    return replace(found, load_kg=_within(load_kg, (0, MOST_LOAD_KG), "kg of load", typed))


def _plain(number: str) -> float:
    return float(number.replace(",", "."))


def _within(value: float, limits: tuple[float, float], what: str, typed: _Typed) -> float:
    low, high = limits
    if not low <= value <= high:
        raise typed.fault(f"asks for {value:g} {what}; {low:g} to {high:g} can be planned", "change that number")
    return value
