"""Planning from the command line: the request the options make, the plan, and a look at it before it is shown."""

from __future__ import annotations

import argparse
import datetime
from dataclasses import dataclass, replace
from pathlib import Path

from catalog.household.schema import WEEKDAY_KEYS
from catalog.household.things import place_named
from core.errors import FillmarkError, InputError
from core.exercise.find import exercise_named
from core.house.model import Person
from core.house.wishes import WEEKDAYS, DayWish, Pin, WeekWishes
from core.plan.model import DayKind, Week, WeekRequest
from core.quantity.units import parse_time_min
from gui.command_line.home import Home
from gui.command_line.options import Parser

MOST_CHARACTERS = 4_000_000
PIN_HELP = "keep something on a day: “tue push-up”, “sun rest” or “sat strength squat” (may be repeated)"


class BrokenPlan(FillmarkError):
    """A plan that breaks a hard rule; it is never shown. This is a fault of ours."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """Who the plan is for and what was asked."""

    home: Home
    person: Person
    request: WeekRequest


def add_plan_options(parser: Parser) -> None:
    """The options of every command that plans."""
    days = ", ".join(WEEKDAY_KEYS)
    parser.add_argument("--days", metavar="DAYS", help=f"other days than wished: “tue 50 min, sat 1 h” ({days})")
    parser.add_argument("--pin", action="append", default=[], metavar="PIN", help=PIN_HELP)
    parser.add_argument("--ban", action="append", default=[], metavar="EXERCISE", help="never plan this movement")


def asked(options: argparse.Namespace, home: Home) -> Asked:
    """The request; `InputError` for a day, a pin or a movement that can't be."""
    person = home.person(options.person)
    wishes = home.wishes.get(person.id, WeekWishes())
    if options.days is not None:
        wishes = replace(wishes, days=_days(options.days, wishes, home))
    if options.place is not None:
        place = place_named(options.place, home.house.places)
        wishes = replace(wishes, days=tuple(replace(day, place_id=place.id) for day in wishes.days))
    pins = tuple(_pin(text, home) for text in options.pin)
    bans = tuple(exercise_named(text, home.catalog).id for text in options.ban)
    wishes = replace(wishes, pins=(*wishes.pins, *pins), bans=(*wishes.bans, *bans))
    return Asked(home=home, person=person, request=WeekRequest(wishes=wishes))


def weekday_named(text: str) -> int:
    """0 to 6 for mon to sun, or a longer form."""
    plain = text.strip().lower().rstrip(":")
    for at, name in enumerate(WEEKDAYS):
        if len(plain) >= 2 and name.lower().startswith(plain):
            return at
    raise InputError(text, "is no weekday", f"use one of: {', '.join(WEEKDAY_KEYS)}")


def _days(text: str, wishes: WeekWishes, home: Home) -> tuple[DayWish, ...]:
    """Days typed as “tue 50 min, sat 1 h”; place and start stay as they were wished for that day."""
    before = {day.weekday: day for day in wishes.days}
    found = []
    for part in text.split(","):
        name, _, minutes = part.strip().partition(" ")
        weekday = weekday_named(name)
        usual = before.get(weekday, DayWish(weekday=weekday, minutes=30.0, place_id=_only_place(home)))
        found.append(replace(usual, minutes=parse_time_min(minutes)))
    return tuple(sorted(found, key=lambda day: day.weekday))


def _only_place(home: Home) -> str | None:
    places = home.house.places
    return places[0].id if len(places) == 1 else None


def _pin(text: str, home: Home) -> Pin:
    """“tue push-up”, “sun rest”, “sat strength squat”."""
    name, _, rest = text.strip().partition(" ")
    weekday = weekday_named(name)
    words = rest.split()
    kinds = {kind.value.replace("_", " "): kind.value for kind in DayKind}
    for count in (2, 1):
        kind = kinds.get(" ".join(words[:count]).lower().replace("_", " "))
        if kind is not None:
            exercise = " ".join(words[count:])
            return Pin(
                weekday=weekday,
                kind=kind,
                exercise_id=exercise_named(exercise, home.catalog).id if exercise else None,
            )
    return Pin(weekday=weekday, exercise_id=exercise_named(rest, home.catalog).id if rest.strip() else None)


