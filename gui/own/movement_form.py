"""The form of an own movement: what it is, trains, counts, takes and asks, how it is done, what stands beside it."""

from __future__ import annotations

from core.exercise.model import Demand, DoseKind, Option, Posture, Sides
from core.knowledge import Catalog
from core.quantity.display import UnitSystem
from gui.desk.names import DEMAND_NAMES, MUSCLE_NAMES, PATTERN_NAMES
from gui.own.field import (
    ChoiceOf,
    FlagsOf,
    LineOf,
    LinesOf,
    SetOf,
    WordsOf,
    percent,
    percent_words,
    plain_number,
)
from gui.own.needs import NeedsOf
from gui.own.neighbours import NeighboursOf
from gui.own.quantities import parse_dose_range, write_dose
from gui.own.section import Section
from gui.own.weights import WeightsOf

LEVELS = (
    (1, "1 · chair level"),
    (2, "2 · easy"),
    (3, "3 · some practice"),
    (4, "4 · demanding"),
    (5, "5 · hard"),
)
DOSES = ((DoseKind.REPS, "repetitions"), (DoseKind.TIME, "time, in seconds"), (DoseKind.DISTANCE, "metres"))
SIDES = ((Sides.BOTH, "both sides at once"), (Sides.EACH, "one side, then the other"), (Sides.ALTERNATE, "in turn"))
POSTURES = (
    (Posture.STANDING, "standing"),
    (Posture.SEATED, "seated"),
    (Posture.FLOOR, "on the floor"),
    (Posture.HANGING, "hanging"),
    (Posture.MOVING, "on the move"),
)
LANDING = ((0, "none"), (1, "soft"), (2, "clear"), (3, "hard"))
NOISE = ((0, "none"), (1, "little"), (2, "heard next door"), (3, "loud"))
OPTIONS = (
    (Option.SLOW_LOWERING, "lower slowly"),
    (Option.PAUSE, "pause"),
    (Option.SHORTER_RANGE, "shorter range"),
    (Option.LONGER_RANGE, "longer range"),
    (Option.ONE_SIDE, "one side"),
)
MOST_PATTERNS, MOST_MUSCLES = 3, 6


def movement_sections(catalog: Catalog, system: UnitSystem) -> tuple[Section, ...]:
    """The sections, empty."""
    return (_what(), _trains(), _counts(), _takes(system), _asks(), _how(), _beside(catalog))


def _what() -> Section:
    fields = (
        LineOf("name", "Name", hint="Lock beam push", wide=True),
        WordsOf("aliases", "Other names for it, with commas between", hint="beam shove, gate push"),
    )
    return Section("What it is", "", fields)


def _trains() -> Section:
    patterns = {pattern.value: name for pattern, name in PATTERN_NAMES.items()}
    muscles = {muscle.value: name for muscle, name in MUSCLE_NAMES.items()}
    fields = (
        WeightsOf("patterns", "Patterns", patterns, MOST_PATTERNS),
        WeightsOf("muscles", "Muscles", muscles, MOST_MUSCLES),
    )
    return Section("What it trains", "One pattern and one muscle lead; swaps and weeks go by them.", fields)


def _counts() -> Section:
    fields = (
        ChoiceOf("dose", "Counted by", DOSES, DoseKind.REPS),
        LineOf("typical", "Usual dose of one set", write=write_dose, parse=parse_dose_range, hint="8 to 15"),
        ChoiceOf("sides", "Sides", SIDES, Sides.BOTH),
        LineOf("rep_s", "Seconds a repetition takes", write=_number, parse=plain_number, hint="4"),
        ChoiceOf("level", "Level", LEVELS, 2),
        SetOf("options", "Can be made harder or gentler by", OPTIONS),
    )
    return Section("How it is counted", "", fields)


def _takes(system: UnitSystem) -> Section:
    fields = (
        NeedsOf(system),
        LineOf("floor_m2", "Clear floor, m²", write=_number, parse=plain_number, hint="2"),
        _share("body.share", "Part of you that moves", "64 %"),
        _share("load_share", "Part of the load it works against", "100 %"),
        _share("side_share", "Part that one side takes", "50 %"),
        FlagsOf("Place", (("outdoors_only", "outdoors only"), ("skip_when_wet", "not when wet"))),
    )
    return Section("What it takes", "", fields)


def _asks() -> Section:
    demands = tuple((demand.value, DEMAND_NAMES[demand]) for demand in Demand)
    fields = (
        SetOf("demands", "It asks for", demands, "Whoever spares one of these is not offered it."),
        ChoiceOf("posture", "Done", POSTURES, Posture.STANDING),
        ChoiceOf("impact", "Landing", LANDING, 0),
        ChoiceOf("noise", "Noise", NOISE, 0),
        FlagsOf("Height", (("reach_over_head", "hands or load go above the head"),)),
    )
    return Section("What it asks of the body", "", fields)


def _how() -> Section:
    fields = (
        LinesOf("cues", "How it is done, a sentence in each line"),
        LinesOf("faults", "What often goes wrong"),
        LinesOf("cautions", "Cautions", "Say what can hurt, and how to keep it from that."),
    )
    return Section("How it is done", "", fields)


def _beside(catalog: Catalog) -> Section:
    fields = (
        NeighboursOf("easier", "Next easier movements", catalog),
        NeighboursOf("harder", "Next harder movements", catalog),
    )
    return Section("What stands beside it", "Weeks go up and down along these.", fields)


def _share(key: str, caption: str, hint: str) -> LineOf:
    return LineOf(key, caption, write=percent_words, parse=percent, hint=hint)


def _number(value: float) -> str:
    return f"{value:g}"
