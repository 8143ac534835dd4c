"""The calendar file: an event a training day, the same names again, local times, nothing of the machine's clock."""

from __future__ import annotations

import datetime
from dataclasses import replace

import icalendar
import pytest

from core.errors import InputError
from core.paper.calendar import CalendarRequest, event_uid, week_calendar
from core.plan.model import Clash, DayKind, DayPlan, Status, Week
from tests.core.paper.examples import MATERIALS, WISHES, week
from tests.dipper import INES, TOMAS, dipper

MONDAY = datetime.date(2026, 3, 23)
STAMP = datetime.datetime(2026, 3, 20, 12, 30, 15, 999, tzinfo=datetime.timezone(datetime.timedelta(hours=2)))


def request(**changes: object) -> CalendarRequest:
    plain = CalendarRequest(
        week=week(), house=dipper(), person=INES, starts=MONDAY, stamp=STAMP, materials=MATERIALS, wishes=WISHES
    )
    return replace(plain, **changes)  # type: ignore[arg-type]  # any fields, as the test names them


def events(made: bytes) -> list[icalendar.Event]:
    calendar = icalendar.Calendar.from_ical(made)
    return [event for event in calendar.walk("VEVENT") if isinstance(event, icalendar.Event)]


def test_a_day_with_a_time_is_a_local_event_and_one_without_lasts_all_day() -> None:
    tuesday, saturday = events(week_calendar(request()))
    assert tuesday.start == datetime.datetime(2026, 3, 24, 18, 0)  # noqa: DTZ001 - floating on purpose
    assert tuesday.end == datetime.datetime(2026, 3, 24, 18, 16)  # noqa: DTZ001 - floating on purpose
    assert saturday.start == datetime.date(2026, 3, 28)
    assert saturday.end == datetime.date(2026, 3, 29)


def test_an_event_says_what_to_pour_and_do_and_where() -> None:
    tuesday = events(week_calendar(request()))[0]
    assert str(tuesday["summary"]) == "Ines: strength, 16 min"
    assert str(tuesday["location"]) == "Towpath"
    assert str(tuesday["description"]).splitlines() == [
        "Pour first: Water carrier: 13.0 L of water, 14.1 kg ± 0.4 (each of 2)",
        "Refill on the way: Water carrier: 8.00 L of water, 14.1 kg ± 0.4",
        "Warm up, 1 min",
        "Suitcase squat: 4 × 9–15 with 2 × Water carrier (13 L water each), 28.2 kg ± 0.8",
        "Split squat: 2 × 9–15 a side",
        "Cool down, 1 min",
    ]


def test_a_changed_plan_keeps_the_names_of_its_events() -> None:
    other = replace(week().days[5], weekday=1, kind=DayKind.EASY)
    rest = DayPlan(weekday=5, kind=DayKind.REST)
    changed = replace(week(), days=tuple({1: other, 5: rest}.get(day.weekday, day) for day in week().days))
    before, after = events(week_calendar(request())), events(week_calendar(request(week=changed)))
    assert [str(event["uid"]) for event in after] == [str(before[0]["uid"])]
    assert str(after[0]["summary"]) != str(before[0]["summary"])


def test_another_person_day_or_household_has_other_names() -> None:
    names = {
        event_uid(dipper(), INES, MONDAY),
        event_uid(dipper(), TOMAS, MONDAY),
        event_uid(dipper(), INES, MONDAY + datetime.timedelta(days=7)),
        event_uid(replace(dipper(), name="Another"), INES, MONDAY),
    }
    assert len(names) == 4


def test_the_stamp_is_the_one_passed_in() -> None:
    for event in events(week_calendar(request())):
        assert datetime.datetime(2026, 3, 20, 10, 30, 15, tzinfo=datetime.UTC) == event.DTSTAMP
    assert week_calendar(request()) == week_calendar(request())


@pytest.mark.parametrize("name", ["a\r\nBEGIN:VEVENT", "a;b,c:d\\", "漢" * 80])
def test_no_name_can_add_a_line(name: str) -> None:
    person = replace(INES, name=name)
    found = events(week_calendar(request(person=person)))
    assert len(found) == 2
    assert all(len(line) <= 75 for line in week_calendar(request(person=person)).split(b"\r\n"))


def test_a_week_starts_on_monday_and_has_a_plan() -> None:
    with pytest.raises(InputError, match="is not a Monday"):
        week_calendar(request(starts=MONDAY + datetime.timedelta(days=1)))
    with pytest.raises(InputError, match="has no plan"):
        week_calendar(request(week=Week(status=Status.IMPOSSIBLE, clash=Clash(wishes=("a",), ways_out=()))))
    with pytest.raises(ValueError, match="needs a zone"):
        week_calendar(request(stamp=datetime.datetime(2026, 3, 20)))  # noqa: DTZ001 - what is refused
