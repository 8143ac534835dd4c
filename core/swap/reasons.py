"""Why an answer was given, and how the load asked for compares with what this house reaches."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from core.effort.dose import Dose
from core.effort.load import effective_kg
from core.exercise.model import Exercise, Use
from core.exercise.strength import carries_over, is_strength
from core.fit.model import Binding
from core.house.model import Person
from core.swap.model import Answer, Cause, SwapRequest

HEIGHT_MATTERS = frozenset({Use.STEP, Use.SIT, Use.HANDS, Use.FEET, Use.ROW_EDGE, Use.HANG_BAR, Use.ANCHOR})
"""Where one stands, sits, leans or hangs the height is told; of a towel or a mat it would say nothing."""
ONE_SIDED = 0.75
NEAR_ENOUGH_LOAD = 0.95
"""A reached load within 5 % of the one asked for counts as a match."""


def reasons(
    exercise: Exercise,
    bound: Binding,
    dose: Dose,
    request: SwapRequest,
    *,
    kept_light: bool = False,
    same: bool = False,
) -> Iterator[str]:
    """One sentence each on kinship, load, fixtures and dose.

    `kept_light` where a first load stays below the effort, `same` where it is the same movement with another thing.
    """
    asked = request.asked
    if exercise.id == asked.id:
        yield "The same movement with what you have."
    elif same:
        yield "As good as the same movement, with another thing."
    elif exercise.main_pattern is asked.main_pattern:
        yield "Same pattern."
    else:
        yield "A neighbouring pattern."
    if bound.load is not None:
        kg = f"{bound.load.mass.value:.1f} kg"
        if kept_light:
            yield f"{kg} is where to begin: heavier only once you have logged a set."
        else:
            yield f"{kg} is the nearest load you can make to the effort asked for."
    for held in bound.fixtures:
        if held.thing_id:
            tells = held.height_cm is not None and held.use in HEIGHT_MATTERS
            height = f", {held.height_cm:.0f} cm high" if tells else ""
            yield f"{held.name}{height}: {held.reason}."
    if exercise.side_share >= ONE_SIDED > asked.side_share and carries_over(exercise):
        yield "One side takes the load, so less of it does as much."
    if request.cause is Cause.TOO_LOUD:
        yield "No impact." if exercise.impact == 0 else "No jumping: step softly."
    yield from dose.notes


def note_on(request: SwapRequest, person: Person, answers: Iterable[Answer]) -> str:
    """What was asked for as a load, and whether this house reaches it; or what else to say when something hurts."""
    found = tuple(answers)
    if not found:
        return "Nothing you own can stand in here; the left-out list says what each would need."
    if request.cause is Cause.HURTS and not (request.spare or person.spares):
        return "Say what to spare, and every movement that asks for it is left out. Sharp or new pain: stop, and ask."
    asked, written = request.asked, request.prescription
    if written is None or written.load_kg is None or not is_strength(asked):
        return ""
    aimed_kg = effective_kg(asked, written.load_kg, person.body_mass_kg)
    alike = [answer for answer in found if answer.exercise.main_pattern is asked.main_pattern]
    start = f"{written.load_kg:.0f} kg"
    if asked.body.share > 0:
        start = f"{start} plus the part of you that moves is {aimed_kg / asked.side_share:.0f} kg"
    enough = [answer for answer in alike if _moved_kg(answer, person.body_mass_kg) >= NEAR_ENOUGH_LOAD * aimed_kg]
    if any(answer.exercise.side_share <= asked.side_share for answer in enough):
        return f"{start}. You can match that here."
    if enough:
        return f"{start}. Here each side can match its half, working one side at a time."
    return f"{start}. Nothing you own reaches that, so the best answers ask more of each side or more reps."


def _moved_kg(answer: Answer, body_mass_kg: float) -> float:
    height_cm = answer.binding.height_cm
    return effective_kg(answer.exercise, answer.binding.load_kg, body_mass_kg, height_cm=height_cm)
