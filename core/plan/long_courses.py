"""How a walk, a run or a loaded walk goes on: one thing grows at a time, by at most a tenth.

Walks and runs begin at four fifths of the minutes there are and grow by at most 10 % a week, then in effort. A loaded
walk begins at 5 to 10 % of body mass (`core.fit.first_load.WALK_SHARE`; judgement, below the 20 % in all of US Army
FM 21-20 for screened adults) and grows by turns in time and in mass at one steady pace (one change at a time is common
practice, no source). Its mass never passes `MOST_MASS_SHARE` of body mass. A step of the load wider than 10 % is taken
only where it is a small part of all that is moved, and says so; time grows by a tenth or by a minute.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from core.effort.dose import Dose
from core.fit.first_load import WALK_SHARE
from core.fit.model import Binding
from core.plan.model import Block, DayKind
from core.plan.rungs import MOST_STEP, Rungs, wide_note

START_SHARE = 0.8
MOST_MASS_SHARE = 0.20
"""Cap of a loaded walk in a block; FM 21-20 begins march training there, FM 21-18 fights with 30 %."""
FIRST_SHARES = (0.05, 0.10)
PACE_M_PER_S = 4.8 / 3.6
"""The marching rate of US Army FM 21-18, kept the same throughout."""
WIDEST_MOVED_STEP = 0.05
MINUTE_S = 60
MOST_EFFORT_ADDED = 1.0
LIGHT_TIME = 0.6
"""Time of a walk or run in an easy week, as a share: judgement, no source."""
MOST_ROUNDS_ADDED = 1
ROUND_EVERY = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class LongState:
    """Where a walk or run stands: its time, its binding with the load, effort over the first, and what changed."""

    seconds: int
    binding: Binding
    effort_added: float = 0.0
    why: str = ""
    note: str = ""


class LongCourse:
    """The states of a walk or run by step. `most_s` is all the day has for it."""

    def __init__(self, block: Block, rungs: Rungs, most_s: int) -> None:
        self.block = block
        self._rungs = rungs
        self._most_s = max(most_s // MINUTE_S * MINUTE_S, MINUTE_S)
        self._states = [self._first()]

    @property
    def _loaded(self) -> bool:
        return self.block.binding.load is not None

    def _first(self) -> LongState:
        seconds = max(int(START_SHARE * self._most_s) // MINUTE_S * MINUTE_S, min(self._most_s, 5 * MINUTE_S))
        binding = self.block.binding
        if self._loaded:
            person = self._rungs.setting.person
            low_kg, high_kg = (share * person.body_mass_kg for share in FIRST_SHARES)
            if not low_kg <= binding.load_kg <= high_kg:
                wanted_kg = WALK_SHARE[person.experience] * person.body_mass_kg
                binding = self._rungs.nearest(binding, wanted_kg)
        return LongState(seconds=seconds, binding=binding)

    def at(self, step: int) -> LongState:
        """The state at a step; below 0 the first one with a little less time for each step."""
        if step < 0:
            first = self._states[0]
            less_s = max(int(first.seconds * (1 + MOST_STEP * max(step, -5))) // MINUTE_S * MINUTE_S, 5 * MINUTE_S)
            return replace(first, seconds=min(less_s, first.seconds), why="A little shorter than before.")
        while len(self._states) <= step:
            self._states.append(self._next(self._states[-1], len(self._states)))
        return self._states[step]

    def dose(self, state: LongState) -> Dose:
        """The dose of a state."""
        effort = self.block.dose.effort + state.effort_added
        return replace(self.block.dose, seconds=(state.seconds, state.seconds), effort=effort)

    def _next(self, state: LongState, step: int) -> LongState:
        ways = (self._longer, self._heavier) if self._loaded else (self._longer, self._harder)
        turn = 1 if self._loaded and step % 2 == 0 else 0
        for way in (ways[turn], ways[1 - turn]):
            found = way(state)
            if found is not None:
                return found
        return replace(state, why=f"It stays as it is: the minutes are full and {self._stop_words(state)}.", note="")

    def _stop_words(self, state: LongState) -> str:
        """Why neither load nor effort grows any more."""
        if not self._loaded:
            return "it is brisk enough"
        climb = self._rungs.up(state.binding)
        if climb is None:
            return f"the load is at its cap of {100 * MOST_MASS_SHARE:.0f} % of you or the heaviest you can make"
        return f"the next load you can make is {climb.binding.load_kg:.1f} kg, too far from this one"

    def _longer(self, state: LongState) -> LongState | None:
        grown_s = int(state.seconds * (1 + MOST_STEP)) // MINUTE_S * MINUTE_S
        if grown_s <= state.seconds:
            grown_s = state.seconds + MINUTE_S
        if min(grown_s, self._most_s) <= state.seconds:
            return None
        seconds = min(grown_s, self._most_s)
        why = f"{(seconds - state.seconds) // MINUTE_S} min longer than before, nothing else changes."
        return replace(state, seconds=seconds, why=why, note="")

    def _heavier(self, state: LongState) -> LongState | None:
        """The next load under the cap, inside the published step or a small part of all that is moved."""
        climb = self._rungs.up(state.binding)
        if climb is None or (climb.is_wide and climb.moved_step > WIDEST_MOVED_STEP):
            return None
        share = 100 * climb.binding.load_kg / self._rungs.setting.person.body_mass_kg
        why = f"{climb.binding.load_kg:.1f} kg ({share:.0f} % of you), nothing else changes."
        note = wide_note(self.block, state.binding.load_kg, climb)
        return replace(state, binding=climb.binding, why=why, note=note)

    def _harder(self, state: LongState) -> LongState | None:
        if state.effort_added >= MOST_EFFORT_ADDED:
            return None
        why = "A little faster than before; you can still talk in short sentences."
        return replace(state, effort_added=state.effort_added + 0.5, why=why, note="")


def light_seconds(seconds: int) -> int:
    """Time of a walk or run in an easy week, whole minutes."""
    return max(round(LIGHT_TIME * seconds / MINUTE_S), 1) * MINUTE_S


def rounds_added(step: int) -> int:
    """Rounds of intervals over the first ones: one more after two steps, no further."""
    return min(MOST_ROUNDS_ADDED, max(0, step) // ROUND_EVERY)


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkFacts:
    """A loaded walk in numbers: mass and its share of body mass, time, pace and the distance that follows."""

    load_kg: float
    body_share: float
    seconds: int
    pace_m_per_s: float

    @property
    def distance_m(self) -> float:
        """Metres at the steady pace."""
        return self.seconds * self.pace_m_per_s


def walk_facts(block: Block, kind: DayKind, body_mass_kg: float) -> WalkFacts | None:
    """The numbers of a loaded walk; None for anything else."""
    if kind is not DayKind.LOADED_WALK or block.dose.seconds is None:
        return None
    load_kg = block.binding.load_kg
    return WalkFacts(
        load_kg=load_kg,
        body_share=load_kg / body_mass_kg,
        seconds=block.dose.seconds[0],
        pace_m_per_s=PACE_M_PER_S,
    )
