"""A week as an iCalendar file (RFC 5545): one event a training day, updated rather than doubled when it is sent again.

Times are local without a zone ("floating"), so that a session at 18:00 stays at 18:00 through summer time and travel.
A day without a time is an event of the whole day. Nothing here reads a clock: the stamp is passed in.
"""

from __future__ import annotations

import datetime
import uuid
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from core.errors import InputError
from core.house.model import House, Person
from core.house.wishes import WeekWishes
from core.mass.model import Material
from core.paper.words import dose_words, load_words, minutes_words, pour_lines
from core.plan.model import KIND_WORDS, DayKind, DayPlan, Week
from core.quantity.display import UnitSystem

if TYPE_CHECKING:
    from icalendar import Event

PRODUCT = "-//Fillmark//Week//EN"
NAMESPACE = uuid.UUID("6f2d6c5e-3d0f-5a3a-9c57-0b7a4f1d2c11")
"""Ours for names of events; any fixed value would do."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CalendarRequest:
    """A planned week of a person, the Monday it starts on, and the moment the file is made (with its zone)."""

    week: Week
    house: House
    person: Person
    starts: datetime.date
    stamp: datetime.datetime
    materials: Mapping[str, Material]
    wishes: WeekWishes = field(default_factory=WeekWishes)
    system: UnitSystem = UnitSystem.METRIC


def week_calendar(request: CalendarRequest) -> bytes:
    """The file; `InputError` for a week without a plan, or one that starts on another day than Monday."""
    if not request.week.days:
        raise InputError("the week", "has no plan to put in a calendar", "change the wishes that clash first")
    if request.starts.weekday() != 0:
        raise InputError(request.starts.isoformat(), "is not a Monday, on which a week starts", "give the Monday")
    if request.stamp.tzinfo is None:
        raise ValueError("the stamp of a calendar needs a zone")
    from icalendar import Calendar  # only needed to make this file

    calendar = Calendar()
    calendar.add("prodid", PRODUCT)
    calendar.add("version", "2.0")
    calendar.add("method", "PUBLISH")
    for day in request.week.days:
        if day.kind is not DayKind.REST:
            calendar.add_component(_event(day, request))
    return bytes(calendar.to_ical())


def event_uid(house: House, person: Person, day: datetime.date) -> str:
    """The name of a day's event: the same for the same household, person and date, whatever is planned."""
    return f"{uuid.uuid5(NAMESPACE, f'{house.name}/{person.id}/{day.isoformat()}')}@fillmark.invalid"


def _event(day: DayPlan, request: CalendarRequest) -> Event:
    from icalendar import Event

    date = request.starts + datetime.timedelta(days=day.weekday)
    event = Event()
    event.add("uid", event_uid(request.house, request.person, date))
    event.add("dtstamp", request.stamp.astimezone(datetime.UTC).replace(microsecond=0))
    start = next((wish.start for wish in request.wishes.days if wish.weekday == day.weekday), None)
    if start is None:
        event.add("dtstart", date)
        event.add("dtend", date + datetime.timedelta(days=1))
    else:
        begins = datetime.datetime.combine(date, start)
        event.add("dtstart", begins)
        event.add("dtend", begins + datetime.timedelta(minutes=-(-day.seconds // 60)))
    event.add("summary", f"{request.person.name}: {KIND_WORDS[day.kind].lower()}, {minutes_words(day.seconds)}")
    place = next((place.name for place in request.house.places if place.id == day.place_id), "")
    if place:
        event.add("location", place)
    event.add("description", "\n".join(_lines(day, request)))
    return event


def _lines(day: DayPlan, request: CalendarRequest) -> list[str]:
    """Pours, then the movements, a line each."""
    steps = [step for step in request.week.fills if step.weekday == day.weekday]
    lines: list[str] = []
    for during, verb in ((False, "Pour first"), (True, "Refill on the way")):
        asked = (step for step in steps if step.during is during)
        lines.extend(f"{verb}: {words}" for words in pour_lines(asked, request.materials, request.system))
    if day.warm_up:
        lines.append(f"Warm up, {minutes_words(sum(block.seconds for block in day.warm_up))}")
    for block in day.blocks:
        load = load_words(block.binding, request.system)
        dose = dose_words(block.exercise, block.dose, request.system)
        lines.append(f"{block.exercise.name}: {dose}{f' with {load}' if load else ''}")
    if day.cool_down:
        lines.append(f"Cool down, {minutes_words(sum(block.seconds for block in day.cool_down))}")
    return lines
