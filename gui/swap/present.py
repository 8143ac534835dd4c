"""What the swap screen shows: answers and left-out movements as ready words and shares."""

from __future__ import annotations

from dataclasses import dataclass

from core.effort.words import dose_words
from core.exercise.model import Exercise
from core.loads.model import Rung
from core.quantity.display import UnitSystem, format_length, format_volume
from core.swap.model import Answer, Swap
from core.things.affordance import Grade
from gui.desk.names import MOVE_PICTURES
from gui.theme import MovePicture
from gui.widgets import BarRow, Tone

MOST_CHIPS = 4
QUICK_SET_UP_S = 60.0


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerView:
    """One answer, ready to paint. `parts` are closeness bars, `reasons` and `cues` the lines that open in place."""

    exercise_id: str
    name: str
    relation: str
    things: str
    dose: str
    chips: tuple[tuple[str, Tone], ...]
    total: str
    parts: tuple[BarRow, ...]
    reasons: tuple[str, ...]
    cues: tuple[str, ...]
    cautions: tuple[str, ...]
    picture: MovePicture


@dataclass(frozen=True, slots=True, kw_only=True)
class SwapView:
    """All answers, the sentence on the asked load, and every movement left out with its reason."""

    heading: str
    answers: tuple[AnswerView, ...]
    note: str
    left_out: tuple[tuple[str, str], ...]


def present(swap: Swap, system: UnitSystem, most: int) -> SwapView:
    """The first `most` answers and everything left out."""
    shown = tuple(_answer(answer, swap.asked, system) for answer in swap.answers[:most])
    return SwapView(
        heading=_heading(len(shown), len(swap.answers)),
        answers=shown,
        note=swap.note,
        left_out=tuple((left.name, left.why) for left in swap.left_out),
    )


def _heading(shown: int, fitting: int) -> str:
    if not fitting:
        return "Nothing you list can stand in here"
    fit = "fits" if fitting == 1 else "fit"
    return f"{shown} of {fitting} that {fit} · ranked by how close the training effect should be"


def _answer(answer: Answer, asked: Exercise, system: UnitSystem) -> AnswerView:
    exercise = answer.exercise
    closeness = answer.closeness
    parts = (
        ("pattern", closeness.pattern),
        ("muscles", closeness.muscles),
        ("effort", closeness.effort),
        ("set-up", closeness.set_up),
    )
    return AnswerView(
        exercise_id=exercise.id,
        name=exercise.name,
        relation=_relation(exercise, asked),
        things=things_words(answer, system),
        dose=dose_words(answer.dose, exercise, answer.binding, system),
        chips=_chips(answer),
        total=f"{closeness.total:.0%}".rstrip("%"),
        parts=tuple(BarRow(label=label, share=share, value_text=f"{share:.0%}") for label, share in parts),
        reasons=answer.why,
        cues=exercise.cues,
        cautions=answer.cautions,
        picture=MOVE_PICTURES[exercise.main_pattern],
    )


def _relation(exercise: Exercise, asked: Exercise) -> str:
    if exercise.id == asked.id:
        return "the same movement"
    if exercise.side_share > asked.side_share and exercise.main_pattern is not asked.main_pattern:
        return "one side takes the load"
    pattern = "same pattern" if exercise.main_pattern is asked.main_pattern else "near pattern"
    if exercise.level != asked.level:
        return f"{pattern}, {'harder' if exercise.level > asked.level else 'easier'}"
    return pattern


def things_words(answer: Answer, system: UnitSystem) -> str:
    """What to take and where: “Water carrier with 10.5 L water · bench, 45 cm high”."""
    found = []
    load = answer.binding.load
    if load is not None:
        found.append(load_words(load, system))
    for held in answer.binding.fixtures:
        if held.thing_id:
            height = f", {format_length(held.height_cm, system)} high" if held.height_cm is not None else ""
            found.append(f"{held.name}{height}")
    return " · ".join(found) or "Your body alone"


def load_words(load: Rung, system: UnitSystem) -> str:
    """The load's parts with their fills, in the person's units."""
    words = []
    for part in load.recipe.parts:
        head = part.name if part.count == 1 else f"{part.count} × {part.name.lower()}"
        if part.material_id is not None:
            each = " each" if part.count > 1 else ""
            fill = f"{format_volume(part.fill_l, system)} {part.material_name.lower()}" if part.fill_l else "empty"
            head = f"{head} with {fill}{each}" if part.fill_l else f"{head}, {fill}"
        words.append(head)
    if load.recipe.packed:
        return f"{words[0]} packed with {', '.join(words[1:])}" if len(words) > 1 else f"{words[0]}, empty"
    return " and ".join(words)


def _chips(answer: Answer) -> tuple[tuple[str, Tone], ...]:
    found: list[tuple[str, Tone]] = []
    load = answer.binding.load
    pours = [part for part in load.recipe.parts if part.fill_l] if load is not None else []
    if pours:
        names = " and ".join(part.name.lower() for part in pours)
        found.append((f"fill {names}", Tone.PLAIN))
    elif load is not None:
        found.append(("no filling", Tone.GOOD))
    else:
        found.append(("nothing to set up", Tone.GOOD))
    if answer.binding.load_grade is Grade.POOR:
        found.append(("poor grip", Tone.FAIR))
    reserve = 10 - answer.dose.effort
    if answer.dose.reps is not None and reserve > 0:
        found.append((f"stop with {_reps(reserve)} left", Tone.PLAIN))
    if answer.exercise.outdoors_only:
        found.append(("outdoors", Tone.PLAIN))
    if answer.exercise.skip_when_wet:
        found.append(("skip when wet", Tone.FAIR))
    return tuple(found[:MOST_CHIPS])


def _reps(reserve: float) -> str:
    whole = f"{reserve:.0f}" if reserve == int(reserve) else f"{int(reserve)}–{int(reserve) + 1}"
    return f"{whole} rep" if whole == "1" else f"{whole} reps"
