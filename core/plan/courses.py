"""How one movement goes on from week to week: repetitions first, then the next load this house makes.

Double progression (common practice; the size of a step is ACSM 2009, Med Sci Sports Exerc 41:687-708: 2 to 10 % once
one or two repetitions more than asked can be done). Where the next load is farther, a slower lowering, a pause, a
longer range or one side come first, and a wider step says so. Only one thing grows at a time. Repetitions after a new
load follow from Epley's relation at the same reserve. Step 0 is the dose the block begins with; steps below 0 ease off.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property

from core.effort.dose import OPTION_WORDS, Dose
from core.effort.relation import reps_at_share, reps_in_reserve, share_of_max
from core.exercise.model import DoseKind, Option
from core.fit.model import Binding
from core.plan.clock import middle
from core.plan.model import Block
from core.plan.rungs import MOST_STEP, Climb, Rungs, wide_note

EXTRA_REPS = 2
"""Repetitions over those asked before the load goes up (ACSM 2009: one or two)."""
FEWEST_REPS, FEWEST_AFTER_WIDE = 3, 5
LEVERS = (Option.SLOW_LOWERING, Option.PAUSE, Option.LONGER_RANGE, Option.ONE_SIDE)
LEVER_SHARE: dict[Option, float] = {
    Option.SLOW_LOWERING: 0.8,
    Option.PAUSE: 0.8,
    Option.LONGER_RANGE: 0.8,
    Option.ONE_SIDE: 0.5,
}
"""Repetitions left of the usual ones with a lever: judgement, no source."""
HOLD_STEP_S, CARRY_STEP_M = 5, 5
MOST_EASED = -6


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """Where a movement stands: its binding, what is added to the first amount, a lever, and what to say of it."""

    binding: Binding
    added: int = 0
    lever: Option | None = None
    tried: bool = False
    why: str = ""
    note: str = ""


class Course:
    """The states of one block by step; each is worked out once."""

    def __init__(self, block: Block, rungs: Rungs) -> None:
        self.block = block
        self._rungs = rungs
        self._up = [State(binding=block.binding)]
        self._down = [self._up[0]]

    def at(self, step: int) -> State:
        """The state at a step, below 0 an easier one."""
        if step < 0:
            while len(self._down) <= -max(step, MOST_EASED):
                self._down.append(self._eased(self._down[-1]))
            return self._down[-max(step, MOST_EASED)]
        while len(self._up) <= step:
            self._up.append(self._next(self._up[-1]))
        return self._up[step]

    def dose(self, state: State) -> Dose:
        """The dose of a state, sets and effort as the block began."""
        first, added = self.block.dose, state.added
        changed = replace(first, options=_options(first, state), share=self._share(state))
        if first.reps is not None:
            low, high = self._reps(state)
            return replace(changed, reps=(low, high))
        if first.distance_m is not None:
            return replace(changed, distance_m=_grown(first.distance_m, added * CARRY_STEP_M, self._cap))
        if first.seconds is not None:
            return replace(changed, seconds=_grown(first.seconds, added * HOLD_STEP_S, self._cap))
        return changed

    @cached_property
    def _cap(self) -> int:
        """The top of the movement's own range, or of the first dose where that is higher."""
        dose = self.block.dose
        first = dose.reps or dose.seconds or dose.distance_m or (0, 0)
        return max(first[1], round(self.block.exercise.typical[1]))

    @property
    def _amount(self) -> tuple[int, int]:
        dose = self.block.dose
        return dose.reps or dose.seconds or dose.distance_m or (0, 0)

    def _reps(self, state: State) -> tuple[int, int]:
        low, high = self.block.dose.reps or (0, 0)
        part = LEVER_SHARE[state.lever] if state.lever is not None else 1.0
        low, high = max(FEWEST_REPS, round(low * part)), max(FEWEST_REPS, round(high * part))
        low, high = max(low + state.added, 1), max(high + state.added, 1)
        return min(low, self._cap), min(high, self._cap)

    def _share(self, state: State) -> float | None:
        """The share of the person's maximum, with the load of the state."""
        share = self.block.dose.share
        if share is None:
            return None
        return share * self._rungs.moved_kg(state.binding) / self._rungs.moved_kg(self.block.binding)

    def _next(self, state: State) -> State:
        if self._can_add(state):
            return replace(state, added=state.added + 1, why=self._added_words(), note="")
        climb = self._rungs.up(state.binding, self._wanted_step(state)) if state.binding.load is not None else None
        if climb is None:
            return self._without_a_load(state)
        if not climb.is_wide or climb.moved_step <= MOST_STEP:
            return self._climbed(state, climb)
        return self._too_far(state, climb)

    def _can_add(self, state: State) -> bool:
        """Whether the amount grows before anything else: to the top of the range, with a load only so far."""
        if self.block.dose.reps is None:
            return self._amount[0] + state.added * self._step_size < self._cap
        below_top = self._reps(state)[0] < self._cap
        return below_top and (state.binding.load is None or state.added < EXTRA_REPS)

    @property
    def _amount_word(self) -> str:
        if self.block.dose.reps is not None:
            return "repetitions"
        return "distance" if self.block.dose.distance_m is not None else "time"

    @property
    def _step_size(self) -> int:
        return CARRY_STEP_M if self.block.exercise.dose is DoseKind.DISTANCE else HOLD_STEP_S

    def _wanted_step(self, state: State) -> float:
        """The step of the load that gives the first repetitions back at the same reserve."""
        if self.block.dose.reps is None:
            return 0.05
        reserve = reps_in_reserve(self.block.dose.effort)
        now, first = middle(self._reps(state)), middle(self._reps(replace(state, added=0)))
        ratio = share_of_max(max(1.0, first + reserve)) / share_of_max(max(1.0, now + reserve))
        moved, load_kg = self._rungs.moved_kg(state.binding), max(state.binding.load_kg, 0.1)
        return (ratio - 1) * moved / (self._rungs.load_part * load_kg)

    def _climbed(self, state: State, climb: Climb) -> State:
        old, new = state.binding.load_kg, climb.binding.load_kg
        added = self._added_after(state, climb.moved_step)
        why = f"You have the {self._amount_word}, so the load goes from {old:.1f} to {new:.1f} kg."
        return State(binding=climb.binding, added=added, why=why, note=wide_note(self.block, old, climb))

    def _added_after(self, state: State, moved_step: float) -> int:
        """Repetitions at the new load with the same reserve, as a difference from the first ones."""
        if self.block.dose.reps is None:
            return 0
        reserve = reps_in_reserve(self.block.dose.effort)
        now = middle(self._reps(state))
        share = share_of_max(max(1.0, now + reserve)) * (1 + moved_step)
        after = reps_at_share(min(share, 1.0)) - reserve
        first = middle(self.block.dose.reps)
        low = self.block.dose.reps[0]
        return min(EXTRA_REPS - 1, max(FEWEST_REPS - low, round(after - first)))

    def _too_far(self, state: State, climb: Climb) -> State:
        """A lever first, then more repetitions, and the wide step only once it leaves enough of them."""
        lever = self._lever()
        old, new = state.binding.load_kg, climb.binding.load_kg
        if lever is not None and not state.tried:
            why = f"The next load is {new:.1f} kg, {100 * climb.step:.0f} % more, so first {OPTION_WORDS[lever]}."
            return State(binding=state.binding, lever=lever, tried=True, why=why)
        plain = replace(state, lever=None, added=state.added)
        left = middle(self.block.dose.reps or (0, 0)) + self._added_after(plain, climb.moved_step)
        if self.block.dose.reps is not None and left >= FEWEST_AFTER_WIDE:
            return self._climbed(plain, climb)
        if self.block.dose.reps is not None and self._reps(state)[0] < self._cap:
            return replace(state, added=state.added + 1, why=self._added_words(), note="")
        why = f"The next load, {new:.1f} kg, is too far from {old:.1f} kg; hold this until it feels easy."
        return replace(state, why=why, note="")

    def _without_a_load(self, state: State) -> State:
        """At the top of the range with nothing heavier: a lever, else stay."""
        lever = self._lever()
        if lever is not None and not state.tried:
            why = f"You have the {self._amount_word}, so now {OPTION_WORDS[lever]}."
            return State(binding=state.binding, lever=lever, tried=True, why=why)
        return replace(
            state, why="You are at the top of its range. When it feels easy, swap in a harder version.", note=""
        )

    def _lever(self) -> Option | None:
        """The first way to make it harder that the movement names and the dose does not use yet."""
        if self.block.dose.reps is None:
            return None
        able = (option for option in LEVERS if option in self.block.exercise.options)
        return next((option for option in able if option not in self.block.dose.options), None)

    def _eased(self, state: State) -> State:
        """One step easier: a little less of it, and after two of those a lighter load."""
        if state.added > -EXTRA_REPS or state.binding.load is None:
            return replace(state, added=state.added - 1, why="A little less than before.")
        climb = self._rungs.down(state.binding)
        if climb is None:
            return replace(state, added=state.added - 1, why="A little less than before.")
        why = f"A lighter load: {climb.binding.load_kg:.1f} kg."
        return State(binding=climb.binding, added=0, why=why)

    def _added_words(self) -> str:
        first = ", before the load grows" if self.block.binding.load is not None else " than before"
        if self.block.dose.reps is not None:
            return f"One repetition more{first}."
        what = "m" if self.block.dose.distance_m is not None else "s"
        return f"{self._step_size} {what} more{first}."


def _grown(first: tuple[int, int], added: int, cap: int) -> tuple[int, int]:
    low, high = first[0] + added, first[1] + added
    least = min(first[0], 5)
    return max(least, min(low, cap)), max(least, min(high, cap))


def _options(first: Dose, state: State) -> tuple[Option, ...]:
    return first.options if state.lever is None else (*first.options, state.lever)
