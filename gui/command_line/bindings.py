"""Bindings and doses as JSON, alike in every command: which thing serves which use, with what in it."""

from __future__ import annotations

from collections.abc import Sequence

from core.effort.dose import Dose
from core.exercise.model import Exercise
from core.fit.model import Binding
from gui.command_line.answer import Document
from gui.command_line.loads import part_document


def exercise_document(exercise: Exercise) -> Document:
    """A movement: id, name and patterns with their weights."""
    return {
        "exercise": exercise.id,
        "name": exercise.name,
        "patterns": [{"pattern": pattern.value, "weight": weight} for pattern, weight in exercise.patterns],
    }


def things_document(binding: Binding) -> list[Document]:
    """Fixtures first, then the parts of the load; a fixture has no mass of interest."""
    found: list[Document] = [
        {
            "thing": held.name,
            "thing_id": held.thing_id or None,
            "use": held.use.value,
            "fill": None,
            "volume_l": None,
            "mass_kg": None,
            "u95_kg": None,
            "height_cm": held.height_cm,
        }
        for held in binding.fixtures
    ]
    if binding.load is not None:
        use = binding.load.use.value
        found.extend(part_document(part) | {"use": use} for part in binding.load.recipe.parts)
    return found


def dose_document(dose: Dose) -> Document:
    """Sets, and one of reps, seconds and metres as [low, high]; the others are null."""
    return {
        "sets": dose.sets,
        "reps": _pair(dose.reps),
        "seconds": _pair(dose.seconds),
        "distance_m": _pair(dose.distance_m),
        "effort": dose.effort,
    }


def _pair(span: Sequence[int] | None) -> list[int] | None:
    return None if span is None else list(span)
