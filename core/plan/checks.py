"""What a week is held to, said in numbers: the hard rules, and published guidance it is measured against.

Guidance: WHO 2020 guidelines on physical activity (adults: 150 to 300 minutes moderate or 75 to 150 vigorous a week,
one vigorous minute counting as two moderate; strengthening of all major muscle groups on two days or more). HHS 2018
says the same for adults. No more than two hard days in a row is common practice, no source.
"""

from __future__ import annotations

from core.exercise.model import Muscle
from core.house.model import House, Person
from core.house.wishes import WEEKDAYS
from core.plan.frame import HARD_KINDS, STRENGTH_FAMILIES, TARGET_SETS
from core.plan.menu import QUIET_IMPACT
from core.plan.model import Block, Check, DayKind, DayPlan, Week, WeekRequest
from core.plan.problem import is_quiet
from core.plan.validate_times import near_sessions
from core.swap.filters import QUIET_NOISE

MODERATE_MINUTES = 150
STRENGTH_DAYS = 2
MOST_HARD_IN_A_ROW = 2
WORKED_WEIGHT = 0.3
"""The weight from which a muscle counts as trained by a set (half a set counts: Pelland et al. 2024, preprint)."""
MAJOR_GROUPS: dict[str, frozenset[Muscle]] = {
    "legs": frozenset({Muscle.QUADS, Muscle.HAMSTRINGS, Muscle.CALVES}),
    "hips": frozenset({Muscle.GLUTES, Muscle.ADDUCTORS}),
    "back": frozenset({Muscle.LATS, Muscle.MID_BACK, Muscle.BACK_EXTENSORS}),
    "trunk": frozenset({Muscle.ABDOMINALS, Muscle.OBLIQUES}),
    "chest": frozenset({Muscle.CHEST}),
    "shoulders": frozenset({Muscle.FRONT_SHOULDERS, Muscle.SIDE_SHOULDERS, Muscle.REAR_SHOULDERS}),
    "arms": frozenset({Muscle.BICEPS, Muscle.TRICEPS}),
}
"""The major muscle groups of WHO 2020 and HHS 2018: legs, hips, back, abdomen, chest, shoulders, arms."""
AEROBIC_KINDS = {DayKind.EASY: 1, DayKind.LOADED_WALK: 1, DayKind.INTERVALS: 2}


def week_checks(week: Week, house: House, person: Person, *, request: WeekRequest) -> tuple[Check, ...]:
    """Every check, hard rules last."""
    return (
        _strength_days(week),
        _muscle_groups(week),
        _moderate(week),
        _sets(week, person, request.wave.sets),
        _hard_days(week),
        _recovery(week, request),
        _minutes(week),
        *_quiet(week, house, request),
    )


def _strength_days(week: Week) -> Check:
    days = sum(day.kind is DayKind.STRENGTH for day in week.days)
    met = days >= STRENGTH_DAYS
    note = f"{days} {'day' if days == 1 else 'days'} (WHO 2020 asks for 2)"
    return Check(rule="strength on 2 days", met=met, note=note)


def _muscle_groups(week: Week) -> Check:
    """Days on which each major group works in a set of strength work."""
    days: dict[str, set[int]] = {group: set() for group in MAJOR_GROUPS}
    for day in week.days:
        if day.kind is DayKind.STRENGTH:
            worked = {m for block in day.blocks for m, weight in block.exercise.muscles if weight >= WORKED_WEIGHT}
            for group, muscles in MAJOR_GROUPS.items():
                if muscles & worked:
                    days[group].add(day.weekday)
    short = [group for group, trained in days.items() if len(trained) < STRENGTH_DAYS]
    note = f"fewer for {', '.join(short)} (WHO 2020)" if short else "(WHO 2020)"
    return Check(rule="each major muscle group on 2 days", met=not short, note=note)


def _hard_days(week: Week) -> Check:
    """The longest run of hard days, the turn of the week included."""
    hard = [day.kind in HARD_KINDS for day in week.days]
    longest = run = 0
    for is_hard in (*hard, *hard):
        run = run + 1 if is_hard else 0
        longest = max(longest, min(run, len(hard)))
    met = longest <= MOST_HARD_IN_A_ROW
    return Check(rule="no three hard days in a row", met=met, note="" if met else f"{longest} in a row")


def _moderate(week: Week) -> Check:
    minutes = round(sum(moderate_seconds(day) for day in week.days) / 60)
    short = MODERATE_MINUTES - minutes
    note = f"{minutes} min" if short <= 0 else f"short by {short} min: walk more on the other days"
    return Check(rule="150 min of moderate movement", met=short <= 0, note=f"{note} (WHO 2020)")


def moderate_seconds(day: DayPlan) -> int:
    """Seconds of moderate movement a day gives; a vigorous second counts as two, the rests between them not at all.

    Strength work is not counted.
    """
    seconds = sum(_moving_seconds(block, day) for block in day.blocks)
    return AEROBIC_KINDS.get(day.kind, 0) * seconds


def _moving_seconds(block: Block, day: DayPlan) -> int:
    return block.seconds - block.dose.sets * block.rest_s if day.kind is DayKind.INTERVALS else block.seconds


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


def _recovery(week: Week, request: WeekRequest) -> Check:
    clashes: list[str] = []
    for first, second in near_sessions(request.wishes.days):
        both = _hard_families(week.days[first]) & _hard_families(week.days[second])
        clashes.extend(f"{family.replace('_', ' ')} on {WEEKDAYS[first]}" for family in sorted(both))
    return Check(rule="48 h between hard work of one pattern", met=not clashes, note=", ".join(clashes), hard=True)


def _hard_families(day: DayPlan) -> set[str]:
    return {block.family.value for block in day.blocks if block.hard and day.kind is DayKind.STRENGTH}


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
        loud = [WEEKDAYS[day.weekday] for day in late if _is_loud(day)]
        found.append(Check(rule=f"quiet after {start}", met=not loud, note=", ".join(loud), hard=True))
    return tuple(dict.fromkeys(found))


def _is_loud(day: DayPlan) -> bool:
    every = (block.exercise for block in (*day.warm_up, *day.blocks, *day.cool_down))
    return any(exercise.noise > QUIET_NOISE or exercise.impact > QUIET_IMPACT for exercise in every)
