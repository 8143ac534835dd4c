"""The three cards below the days as ready words: what the week trains, the next pours, the checks."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass

from core.exercise.model import Family
from core.house.wishes import WEEKDAYS
from core.plan.frame import STRENGTH_FAMILIES
from core.plan.model import FillStep, Week
from core.plan.tally import families_trained
from core.plan.untrained import Untrained
from core.quantity.display import UnitSystem, format_measured_mass, format_volume
from gui.desk.names import FAMILY_COLOURS, FAMILY_NAMES
from gui.desk.wording import Wording, counted, nb
from gui.widgets import BarRow, Tone

_NUMBER_WORDS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine")
REFILL_LITTLE = "The plan picks loads so that you refill as little as possible."


@dataclass(frozen=True, slots=True, kw_only=True)
class FillLine:
    """One pour, alike ones together: containers, volume, mass, and before which movement when it is on the way."""

    thing: str
    volume: str
    mass: str
    when: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FillsDay:
    """The pours of one day."""

    heading: str
    lines: tuple[FillLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FillsView:
    """The pours of the week by day, the next day first."""

    heading: str
    days: tuple[FillsDay, ...]
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckLine:
    """A rule, whether it is met, and its note."""

    mark: str
    tone: Tone
    rule: str
    note: str


def trained_rows(week: Week, low: int, reasons: Mapping[Family, Untrained]) -> tuple[BarRow, ...]:
    """Hard sets of each family against the low end of the range for the level; why, where there are none."""
    sets = families_trained(week)
    return tuple(
        BarRow(
            label=FAMILY_NAMES[family],
            share=min(1.0, sets[family] / low) if low else 0.0,
            value_text=counted(sets[family], "set") if sets[family] else _none(reasons.get(family)),
            family=FAMILY_COLOURS[family],
        )
        for family in STRENGTH_FAMILIES
    )


def _none(reason: Untrained | None) -> str:
    return "none" if reason is None else f"none, {reason.value}"


def missing_families(week: Week) -> tuple[Family, ...]:
    """Families without a hard set."""
    sets = families_trained(week)
    return tuple(family for family in STRENGTH_FAMILIES if not sets[family])


def fills_view(week: Week, today: int | None, system: UnitSystem) -> FillsView:
    """The pours of every day that has any, from `today` on and round the week; from Monday where no day is today."""
    order = (((today or 0) + step) % 7 for step in range(7))
    by_day = ((weekday, [fill for fill in week.fills if fill.weekday == weekday]) for weekday in order)
    days = tuple(_fills_day(weekday, mine, today, system) for weekday, mine in by_day if mine)
    if not days:
        return FillsView(heading="Nothing to fill", days=(), note="This week needs no pouring at all.")
    return FillsView(heading=days[0].heading, days=days, note=_pour_note(sum(fill.during for fill in week.fills)))


def _fills_day(weekday: int, mine: list[FillStep], today: int | None, system: UnitSystem) -> FillsDay:
    count = len(mine)
    number = _NUMBER_WORDS[count] if count < len(_NUMBER_WORDS) else str(count)
    day = "Today" if weekday == today else f"Before {WEEKDAYS[weekday]}"
    return FillsDay(heading=f"{day}: {number} {'fill' if count == 1 else 'fills'}", lines=fill_lines(mine, system))


def fill_lines(fills: list[FillStep], system: UnitSystem) -> tuple[FillLine, ...]:
    """A line per pour, alike ones together."""
    return tuple(_fill_line(fill, count, system) for fill, count in Counter(fills).items())


def _fill_line(fill: FillStep, count: int, system: UnitSystem) -> FillLine:
    each = "\u00a0each" if count > 1 else ""
    return FillLine(
        thing=f"{count} × {fill.name}" if count > 1 else fill.name,
        volume=f"{nb(format_volume(fill.volume_l, system))}{each}",
        mass=f"{nb(format_measured_mass(fill.mass, system))}{each}",
        when=f"before {fill.for_exercise[:1].lower()}{fill.for_exercise[1:]}" if fill.during else "",
    )


def _pour_note(during: int) -> str:
    if during == 0:
        return f"No pour during a session. {REFILL_LITTLE}"
    pours = "One pour" if during == 1 else f"{during} pours"
    return f"{pours} during a session. {REFILL_LITTLE}"


def check_lines(week: Week, wording: Wording) -> tuple[CheckLine, ...]:
    """Every check with its mark."""
    found = []
    for check in week.checks:
        mark, tone = ("met", Tone.GOOD) if check.met else ("not met", Tone.FAIR)
        rule = f"{check.rule[:1].upper()}{check.rule[1:]}"
        found.append(CheckLine(mark=mark, tone=tone, rule=wording.sentence(rule), note=wording.sentence(check.note)))
    return tuple(found)