def planned(question: Asked) -> Week:
    """The week, looked at by the independent check before anyone sees it."""
    from core.plan.week import plan_week  # the solver, only for commands that plan

    home = question.home
    week = plan_week(question.request, home.house, question.person, home.catalog)
    return checked(week, question)


def checked(week: Week, question: Asked) -> Week:
    """The week, if it obeys every hard rule; `BrokenPlan` otherwise."""
    from core.plan.validate import find_week_errors

    errors = list(find_week_errors(week, question.request, question.home.house, question.person))
    if errors:
        told = errors[0].removesuffix(".")
        raise BrokenPlan(f"The plan breaks a rule and is not shown ({told}); please report this.")
    return week


def kept_week(path: Path, home: Home) -> Week:
    """The plan in a file that `fillmark week --json` wrote; `InputError` for anything else."""
    from core.store.codec_week import week_codec
    from core.store.json_text import from_text

    try:
        if not path.is_file() or path.stat().st_size > MOST_CHARACTERS:
            raise InputError(path, "is no file with a week", "give what fillmark week --json wrote")
        document = from_text(path.read_text(encoding="utf-8"), path.name)
    except (OSError, UnicodeDecodeError) as error:
        raise InputError(path, "cannot be read", "give what fillmark week --json wrote") from error
    plan = document.get("plan") if isinstance(document, dict) else None
    if plan is None:
        raise InputError(path, "holds no plan", "give what fillmark week --json wrote")
    return week_codec(home.catalog).read(plan, path.name)


def week_for_paper(question: Asked) -> tuple[Week, datetime.date | None]:
    """The week the person has in the record, if it still fits and nothing else was asked; else a new one."""
    from core.plan.validate import find_week_errors

    saved = _saved(question)
    if saved is not None:
        week, starts = saved
        home = question.home
        if not any(find_week_errors(week, question.request, home.house, question.person)):
            return week, starts
    return planned(question), None


def _saved(question: Asked) -> tuple[Week, datetime.date] | None:
    home = question.home
    own_wishes = home.wishes.get(question.person.id, WeekWishes())
    if home.folder is None or question.request.wishes != own_wishes:
        return None
    from core.store.codec_week import WEEK_VERSION, week_from_text
    from core.store.paths import DataFolder
    from core.store.record import Record

    with Record.look(DataFolder.chosen(home.folder), lambda: datetime.datetime.now(datetime.UTC)) as record:
        kept = record.week(question.person.id)
    if kept is None or kept.version != WEEK_VERSION:
        return None
    try:
        return week_from_text(kept.plan, home.catalog), kept.starts
    except InputError:
        return None  # it names a movement the catalog lost: plan anew


def monday_named(text: str | None, today: datetime.date) -> datetime.date:
    """The Monday typed, else today if it is one, else the next."""
    if text is None:
        return today + datetime.timedelta(days=-today.weekday() % 7)
    try:
        day = datetime.date.fromisoformat(text.strip())
    except ValueError as error:
        raise InputError(text, "is no date", "write it like 2026-05-04") from error
    if day.weekday() != 0:
        monday = day - datetime.timedelta(days=day.weekday())
        raise InputError(text, "is no Monday, on which a week starts", f"give {monday.isoformat()}")
    return day


def require_plan(week: Week) -> Week:
    """The week, unless its wishes clash; then `InputError` names them."""
    if not week.days:
        wishes = week.clash.wishes if week.clash is not None else ()
        raise InputError("; ".join(wishes), "can't hold together, so there is no week", "change one of them")
    return week
