"""The next load of a movement on this house's ladder: a step inside the published 2 to 10 %, or how far it is.

ACSM 2009 (Med Sci Sports Exerc 41:687-708): raise a load by 2 to 10 % once one or two repetitions more than asked can
be done. A load is taken only as `bind` would take it, so it is always one the house makes and everything may bear; what
was reached step by step counts as proven.
"""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass

from core.effort.load import effective_kg
from core.exercise.model import Exercise
from core.fit.bind import bind
from core.fit.choose_load import Lift
from core.fit.model import Binding, Missing
from core.fit.setting import Setting
from core.plan.model import Block
from core.things.affordance import Grade

LEAST_STEP, MOST_STEP = 0.02, 0.10
SAME_KG = 1e-6
MOST_TRIED = 12


@dataclass(frozen=True, slots=True)
class Climb:
    """A step to another load: the binding with it, its share of the load before, and of all that is moved."""

    binding: Binding
    step: float
    moved_step: float

    @property
    def is_wide(self) -> bool:
        """Whether the load grows by more than the published 10 %."""
        return self.step > MOST_STEP + 1e-9


class Rungs:
    """Loads of one movement in one place for one person, as steps up and down from a binding."""

    def __init__(self, exercise: Exercise, setting: Setting, *, most_kg: float = float("inf")) -> None:
        self.exercise = exercise
        self.setting = setting
        self.most_kg = most_kg

    def up(self, binding: Binding, wanted_step: float = 0.05) -> Climb | None:
        """The rung nearest to `wanted_step` inside 2 to 10 %, else the next one above however far; None at the top."""
        masses = self._masses(binding)
        now_kg = binding.load_kg
        inside = [kg for kg in masses if LEAST_STEP <= kg / now_kg - 1 <= MOST_STEP] if now_kg > 0 else []
        inside.sort(key=lambda kg: (abs(kg / now_kg - 1 - wanted_step), kg))
        beyond = masses[bisect_right(masses, now_kg * (1 + MOST_STEP)) :] if now_kg > 0 else ()
        return self._first(binding, [*inside, *beyond])

    def down(self, binding: Binding) -> Climb | None:
        """The rung nearest to 5 % below, not lighter by more than 10 % unless there is no other; None at the bottom."""
        masses, now_kg = self._masses(binding), binding.load_kg
        below = [kg for kg in masses if kg < now_kg * (1 - LEAST_STEP)]
        below.sort(key=lambda kg: (abs(kg / now_kg - 0.95), -kg))
        return self._first(binding, below)

    def nearest(self, binding: Binding, wanted_kg: float) -> Binding:
        """The binding with the load nearest to `wanted_kg`; the one given if there is no other."""
        masses = sorted(self._masses(binding), key=lambda kg: (abs(kg - wanted_kg), kg))
        found = self._first(binding, masses)
        return binding if found is None else found.binding

    def _masses(self, binding: Binding) -> tuple[float, ...]:
        load, need = binding.load, self.exercise.load_need
        if load is None or need is None:
            return ()
        sound = binding.load_grade is not Grade.POOR
        ladder = self.setting.ladder(load.use, need.count, self.exercise.posture, sound=sound)
        low_kg, high_kg = Lift(self.exercise, need, self.setting, 0.0).limits_kg
        high_kg = min(high_kg, self.most_kg)
        return tuple(kg for kg in ladder.masses_kg if low_kg - 1e-9 <= kg <= high_kg + 1e-9)

    def _first(self, binding: Binding, masses: list[float]) -> Climb | None:
        """The first of these loads that can be bound the same way (same use, same fixtures)."""
        for kg in masses[:MOST_TRIED]:
            found = bind(self.exercise, self.setting, wanted_kg=kg, proven=True)
            if not isinstance(found, Missing) and self._is_it(found, binding, kg):
                return Climb(found, kg / binding.load_kg - 1, self.moved_kg(found) / self.moved_kg(binding) - 1)
        return None

    @staticmethod
    def _is_it(found: Binding, before: Binding, kg: float) -> bool:
        if found.load is None or before.load is None or found.load.use is not before.load.use:
            return False
        return abs(found.load_kg - kg) < max(SAME_KG, 0.006) and found.fixtures == before.fixtures

    def moved_kg(self, binding: Binding) -> float:
        """Mass one working side moves with this binding, kg; 1 where nothing is known of it."""
        mass_kg = self.setting.person.body_mass_kg
        moved = effective_kg(self.exercise, binding.load_kg, mass_kg, height_cm=binding.height_cm)
        return moved if moved > 0 else 1.0

    @property
    def load_part(self) -> float:
        """What one kg more of load adds to the mass one side moves."""
        return self.exercise.side_share * self.exercise.load_share


def wide_note(block: Block, old_kg: float, climb: Climb) -> str:
    """What to say of a step wider than the published one; nothing of any other."""
    if not climb.is_wide:
        return ""
    new_kg = climb.binding.load_kg
    head = f"{block.exercise.name}: {old_kg:.1f} to {new_kg:.1f} kg is a step of {100 * climb.step:.0f} %"
    if climb.moved_step <= MOST_STEP:
        return f"{head}, but {100 * climb.moved_step:.0f} % of all you move with your body."
    return f"{head}, more than the published 2 to 10 %; start with fewer reps."
