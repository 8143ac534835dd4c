"""Weeks of a block made from one pattern week: the same movements, places and things, with each week's own doses.

Every block goes along its course (`core.plan.courses`, `core.plan.long_courses`); pours, times and checks are worked
out anew. Where a day would pass its minutes, sets are taken off its last movements first.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, replace

from core.effort.dose import Dose
from core.fit.model import Binding
from core.fit.setting import ANYWHERE, Setting
from core.house.model import House, Person
from core.knowledge import Catalog
from core.plan.checks import week_checks
from core.plan.clock import REFILL_S, block_seconds
from core.plan.courses import Course, State
from core.plan.long_courses import MOST_MASS_SHARE, LongCourse, light_seconds, rounds_added
from core.plan.menu import states_of
from core.plan.model import Block, DayKind, DayPlan, Wave, Week, WeekRequest
from core.plan.pinned import day_pins
from core.plan.pour_order import pours_during
from core.plan.pours import fill_steps, with_shared_pours, without_shared
from core.plan.rungs import Rungs
from core.plan.waves import LIGHT_KINDS

LONG_KINDS = (DayKind.EASY, DayKind.LOADED_WALK)
FEWEST_SETS, FEWEST_LIGHT_SETS = 2, 1
EFFORT_LIMITS = (3.0, 10.0)
MOST_EFFORT_BUILDING = 9.0
"""No week asks for sets to the last repetition: judgement (going to failure is not needed, ACSM 2026 summary)."""

ROOM_TO_GROW = 0.08
"""Share of a strength day left free in the first week, for repetitions to come: judgement."""
LIGHT_SETS = "A light week: half the sets and more in reserve, with the same movement and load."
LIGHT_LONG = "A light week: a good deal shorter, nothing else changes."
RESERVE = re.compile(r"about \d+ reps are left")

StepOf = Callable[[int, Block], int]
"""How many steps forward (or back) a block stands on a weekday."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MadeWeek:
    """A week and what to know of it."""

    week: Week
    notes: tuple[str, ...] = ()


