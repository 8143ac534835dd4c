"""What a test is: steps, things, stop rules, what is written down, the published norms and the change that counts.

Results are in the unit of the protocol (repetitions, s, min or m). Ages are whole years. All of it comes from the
catalog; nothing here knows where it is written.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from core.house.model import Sex


class Counted(StrEnum):
    """The unit of a result."""

    REPS = "reps"
    SECONDS = "s"
    MINUTES = "min"
    METRES = "m"


class Standing(StrEnum):
    """How far a printed number was checked: read in the source (or its abstract), in a copy of it, or remembered."""

    SEEN = "seen"
    SECOND_HAND = "second-hand"
    MEMORY = "memory"


@dataclass(frozen=True, slots=True, kw_only=True)
class Beside:
    """A number written down beside the result, such as the load or the pulse, with the range it can lie in."""

    key: str
    name: str
    unit: str
    low: float
    high: float
    needed: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class RealChange:
    """The smallest change of one person that is more than noise: an amount in the unit of the result, and who says."""

    amount: float
    told_by: str
    source_ids: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Protocol:
    """One test.

    `low` and `high` bound a result that can be true; `more_is_better` says which way is progress. `exercise_id` is the
    movement tested, by which things, places and spared demands are checked. `same_beside` names what must be alike for
    two results to be compared. `ages` limits who it is meant for. A set that tells strength (`sets_capacity`) ends with
    `reps_left` in reserve. `change` is None where no threshold is published.
    """

    id: str
    name: str
    counted: Counted
    more_is_better: bool = True
    low: float
    high: float
    exercise_id: str
    minutes: float
    steps: tuple[str, ...]
    things: tuple[str, ...] = ()
    stop_rules: tuple[str, ...]
    beside: tuple[Beside, ...] = ()
    same_beside: tuple[str, ...] = ()
    ages: tuple[int, int] | None = None
    sets_capacity: bool = False
    reps_left: float = 0.0
    change: RealChange | None = None
    practice: str = ""
    source_ids: tuple[str, ...] = ()

    @property
    def how(self) -> str:
        """The steps as one text."""
        return " ".join(self.steps)

    @property
    def unit(self) -> str:
        """The unit as it is written behind a result."""
        return self.counted.value

    def beside_named(self, key: str) -> Beside | None:
        """The number written down under this key, if the test has one."""
        return next((one for one in self.beside if one.key == key), None)


@dataclass(frozen=True, slots=True, kw_only=True)
class NormRow:
    """Published cut-offs for one sex and one range of ages: a result from `starts[i]` up lies in band i + 1."""

    sex: Sex
    ages: tuple[int, int]
    starts: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class NormTable:
    """A published table: the bands in rising order (one more than cut-offs) and a row per sex and age.

    `note` says what to know when reading it (who was measured, how the copies differ).
    """

    id: str
    protocol_id: str
    name: str
    bands: tuple[str, ...]
    rows: tuple[NormRow, ...]
    standing: Standing
    note: str
    source_ids: tuple[str, ...]
