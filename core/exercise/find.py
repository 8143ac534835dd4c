"""Finding a movement by what someone types: its name, an alias, its id, the start of either, or something close to it.

An exact name beats a beginning, a beginning beats a likeness; ties break by id, so the order is always the same.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from typing import Protocol

from core.errors import InputError
from core.exercise.model import Exercise

LONGEST_TEXT = 200
EXACT, BEGINNING = 100.0, 90.0
MOST_LIKENESS = 89.0
LEAST_LIKENESS = 60.0
SURE_LIKENESS = 82.0
"""A likeness (0 to 100) below the least is not shown; from the sure one up it is taken, when no other comes near it."""
CLEAR_LEAD = 3.0


class HasExercises(Protocol):
    """The catalog, or anything else that lists exercises."""

    @property
    def exercises(self) -> tuple[Exercise, ...]:
        """All of them, sorted by id."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundExercise:
    """An exercise that answers to what was typed, how well (0 to 100), and the name or alias that did."""

    exercise: Exercise
    score: float
    matched: str

    @property
    def exact(self) -> bool:
        """Whether the name, an alias or the id was typed in full."""
        return self.score >= EXACT


def find_exercises(text: str, catalog: HasExercises, most: int = 8) -> tuple[FoundExercise, ...]:
    """The exercises that answer best to `text`, best first; none for an empty text. Case and hyphens are free."""
    wanted = _plain(text[:LONGEST_TEXT])
    if not wanted:
        return ()
    named = [(exercise, name, _plain(name)) for exercise in catalog.exercises for name in _names(exercise)]
    found = [(exercise, _direct(wanted, plain), name) for exercise, name, plain in named]
    # Likenesses only clutter the list when something begins with what was typed.
    best = _best_each(entry for entry in found if entry[1] > 0) or _best_each(_alike(wanted, named))
    return tuple(sorted(best, key=lambda one: (-one.score, one.exercise.id))[:most])


def exercise_named(text: str, catalog: HasExercises) -> Exercise:
    """The one exercise `text` stands for; `InputError` names the nearest when that is not plain."""
    found = find_exercises(text, catalog, most=4)
    if not found:
        raise InputError(text, "is no movement in the catalog", "try another name, like squat or press-up")
    best = found[0]
    next_score = found[1].score if len(found) > 1 else 0.0
    if best.exact or (best.score >= SURE_LIKENESS and best.score - next_score >= CLEAR_LEAD):
        return best.exercise
    nearest = ", ".join(f"{one.exercise.name} ({one.exercise.id})" for one in found)
    rule = "could be more than one movement" if best.score > MOST_LIKENESS else "is no movement in the catalog"
    raise InputError(text, rule, f"choose one of: {nearest}" if len(found) > 1 else f"perhaps you mean {nearest}")


def _names(exercise: Exercise) -> tuple[str, ...]:
    return (exercise.name, *exercise.aliases, exercise.id)


@lru_cache(maxsize=8192)
def _plain(text: str) -> str:
    """Lower case, words of letters and digits only, a plural's s dropped."""
    words = re.findall(r"[^\W_]+", text.casefold())
    return " ".join(word[:-1] if len(word) > 3 and word.endswith("s") and word[-2] != "s" else word for word in words)


def _direct(wanted: str, name: str) -> float:
    """100 for the same words (spaces are free), 90 and more where every typed word begins a word of it, else 0."""
    if wanted == name or wanted.replace(" ", "") == name.replace(" ", ""):
        return EXACT
    words = name.split()
    if all(any(word.startswith(typed) for word in words) for typed in wanted.split()):
        more = 0.0 if name.startswith(wanted) else 0.5
        # The less is left to type, the likelier it was meant.
        return BEGINNING + 5.0 * len(wanted) / (len(name) + 1) - more
    return 0.0


def _alike(wanted: str, named: list[tuple[Exercise, str, str]]) -> list[tuple[Exercise, float, str]]:
    """Names that resemble `wanted`, by edit distance over the words in any order."""
    from rapidfuzz import fuzz  # only needed where nothing begins with what was typed

    scored = (
        (exercise, fuzz.token_sort_ratio(wanted, plain, score_cutoff=LEAST_LIKENESS), name)
        for exercise, name, plain in named
    )
    return [(exercise, min(score, MOST_LIKENESS), name) for exercise, score, name in scored if score > 0]


def _best_each(entries: Iterable[tuple[Exercise, float, str]]) -> list[FoundExercise]:
    """The best name of each exercise, the first of equals."""
    best: dict[str, FoundExercise] = {}
    for exercise, score, name in entries:
        there = best.get(exercise.id)
        if there is None or score > there.score:
            best[exercise.id] = FoundExercise(exercise=exercise, score=score, matched=name)
    return list(best.values())
