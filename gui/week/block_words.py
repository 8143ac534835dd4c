"""What a week of the block is, in words: its title, what is special about it, what happened on its days."""

from __future__ import annotations

import datetime
from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from core.house.log import LoggedTest
from core.house.wishes import WEEKDAYS
from core.plan.block_model import BlockWeek, Happening, TrainingBlock, What
from core.plan.setbacks import days_in
from gui.desk.wording import Wording, nb

KIND_SENTENCES = {
    "test": "Before week 1: half the sets, and these tests.",
    "build": "A building week: a little more than the week before, in one thing at a time.",
    "easy": "An easy week: half the sets, more in reserve.",
    "retest": "The last week: half the sets, and the same tests again.",
}
PREVIEW = "This is a preview. It follows from your wishes and your things, and changes with them."
PAST = "This week is over. It is shown as it was planned."
WHAT_WORDS = {
    What.DONE: "done",
    What.PARTLY: "done in part",
    What.MISSED: "missed",
    What.MOVED: "moved",
    What.ILL: "ill",
    What.AWAY: "away",
    What.HARDER: "done, harder than planned",
    What.EASIER: "done, easier than planned",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class AboutWeek:
    """What is said above a week: a sentence, lines below it, and whether one looks at another than the present one."""

    sentence: str
    lines: tuple[str, ...]
    elsewhere: bool

    def is_worth_saying(self) -> bool:
        """A usual week of building, looked at in its time, needs no words."""
        return self.elsewhere or bool(self.lines)


def week_title(week: BlockWeek, block: TrainingBlock, present: int) -> str:
    """“Week 2 of 8”, “Test week”, “Week 3 of 8, preview”."""
    name = "Test week" if week.kind == "test" else f"Week {week.number} of {len(block.weeks) - 1}"
    if week.number == present:
        return name
    return f"{name}, {'preview' if week.number > present else 'past'}"


def about_week(
    week: BlockWeek, block: TrainingBlock, present: int, results: Iterable[LoggedTest], wording: Wording
) -> AboutWeek:
    """What to know about this week; `results` are the tests written down by the person."""
    elsewhere = week.number != present
    lead = "" if not elsewhere else PREVIEW if week.number > present else PAST
    lines = (*_test_lines(week, block, tuple(results)), *wording.sentences(week.notes))
    sentence = f"{lead} {KIND_SENTENCES[week.kind]}".strip()
    return AboutWeek(sentence=sentence, lines=lines, elsewhere=elsewhere)


def _test_lines(week: BlockWeek, block: TrainingBlock, results: tuple[LoggedTest, ...]) -> tuple[str, ...]:
    """The tests of each day in a line, with the result where one was written down in this week."""
    known = {protocol.id: protocol for protocol in block.tests}
    monday = block.monday_of(week.number)
    by_day: dict[str, list[str]] = {}
    for test in sorted(week.tests, key=lambda test: (test.weekday is None, test.weekday or 0)):
        protocol = known[test.protocol_id]
        day = "On a day with time for it" if test.weekday is None else WEEKDAYS[test.weekday]
        found = [one for one in results if one.test_id == protocol.id and _in_week(one.date, monday)]
        told = f" ({nb(f'{found[-1].result:g} {protocol.unit}')})" if found else ""
        by_day.setdefault(day, []).append(f"{protocol.name[:1].lower()}{protocol.name[1:]}{told}")
    return tuple(f"{day}: {', '.join(names)}" for day, names in by_day.items())


def _in_week(day: datetime.date, monday: datetime.date | None) -> bool:
    return monday is not None and 0 <= (day - monday).days < len(WEEKDAYS)


def tests_by_day(week: BlockWeek) -> Mapping[int, int]:
    """How many tests each weekday has that has any."""
    return Counter(test.weekday for test in week.tests if test.weekday is not None)


def marks_by_day(number: int, happened: Iterable[Happening]) -> Mapping[int, str]:
    """What happened on each weekday of a week, in words."""
    found: dict[int, str] = {}
    for one in happened:
        for weekday in days_in(one, number):
            if one.what is not What.MOVED:
                found[weekday] = WHAT_WORDS[one.what]
        if one.what is What.MOVED and one.week == number and one.to_weekday is not None:
            found[one.to_weekday] = f"moved from {WEEKDAYS[one.weekday]}"
    return found
