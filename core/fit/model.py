"""Bindings: an exercise with the things, heights and load that make it possible here, or what is missing."""

from __future__ import annotations

from dataclasses import dataclass

from core.exercise.model import Use
from core.loads.model import Rung
from core.things.affordance import Grade
from core.things.model import Thing


@dataclass(frozen=True, slots=True, kw_only=True)
class Offer:
    """Something here that can serve a use. `thing` is None for what the place itself gives (floor, wall, route)."""

    use: Use
    name: str
    grade: Grade
    reason: str
    thing: Thing | None = None
    thing_id: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
    """One need met: by what, how well and why, at which working height (cm) where that matters."""

    use: Use
    thing_id: str
    name: str
    grade: Grade
    reason: str
    height_cm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Binding:
    """An exercise that can be done here: fixtures, the load (None: body alone), cautions and seconds to set up."""

    exercise_id: str
    fixtures: tuple[Held, ...] = ()
    load: Rung | None = None
    load_grade: Grade | None = None
    cautions: tuple[str, ...] = ()
    set_up_s: float = 0.0

    @property
    def height_cm(self) -> float | None:
        """Working height of the hands or feet, for the share of the body that moves."""
        raised = (Use.HANDS, Use.FEET)
        return next((held.height_cm for held in self.fixtures if held.use in raised), None)

    @property
    def load_kg(self) -> float:
        """External mass, kg."""
        return 0.0 if self.load is None else self.load.mass.value

    @property
    def thing_ids(self) -> tuple[str, ...]:
        """Every thing used, fixtures first."""
        loads = self.load.recipe.thing_ids if self.load is not None else ()
        return tuple(dict.fromkeys([held.thing_id for held in self.fixtures if held.thing_id] + list(loads)))


@dataclass(frozen=True, slots=True, kw_only=True)
class Missing:
    """An exercise that can't be done here, and every reason found, the most telling first."""

    exercise_id: str
    why: tuple[str, ...]
    lacking: tuple[Use, ...] = ()
