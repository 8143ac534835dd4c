"""Written cases of swaps: who asks for what, where, and what an experienced coach would answer.

Cases live in truth/*.toml and were written from trade knowledge before the program was asked. Fields: `asked`, `house`,
`place`, `person`, `because`, `spare`, `dose` pose the question. `first`: one of these stands first. `top3`, `top5`: of
each list at least one is among the first three (five). `only3`: the first three come from this list alone. `patterns3`,
`patterns5`: the first ones keep to these patterns. `muscle3`, `muscle5`: they work this muscle at 0.8 or more.
`not_near`: none of these among the first five. `never`: not offered at all. `never_patterns`, `without` (demands),
`most_level`, `most_noise` and `most_kg` hold for every answer. `left_out`: left out with a reason. `says`: some reason
or the note among the first five holds these words. `chain_has`, `chain_ends`: the way up to the movement asked for.

Run `python -m tests.core.swap.truth_table` to see how far the program agrees, with every difference.
"""

from __future__ import annotations

import sys
import tomllib
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from pydantic import BaseModel, ConfigDict

from core.effort.dose_text import parse_dose
from core.exercise.model import Demand, Muscle, Pattern
from core.fit.setting import Setting
from core.swap.model import Answer, Cause, Swap, SwapRequest
from core.swap.swap import swap
from tests.core.swap.truth_houses import CATALOG, PEOPLE, PLACES, house_named

FOLDER = Path(__file__).parent / "truth"
NEAR = 5
LEADING = 0.8
Ids = tuple[str, ...]


class Case(BaseModel):
    """One written case."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    id: str
    asked: str
    house: str
    place: str = "room"
    person: str = "usual"
    because: Cause = Cause.NO_GEAR
    spare: tuple[Demand, ...] = ()
    dose: str = ""
    first: Ids = ()
    top3: tuple[Ids, ...] = ()
    top5: tuple[Ids, ...] = ()
    only3: Ids = ()
    patterns3: tuple[Pattern, ...] = ()
    patterns5: tuple[Pattern, ...] = ()
    muscle3: Muscle | None = None
    muscle5: Muscle | None = None
    not_near: Ids = ()
    never: Ids = ()
    never_patterns: tuple[Pattern, ...] = ()
    without: tuple[Demand, ...] = ()
    most_level: int = 5
    most_noise: int = 3
    most_kg: float = 1000.0
    left_out: Ids = ()
    says: str = ""
    chain_has: Ids = ()
    chain_ends: bool = False
    why: str
    source: str

    @property
    def ids(self) -> Iterator[str]:
        """Every exercise named."""
        yield from (self.asked, *self.first, *self.only3, *self.not_near, *self.never, *self.left_out, *self.chain_has)
        for group in (*self.top3, *self.top5):
            yield from group


@cache
def cases() -> tuple[Case, ...]:
    """Every written case, file by file."""
    found: list[Case] = []
    for path in sorted(FOLDER.glob("*.toml")):
        with path.open("rb") as file:
            table = tomllib.load(file)
        found.extend(Case(**{"source": table["source"]} | entry) for entry in table["case"])
    return tuple(found)


@cache
def setting_of(house: str, person: str, place: str) -> Setting:
    """The setting of a case; cases in the same house share what it has worked out."""
    return Setting(house_named(house), PEOPLE[person], CATALOG.material_by_id, PLACES[place])


def answered(case: Case) -> Swap:
    """What the program says."""
    setting = setting_of(case.house, case.person, case.place)
    request = SwapRequest(
        asked=CATALOG.exercise_by_id[case.asked],
        cause=case.because,
        spare=frozenset(case.spare),
        prescription=parse_dose(case.dose) if case.dose else None,
    )
    return swap(request, setting, CATALOG)


def differences(case: Case, found: Swap) -> Iterator[str]:
    """Everything in which the program does not answer as written."""
    yield from _order_differences(case, found)
    yield from _whole_differences(case, found)
    yield from _word_differences(case, found)


def _order_differences(case: Case, found: Swap) -> Iterator[str]:
    ids = [answer.exercise.id for answer in found.answers]
    if case.first and ids[:1] != [one for one in case.first if ids[:1] == [one]]:
        yield f"first is {ids[:1]}, not one of {case.first}"
    for count, groups in ((3, case.top3), (NEAR, case.top5)):
        for group in groups:
            if set(group).isdisjoint(ids[:count]):
                yield f"none of {group} among the first {count}"
    if case.only3 and not set(ids[:3]) <= set(case.only3):
        yield f"the first three should come from {case.only3} alone"
    for one in ids[:NEAR]:
        if one in case.not_near:
            yield f"{one} is among the first {NEAR}"
    for count, patterns, muscle in ((3, case.patterns3, case.muscle3), (NEAR, case.patterns5, case.muscle5)):
        for answer in found.answers[:count]:
            yield from _strangers(answer, patterns, muscle)


def _strangers(answer: Answer, patterns: tuple[Pattern, ...], muscle: Muscle | None) -> Iterator[str]:
    exercise = answer.exercise
    if patterns and exercise.main_pattern not in patterns:
        yield f"{exercise.id} is {exercise.main_pattern.value}"
    if muscle is not None and dict(exercise.muscles).get(muscle, 0.0) < LEADING:
        yield f"{exercise.id} hardly works the {muscle.value}"


def _whole_differences(case: Case, found: Swap) -> Iterator[str]:
    for answer in found.answers:
        exercise = answer.exercise
        if exercise.id in case.never or exercise.main_pattern in case.never_patterns:
            yield f"{exercise.id} is offered"
        if not exercise.demands.isdisjoint(case.without):
            yield f"{exercise.id} asks for {sorted(exercise.demands & set(case.without))}"
        if exercise.level > case.most_level or exercise.noise > case.most_noise:
            yield f"{exercise.id} is level {exercise.level}, noise {exercise.noise}"
        if answer.binding.load_kg > case.most_kg + 0.05:
            yield f"{exercise.id} takes {answer.binding.load_kg:.1f} kg"
    left = {one.exercise_id for one in found.left_out}
    yield from (f"{one} is not left out" for one in case.left_out if one not in left)


def _word_differences(case: Case, found: Swap) -> Iterator[str]:
    said = " ".join([found.note, *(why for answer in found.answers[:NEAR] for why in answer.why)])
    if case.says not in said:
        yield f"nothing says “{case.says}”"
    chain = [exercise.id for exercise in found.chain]
    if not set(case.chain_has) <= set(chain) or ((case.chain_ends or case.chain_has) and chain[-1:] != [case.asked]):
        yield f"the way up is {chain}"


def _report() -> None:
    agreed = 0
    for case in cases():
        found = answered(case)
        differing = list(differences(case, found))
        agreed += not differing
        if differing:
            first = ", ".join(f"{a.exercise.id} {100 * a.closeness.total:.0f}" for a in found.answers[:8])
            sys.stdout.write(f"{case.id} ({case.asked}, {case.because.value})\n  got: {first}\n")
            sys.stdout.writelines(f"  {one}\n" for one in differing)
    sys.stdout.write(f"{agreed} of {len(cases())} cases agree\n")


if __name__ == "__main__":
    _report()