class WeekMaker:
    """Makes weeks from a pattern for one person in one house; courses and ladders are worked out once."""

    def __init__(self, pattern: Week, request: WeekRequest, house: House, person: Person, catalog: Catalog) -> None:
        self.pattern = pattern
        self.request = request
        self.house = house
        self.person = person
        self._catalog = catalog
        self._counts = {thing.id: thing.count for thing in house.things}
        self._settings: dict[tuple[str | None, bool], Setting] = {}
        self._courses: dict[tuple[int, str], Course] = {}
        self._long: dict[tuple[int, str], LongCourse] = {}

    def roomy(self) -> Week:
        """The pattern with some minutes of its strength days left free: a set less of the last movements."""
        days = tuple(self._with_room(day) for day in self.pattern.days)
        return replace(self.pattern, days=days)

    def _with_room(self, day: DayPlan) -> DayPlan:
        found = day
        while day.kind is DayKind.STRENGTH and found.seconds > (1 - ROOM_TO_GROW) * day.limit_s:
            shorter = self._one_set_less(found, FEWEST_SETS)
            if shorter is None:
                break
            at, changed = shorter
            found = self.timed(found, (*found.blocks[:at], changed, *found.blocks[at + 1 :]))
        return found

    def make(self, wave: Wave, step_of: StepOf) -> MadeWeek:
        """The week of this wave with every block at its step."""
        notes: list[str] = []
        days = tuple(self._day(day, wave, step_of, notes) for day in self.pattern.days)
        return MadeWeek(week=self.finished(days, wave), notes=tuple(dict.fromkeys(note for note in notes if note)))

    def finished(self, days: tuple[DayPlan, ...], wave: Wave) -> Week:
        """The week of these days: shared pours told, fills and checks worked out."""
        told = with_shared_pours(tuple(without_shared(day) for day in days))
        week = replace(self.pattern, days=told, fills=tuple(fill_steps(told, self.house)))
        return replace(
            week, checks=week_checks(week, self.house, self.person, request=replace(self.request, wave=wave))
        )

    def timed(self, day: DayPlan, blocks: tuple[Block, ...]) -> DayPlan:
        """The day with these blocks, its pours and seconds added up."""
        pour_s = REFILL_S * sum(1 for _ in pours_during(blocks, self._counts))
        every = (*day.warm_up, *blocks, *day.cool_down)
        return replace(day, blocks=blocks, pour_s=pour_s, seconds=sum(block.seconds for block in every) + pour_s)

    def _day(self, day: DayPlan, wave: Wave, step_of: StepOf, notes: list[str]) -> DayPlan:
        if day.kind is DayKind.REST:
            return day
        blocks = tuple(self._block(block, day, wave, step_of, notes) for block in day.blocks)
        return self._fitted(day, blocks, wave, notes)

    def _block(self, block: Block, day: DayPlan, wave: Wave, step_of: StepOf, notes: list[str]) -> Block:
        if self._has_pinned_dose(block, day):
            return block
        step = step_of(day.weekday, block)
        if day.kind in LONG_KINDS:
            return self._long_block(block, day, wave, step, notes)
        if day.kind is DayKind.INTERVALS:
            return _rounds(block, wave, step)
        if day.kind is not DayKind.STRENGTH:
            return block
        course = self._course(block, day)
        state = course.at(step)
        light = wave.name in LIGHT_KINDS
        notes.append("" if light else state.note)
        return _with_dose(block, state, _waved(course.dose(state), block.dose, wave), light=light)

    def _course(self, block: Block, day: DayPlan) -> Course:
        key = (day.weekday, block.exercise.id)
        if key not in self._courses:
            self._courses[key] = Course(block, Rungs(block.exercise, self._setting(day)))
        return self._courses[key]

    def _long_course(self, block: Block, day: DayPlan) -> LongCourse:
        key = (day.weekday, block.exercise.id)
        if key not in self._long:
            most_kg = MOST_MASS_SHARE * self.person.body_mass_kg
            rungs = Rungs(block.exercise, self._setting(day), most_kg=most_kg)
            self._long[key] = LongCourse(block, rungs, self._room_s(block, day))
        return self._long[key]

    def _long_block(self, block: Block, day: DayPlan, wave: Wave, step: int, notes: list[str]) -> Block:
        course = self._long_course(block, day)
        state = course.at(step)
        light = wave.name in LIGHT_KINDS
        seconds = light_seconds(state.seconds) if light else state.seconds
        notes.append("" if light else state.note)
        said = (self._first_words(block, state.binding, day), LIGHT_LONG if light else state.why)
        return replace(
            block,
            binding=state.binding,
            states=states_of(state.binding),
            dose=replace(course.dose(state), seconds=(seconds, seconds)),
            seconds=seconds,
            why=tuple(line for line in said if line),
        )

    def _first_words(self, block: Block, binding: Binding, day: DayPlan) -> str:
        """What is said first of a walk: of a loaded one its mass, else what the pattern says."""
        if day.kind is DayKind.LOADED_WALK:
            share = 100 * binding.load_kg / self.person.body_mass_kg
            return f"{binding.load_kg:.1f} kg is {share:.0f} % of you; the pace stays the same throughout."
        return block.why[0] if block.why else ""

    def _room_s(self, block: Block, day: DayPlan) -> int:
        """All the day has for a walk or run: its minutes less warm-up and cool-down, in the movement's own range."""
        wish = next((wish for wish in self.request.wishes.days if wish.weekday == day.weekday), None)
        limit_s = round(wish.minutes * 60) if wish is not None else day.limit_s
        around_s = sum(one.seconds for one in (*day.warm_up, *day.cool_down))
        longest_s = max(block.seconds, round(block.exercise.typical[1]))
        return min(limit_s - around_s, longest_s)

    def _setting(self, day: DayPlan) -> Setting:
        outdoors = day.kind in LONG_KINDS
        key = (day.place_id, outdoors)
        if key not in self._settings:
            anywhere = replace(ANYWHERE, outdoors=True, walk_m=2000.0) if outdoors else ANYWHERE
            place = next((place for place in self.house.places if place.id == day.place_id), anywhere)
            self._settings[key] = Setting(self.house, self.person, self._catalog.material_by_id, place)
        return self._settings[key]

    def _fitted(self, day: DayPlan, blocks: tuple[Block, ...], wave: Wave, notes: list[str]) -> DayPlan:
        """The day inside its minutes: a set less of the last movement that has one to spare, as often as needed."""
        found = self.timed(day, blocks)
        fewest = FEWEST_LIGHT_SETS if wave.name in LIGHT_KINDS else FEWEST_SETS
        for least in (fewest, FEWEST_LIGHT_SETS):
            while found.seconds > found.limit_s:
                shorter = self._one_set_less(found, least)
                if shorter is None:
                    break
                at, changed = shorter
                notes.append(f"{changed.exercise.name}: fewer sets, so that the day keeps to its minutes.")
                found = self.timed(day, (*found.blocks[:at], changed, *found.blocks[at + 1 :]))
        return found

    def _one_set_less(self, day: DayPlan, least: int) -> tuple[int, Block] | None:
        """The last block with a set (or round) to spare, and where it stands."""
        for at in range(len(day.blocks) - 1, -1, -1):
            block = day.blocks[at]
            if block.dose.sets <= least or day.kind in LONG_KINDS or self._has_pinned_dose(block, day):
                continue
            if day.kind is DayKind.INTERVALS:
                return at, _with_rounds(block, block.dose.sets - 1)
            return at, _redosed(block, replace(block.dose, sets=block.dose.sets - 1))
        return None

    def _has_pinned_dose(self, block: Block, day: DayPlan) -> bool:
        """A pinned dose is kept exactly in every week."""
        return day_pins(self.request.wishes.pins, day.weekday, day.kind).dose_of(block.exercise) is not None


