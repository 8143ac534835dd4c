"""What the swap screen shows of its answers, as ready words, shares and pictures."""

from __future__ import annotations

from dataclasses import dataclass

from core.effort.words import dose_words
from core.exercise.model import Exercise, Family
from core.fit.model import Held
from core.quantity.display import UnitSystem, format_length
from core.swap.model import Answer, Cause, Swap
from core.swap.reasons import HEIGHT_MATTERS
from core.things.affordance import Grade
from gui.desk.load_words import load_words
from gui.desk.names import DEMAND_NAMES, MOVE_PICTURES, USE_NAMES, USE_PICTURES
from gui.desk.wording import NO_BREAK, Wording, glued, nb
from gui.swap.closeness_words import closeness_lines, minutes, not_carried
from gui.theme import MovePicture, UsePicture
from gui.widgets import BarRow, Tone

MOST_CHIPS, MOST_BADGES = 4, 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Badge:
    """A use as a small picture, and its words."""

    picture: UsePicture
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerView:
    """One answer, ready to paint. `parts` are closeness bars, `meaning` what each of their numbers says here."""

    exercise_id: str
    name: str
    relation: str
    things: str
    dose: str
    set_up: str
    chips: tuple[tuple[str, Tone], ...]
    total: str
    parts: tuple[BarRow, ...]
    meaning: tuple[tuple[str, str], ...]
    reasons: tuple[str, ...]
    cues: tuple[str, ...]
    demands: tuple[str, ...]
    not_carried: tuple[str, ...]
    cautions: tuple[str, ...]
    picture: MovePicture
    badges: tuple[Badge, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One movement on the way up to the one asked for; `now` marks the one that can be done today."""

    name: str
    now: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class SwapView:
    """The head over the answers, the answers, the sentence on the asked load, and the way up where there is one.

    `itself` says why the movement asked for is no answer; empty where it is one.
    """

    asked: str
    picture: MovePicture
    heading: str
    itself: str
    answers: tuple[AnswerView, ...]
    note: str
    steps: tuple[Step, ...]
    fitting: int


def present(swap: Swap, cause: Cause, wording: Wording, most: int) -> SwapView:
    """The first `most` answers and what belongs above them."""
    shown = tuple(answer_view(answer, swap.asked, cause, wording) for answer in swap.answers[:most])
    itself = next((left.why for left in swap.left_out if left.exercise_id == swap.asked.id), "")
    return SwapView(
        asked=swap.asked.name,
        picture=MOVE_PICTURES[swap.asked.main_pattern],
        heading=_heading(len(shown), len(swap.answers), len(swap.left_out)),
        itself=wording.sentence(f"{swap.asked.name} itself is out: {itself}.") if itself else "",
        answers=shown,
        note=wording.sentence(swap.note),
        steps=tuple(Step(name=exercise.name, now=at == 0) for at, exercise in enumerate(swap.chain)),
        fitting=len(swap.answers),
    )


def _heading(shown: int, fitting: int, out: int) -> str:
    if not fitting:
        return f"Nothing here can stand in for it: all {out} that come near are left out, each with its reason"
    many = f"{shown} of {fitting} that fit" if fitting > shown else f"{fitting} that fit{'s' if fitting == 1 else ''}"
    left = f" · {out} left out below" if out else ""
    return f"{many} · the same movement first, then the closest{left}"


def answer_view(answer: Answer, asked: Exercise, cause: Cause, wording: Wording) -> AnswerView:
    """One answer in words."""
    exercise, close = answer.exercise, answer.closeness
    parts = (
        ("pattern", close.pattern),
        ("muscles", close.muscles),
        ("effort", close.effort),
        ("set-up", close.set_up),
    )
    return AnswerView(
        exercise_id=exercise.id,
        name=exercise.name,
        relation=_relation(answer, asked),
        things=things_words(answer, wording.system),
        dose=glued(dose_words(answer.dose, exercise, answer.binding, wording.system)),
        set_up=f"about {minutes(answer.binding.set_up_s)}" if answer.binding.set_up_s > 0 else "nothing to set up",
        chips=_chips(answer),
        total=f"{100 * close.total:.0f}",
        parts=tuple(BarRow(label=label, share=share, value_text=f"{100 * share:.0f}") for label, share in parts),
        meaning=closeness_lines(answer, asked, cause),
        reasons=wording.sentences(answer.why),
        cues=wording.sentences(exercise.cues),
        demands=tuple(DEMAND_NAMES[demand] for demand in DEMAND_NAMES if demand in exercise.demands),
        not_carried=not_carried(exercise, asked),
        cautions=wording.sentences(answer.cautions),
        picture=MOVE_PICTURES[exercise.main_pattern],
        badges=_badges(answer),
    )


def _relation(answer: Answer, asked: Exercise) -> str:
    exercise = answer.exercise
    if exercise.id == asked.id:
        return "the same movement, with what you have"
    if answer.closeness.ahead:
        return "the same movement with another thing"
    if exercise.side_share > asked.side_share and exercise.family not in {asked.family, Family.GAIT, Family.MOBILITY}:
        return "one side takes the load"
    pattern = "same pattern" if exercise.main_pattern is asked.main_pattern else "near pattern"
    if exercise.level != asked.level:
        return f"{pattern}, {'harder' if exercise.level > asked.level else 'easier'}"
    return pattern


def _badges(answer: Answer) -> tuple[Badge, ...]:
    binding = answer.binding
    uses = [binding.load.use] if binding.load is not None else []
    uses += [held.use for held in binding.fixtures]
    found = tuple(Badge(picture=USE_PICTURES[use], words=USE_NAMES[use]) for use in dict.fromkeys(uses))
    return found[:MOST_BADGES] or (Badge(picture=UsePicture.BODY, words="your body alone"),)


def things_words(answer: Answer, system: UnitSystem) -> str:
    """What to take and where: “Water carrier with 10.5 L water · bench, 45 cm high”."""
    binding = answer.binding
    found = [] if binding.load is None else [load_words(binding.load, system)]
    found += [f"{held.name}{_height(held, system)}" for held in binding.fixtures if held.thing_id]
    return " · ".join(found) or "Your body alone"


def _height(held: Held, system: UnitSystem) -> str:
    """Said only where one stands, sits, leans or hangs at that height."""
    if held.height_cm is None or held.use not in HEIGHT_MATTERS:
        return ""
    round_cm = f"{held.height_cm:.0f}{NO_BREAK}cm"
    return f", {round_cm if system is UnitSystem.METRIC else nb(format_length(held.height_cm, system))} high"


def _chips(answer: Answer) -> tuple[tuple[str, Tone], ...]:
    found: list[tuple[str, Tone]] = []
    load = answer.binding.load
    pours = [part for part in load.recipe.parts if part.fill_l] if load is not None else []
    if pours:
        found.append((f"fill it, {minutes(answer.binding.set_up_s)}", Tone.PLAIN))
    elif load is not None:
        found.append(("no filling", Tone.GOOD))
    elif not answer.binding.thing_ids:
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
