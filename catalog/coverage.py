"""What the exercises cover: per pattern, use and demand, and the gym movements that can be asked about."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from core.exercise.model import Demand, Exercise, Pattern, Use

STRENGTH_PATTERNS: tuple[Pattern, ...] = (
    Pattern.SQUAT,
    Pattern.HINGE,
    Pattern.LUNGE,
    Pattern.PUSH_LEVEL,
    Pattern.PUSH_OVERHEAD,
    Pattern.PULL_LEVEL,
    Pattern.PULL_OVERHEAD,
    Pattern.CARRY,
    Pattern.BRACE_FRONT,
    Pattern.BRACE_SIDE,
    Pattern.BRACE_TWIST,
    Pattern.GROUND_TO_OVERHEAD,
)
COMMON_USES: frozenset[Use] = frozenset(
    {
        *(Use.HUG, Use.FRONT, Use.ONE_HAND, Use.TWO_HANDS, Use.PAIR, Use.BACK, Use.SHOULDER, Use.OVERHEAD),
        *(Use.BETWEEN_FEET, Use.STEP, Use.SIT, Use.HANDS, Use.FEET, Use.BALANCE, Use.TOWEL, Use.STICK, Use.SLIDER),
        *(Use.PAD, Use.WALL, Use.DOOR_FRAME, Use.FLOOR, Use.STAIRS, Use.ROUTE),
    }
)
"""What any home has: a chair, a wall, stairs, a towel, a broom, a backpack, filled bottles (common practice)."""
BANDS: dict[str, tuple[int, ...]] = {"1-2": (1, 2), "3": (3,), "4-5": (4, 5)}


@dataclass(frozen=True, slots=True, kw_only=True)
class PatternRow:
    """One main pattern: how many entries, at home, with common things only, and of those per level and band."""

    pattern: Pattern
    entries: int
    home: int
    common_only: int
    levels: dict[int, int]
    bands: dict[str, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class Coverage:
    """The report: one row per pattern, counts per use and demand, ids of the gym entries."""

    exercises: int
    patterns: tuple[PatternRow, ...]
    uses: dict[Use, int]
    demands: dict[Demand, int]
    gym_ids: tuple[str, ...]

    def lines(self) -> Iterator[str]:
        """The report as plain lines of text."""
        yield f"{self.exercises} exercises, {len(self.gym_ids)} of them gym movements to ask about"
        for row in self.patterns:
            bands = ", ".join(f"level {band}: {count}" for band, count in row.bands.items())
            counts = f"{row.entries} entries, {row.home} at home, {row.common_only} with common things"
            yield f"{row.pattern}: {counts} ({bands})"
        yield "uses: " + ", ".join(f"{use} {count}" for use, count in self.uses.items())
        yield "demands: " + ", ".join(f"{demand} {count}" for demand, count in self.demands.items())


def coverage(exercises: Iterable[Exercise]) -> Coverage:
    """Count what the exercises cover; patterns, uses and demands in the order of their enums."""
    entries = tuple(exercises)
    uses = Counter(use for one in entries for need in one.needs for use in need.uses)
    demands = Counter(demand for one in entries for demand in one.demands)
    return Coverage(
        exercises=len(entries),
        patterns=tuple(_row(pattern, entries) for pattern in Pattern),
        uses={use: uses[use] for use in Use},
        demands={demand: demands[demand] for demand in Demand},
        gym_ids=tuple(sorted(one.id for one in entries if one.needs_gym)),
    )


def needs_common_things_only(exercise: Exercise) -> bool:
    """Whether every need that is not optional is met by what any home has."""
    return all(need.optional or COMMON_USES.intersection(need.uses) for need in exercise.needs)


def _row(pattern: Pattern, entries: tuple[Exercise, ...]) -> PatternRow:
    own = [one for one in entries if one.main_pattern is pattern]
    common = [one for one in own if needs_common_things_only(one)]
    levels = Counter(one.level for one in common)
    return PatternRow(
        pattern=pattern,
        entries=len(own),
        home=sum(not one.needs_gym for one in own),
        common_only=len(common),
        levels={level: levels[level] for level in range(1, 6)},
        bands={band: sum(levels[level] for level in of_band) for band, of_band in BANDS.items()},
    )