def _redosed(block: Block, dose: Dose) -> Block:
    """The block with another dose and the seconds it takes."""
    return replace(block, dose=dose, seconds=block_seconds(block.exercise, dose, block.rest_s))


def _with_dose(block: Block, state: State, dose: Dose, *, light: bool) -> Block:
    said = (LIGHT_SETS,) if light else (state.why, state.note)
    notes = tuple(RESERVE.sub(f"about {10 - dose.effort:.0f} reps are left", note) for note in dose.notes)
    why = tuple(line for line in (*block.why[:1], *said, *notes) if line)
    changed = replace(block, binding=state.binding, states=states_of(state.binding), why=why)
    return _redosed(changed, replace(dose, notes=notes))


def _waved(dose: Dose, first: Dose, wave: Wave) -> Dose:
    """The dose in a week of this wave: sets by its share, effort by its shift, a light week one repetition less."""
    low, high = EFFORT_LIMITS
    effort = min(max(first.effort, MOST_EFFORT_BUILDING), high, max(low, first.effort + wave.effort_shift))
    changed = replace(dose, sets=max(1, int(first.sets * wave.sets + 0.5)), effort=effort)
    if wave.name in LIGHT_KINDS and changed.reps is not None:
        fewer, most = changed.reps
        return replace(changed, reps=(max(1, fewer - 1), max(1, most - 1)))
    return changed


def _rounds(block: Block, wave: Wave, step: int) -> Block:
    """Intervals: one round more after some weeks, one less in a light week."""
    rounds = block.dose.sets - 1 if wave.name in LIGHT_KINDS else block.dose.sets + rounds_added(step)
    return _with_rounds(block, max(1, rounds))


def _with_rounds(block: Block, rounds: int) -> Block:
    each_s = block.seconds // block.dose.sets
    return replace(block, dose=replace(block.dose, sets=rounds), seconds=each_s * rounds)
