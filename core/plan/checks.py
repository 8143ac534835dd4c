"""What a week is held to, said in numbers: the hard rules, and published guidance it is measured against.

Guidance: WHO 2020 guidelines on physical activity (adults: 150 to 300 minutes moderate or 75 to 150 vigorous a week,
one vigorous minute counting as two moderate; muscle strengthening on two days or more).
"""

from __future__ import annotations

from core.house.model import House, Person
from core.house.wishes import WEEKDAYS
from core.plan.frame import STRENGTH_FAMILIES, TARGET_SETS
from core.plan.model import Check, DayKind, DayPlan, Week, WeekRequest
from core.plan.problem import is_quiet
from core.swap.filters import QUIET_NOISE

MODERATE_MINUTES = 150
STRENGTH_DAYS = 2
AEROBIC_KINDS = {DayKind.EASY: 1, DayKind.LOADED_WALK: 1, DayKind.INTERVALS: 2}


def week_checks(week: Week, house: House, person: Person, *, request: WeekRequest) -> tuple[Check, ...]:
    """Every check, hard rules last."""
    return (
        _strength_days(week),
        _moderate(week),
        _sets(week, person, request.wave.sets),
        _recovery(week),
        _minutes(week),
        *_quiet(week, house, request),
    )


def _strength_days(week: Week) -> Check:
    days = sum(day.kind is DayKind.STRENGTH for day in week.days)
    met = days >= STRENGTH_DAYS
    note = f"{days} {'day' if days == 1 else 'days'} (WHO 2020 asks for 2)"
    return Check(rule="strength on 2 days", met=met, note=note)


def _moderate(week: Week) -> Check:
    minutes = round(sum(moderate_seconds(day) for day in week.days) / 60)
    short = MODERATE_MINUTES - minutes
    note = f"{minutes} min" if short <= 0 else f"short by {short} min: walk more on the other days"
    return Check(rule="150 min of moderate movement", met=short <= 0, note=f"{note} (WHO 2020)")


def moderate_seconds(day: DayPlan) -> int:
    """Seconds of moderate movement a day gives; a vigorous second counts as two. Strength work is not counted."""
    return AEROBIC_KINDS.get(day.kind, 0) * sum(block.seconds for block in day.blocks)


def _sets(week: Week, person: Person, factor: float) -> Check:
    low = max(1, round(TARGET_SETS[person.experience][0] * factor))
    sets = dict.fromkeys(STRENGTH_FAMILIES, 0)
    for day in week.days:
        if day.kind is DayKind.STRENGTH:
            for block in day.blocks:
                sets[block.family] = sets.get(block.family, 0) + block.dose.sets
    short = [family.value.replace("_", " ") for family, count in sets.items() if count < low]
    note = f"below: {', '.join(short)}" if short else ""
    return Check(rule=f"{low} hard sets a pattern", met=not short, note=note)


def _recovery(week: Week) -> Check:
    clashes: list[str] = []
    for day in week.days:
        after = week.days[(day.weekday + 1) % 7]
        both = {block.family for block in day.blocks if block.hard and day.kind is DayKind.STRENGTH}
        both &= {block.family for block in after.blocks if block.hard and after.kind is DayKind.STRENGTH}
        clashes.extend(f"{family.value} on {WEEKDAYS[day.weekday]}" for family in sorted(both))
    return Check(rule="48 h between hard work of one pattern", met=not clashes, note=", ".join(clashes), hard=True)


def _minutes(week: Week) -> Check:
    over = [WEEKDAYS[day.weekday] for day in week.days if day.seconds > day.limit_s and day.kind is not DayKind.REST]
    return Check(rule="every day inside its minutes", met=not over, note=", ".join(over), hard=True)


def _quiet(week: Week, house: House, request: WeekRequest) -> tuple[Check, ...]:
    wishes = {wish.weekday: wish for wish in request.wishes.days}
    found = []
    for place in house.places:
        if place.quiet is None:
            continue
        start = place.quiet.start.strftime("%H:%M")
        days = [day for day in week.days if day.place_id == place.id and day.weekday in wishes]
        late = [day for day in days if is_quiet(place.quiet, wishes[day.weekday])]
        loud = [WEEKDAYS[day.weekday] for day in late if any(b.exercise.noise > QUIET_NOISE for b in day.blocks)]
        found.append(Check(rule=f"quiet after {start}", met=not loud, note=", ".join(loud), hard=True))
    return tuple(dict.fromkeys(found))
