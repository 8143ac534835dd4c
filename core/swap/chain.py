"""The way up to a movement that can't be done now: easier ones that can be done here, the easiest first."""

from __future__ import annotations

from collections.abc import Callable

from core.exercise.model import Exercise
from core.knowledge import Catalog
from core.swap.closeness import likeness

FIGURES = 9


def chain_to(asked: Exercise, can_do: Callable[[Exercise], bool | None], catalog: Catalog) -> tuple[Exercise, ...]:
    """The shortest way along easier links from `asked` down to a movement that can be done now, turned round.

    `can_do` says whether an exercise can be done now (True), later (False: too hard yet), or not here (None: no part
    of the way). Empty where no way ends at one that can be done now. Of ways equally short the one whose steps are most
    like `asked` wins, then the earlier by id.
    """
    below: dict[str, Exercise] = {}
    layer, now = [asked], list[Exercise]()
    while layer and not now:
        layer, now = _one_below(layer, asked, below, can_do, catalog)
    if not now:
        return ()
    ways = [_upwards(one, below, asked) for one in now]
    return min(ways, key=lambda way: (-round(sum(likeness(asked, one) for one in way), FIGURES), way[0].id))


def _one_below(
    layer: list[Exercise],
    asked: Exercise,
    below: dict[str, Exercise],
    can_do: Callable[[Exercise], bool | None],
    catalog: Catalog,
) -> tuple[list[Exercise], list[Exercise]]:
    """The next easier movements: those for later, and those that can be done now. Notes what each leads up to."""
    later, now = list[Exercise](), list[Exercise]()
    for here in layer:
        for easier_id in here.easier:
            easier = catalog.exercise_by_id.get(easier_id)
            if easier is None or easier_id == asked.id or easier_id in below or (able := can_do(easier)) is None:
                continue
            below[easier_id] = here
            (now if able else later).append(easier)
    return later, now


def _upwards(lowest: Exercise, below: dict[str, Exercise], asked: Exercise) -> tuple[Exercise, ...]:
    chain = [lowest]
    while chain[-1].id != asked.id:
        chain.append(below[chain[-1].id])
    return tuple(chain)


def chain_words(chain: tuple[Exercise, ...]) -> str:
    """“Until you can do pull-up: inverted row, then slow-lowering pull-up.”; empty for no chain."""
    if not chain:
        return ""
    *steps, goal = (exercise.name.lower() for exercise in chain)
    return f"Until you can do {goal}: {', then '.join(steps)}."
