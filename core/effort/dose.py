"""Equivalent dose: the sets and repetitions (or seconds, or metres) that make a movement worth the one asked for.

Effort (repetitions in reserve) and the number of hard sets are held. Repetitions follow from the new share of the
person's maximum; the range is the middle half of what the doubt of carrying over allows, so the true figure is as
likely inside it as outside, and the effort decides when to stop. Without any measured strength the range is a target
round a starting guess, and says so. Outside a sensible range nothing is pretended: the answer changes tempo, pause,
range or side, or says that it does not carry over.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from core.effort.capacity import DEFAULT_EFFORT, EXPERIENCE_PLACE, Ceiling, Prescription
from core.effort.load import SHARE_U, effective_kg, external_for_effective_kg
from core.effort.relation import LONGEST_REPS, reps_at_share, reps_in_reserve, share_of_max
from core.exercise.model import DoseKind, Exercise, Option, Use
from core.exercise.strength import is_strength
from core.fit.model import Binding
from core.house.model import Person

MIDDLE_HALF = 0.674
"""Half of a normal distribution lies within ± 0.674 standard deviations."""
FEWEST_REPS = 3.0
HEAVY_SHARE = 0.8
LIGHT_SHARE = 0.5
"""Maximal strength asks for loads near 80 % and up (ACSM 2026 summary); size also grows with light loads."""
GUESS_RANGE_U = 0.10
"""Half-spread of the share of the maximum that a target round a starting guess is given (assumed)."""
CURVE_U = 0.15
"""Doubt of the relation per natural log unit between asked and new share: it cancels when the shares are equal."""
ANOTHER_KIND = 0.45
BY_FEEL, AGAINST_ONESELF, LEVERS = 0.6, 0.15, 0.4
LONG_S = 180
ALIKE = 0.97
"""How far the effort of a set against a load is reached by a hold or a walk, by a band whose pull nobody knows, by
pulling against oneself, and by a far too light load moved slowly."""
OPTION_WORDS: dict[Option, str] = {
    Option.SLOW_LOWERING: "lower over four seconds",
    Option.PAUSE: "pause two seconds at the hardest point",
    Option.LONGER_RANGE: "use a longer range",
    Option.ONE_SIDE: "work one side at a time",
    Option.SHORTER_RANGE: "use a shorter range",
}
HARDER_OPTIONS = (Option.ONE_SIDE, Option.LONGER_RANGE, Option.SLOW_LOWERING, Option.PAUSE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Dose:
    """What to do: `sets` of `reps` (low, high), or `seconds`, or `distance_m`, at `effort` of 10.

    `share` is the share of the person's maximum (None where repetitions don't follow a load), `reachable` from 0 to 1
    how near the asked effort can be had within a sensible range, `notes` the sentences that go with it.
    """

    sets: int
    reps: tuple[int, int] | None = None
    seconds: tuple[int, int] | None = None
    distance_m: tuple[int, int] | None = None
    effort: float = 8.0
    share: float | None = None
    reachable: float = 1.0
    options: tuple[Option, ...] = ()
    notes: tuple[str, ...] = ()


def default_prescription(exercise: Exercise, person: Person) -> Prescription:
    """A usual dose when none is asked for: three sets in the middle of the exercise's own range."""
    place = EXPERIENCE_PLACE[person.experience]
    low, high = exercise.typical
    middle = low + (0.35 + 0.15 * place) * (high - low)
    effort = DEFAULT_EFFORT[place]
    if exercise.dose is DoseKind.REPS:
        return Prescription(sets=3, reps=round(middle), effort=effort)
    if exercise.dose is DoseKind.TIME:
        return Prescription(sets=3 if high <= 120 else 1, seconds=middle, effort=effort)
    return Prescription(sets=3, distance_m=middle, effort=effort)


def target_share(prescription: Prescription, exercise: Exercise) -> float:
    """Share of the maximum a prescription of repetitions stands for."""
    low, high = exercise.typical
    reps = prescription.reps if prescription.reps is not None else min(max((low + high) / 2, 5.0), 15.0)
    return share_of_max(max(1.0, reps + reps_in_reserve(prescription.effort)))


def wanted_load_kg(
    exercise: Exercise, ceiling: Ceiling, person: Person, share: float, *, height_cm: float | None = None
) -> float:
    """External mass that would put the exercise at `share` of the person's maximum (below 0: the body is enough)."""
    return external_for_effective_kg(exercise, share * ceiling.one_rep.value, person.body_mass_kg, height_cm=height_cm)


def equivalent_dose(
    exercise: Exercise, binding: Binding, person: Person, ceiling: Ceiling, wanted: Prescription, share: float | None
) -> Dose:
    """The dose of `exercise` with this binding that holds the effort of `wanted`; `share` is the asked one, if any."""
    if not is_strength(exercise):
        return _not_against_a_load(exercise, person, wanted, share)
    moved_kg = effective_kg(exercise, binding.load_kg, person.body_mass_kg, height_cm=binding.height_cm)
    if moved_kg <= 0:
        return _by_feel(exercise, person, wanted)
    return _strength(exercise, binding, person, ceiling, wanted, moved_kg, share)


def _not_against_a_load(exercise: Exercise, person: Person, wanted: Prescription, share: float | None) -> Dose:
    """Holds, distances, plain repetitions. For a set against a load they reach its effort only in part."""
    if exercise.dose is DoseKind.REPS:
        dose = _by_feel(exercise, person, wanted)
    else:
        timed = exercise.dose is DoseKind.TIME
        dose = _timed(exercise, person, wanted) if timed else _by_distance(exercise, person, wanted)
    if share is None:
        return dose
    note = "Effort by feel: repetitions against a load and this can't be counted against each other."
    held = exercise.body.share > 0 or exercise.load_need is not None
    return replace(dose, reachable=ANOTHER_KIND if held else AGAINST_ONESELF, notes=(*dose.notes, note))


def _strength(
    exercise: Exercise,
    binding: Binding,
    person: Person,
    ceiling: Ceiling,
    wanted: Prescription,
    moved_kg: float,
    asked_share: float | None,
) -> Dose:
    share = moved_kg / ceiling.one_rep.value
    reserve = reps_in_reserve(wanted.effort)
    to_failure = reps_at_share(share)
    relative_u = _relative_u(exercise, binding, person, ceiling, moved_kg, asked_share)
    low = reps_at_share(share * (1 + MIDDLE_HALF * relative_u)) - reserve
    high = reps_at_share(max(share * (1 - MIDDLE_HALF * relative_u), 0.05)) - reserve
    middle = to_failure - reserve
    notes: list[str] = []
    options: tuple[Option, ...] = ()
    most = _most_reps(exercise, ceiling, wanted)
    if middle > most:
        options = tuple(option for option in HARDER_OPTIONS if option in exercise.options)[:2]
        low, high = most * 0.7, most
        notes.append(_too_light(options, wanted))
    elif asked_share is not None and asked_share >= HEAVY_SHARE and share < LIGHT_SHARE + 0.15:
        notes.append("Lighter than asked for: it builds muscle alike, heavy strength carries over only in part.")
    if middle < FEWEST_REPS:
        notes.append("Heavy for you: take an easier version or a lighter load if you can't reach the reps.")
    if not ceiling.measured:
        notes.append(f"Reps come from {ceiling.told_by}. One logged set makes them yours.")
    lowest = max(1, math.floor(min(low, most) + 0.5))
    return Dose(
        sets=wanted.sets,
        reps=(lowest, max(lowest, math.floor(min(high, most) + 0.5))),
        effort=wanted.effort,
        share=share,
        reachable=max(_reachable(share, asked_share, middle, most, wanted), _by_levers(share, asked_share, options)),
        options=options,
        notes=tuple(notes),
    )


def _most_reps(exercise: Exercise, ceiling: Ceiling, wanted: Prescription) -> float:
    """The upper end of the exercise's own range; of the very movement that was written, what was written for it."""
    most = exercise.typical[1]
    if ceiling.measured and ceiling.transfer_u == 0 and wanted.reps is not None:
        most = max(most, wanted.reps)
    return min(LONGEST_REPS, most)


def _too_light(options: tuple[Option, ...], wanted: Prescription) -> str:
    how = " and ".join(OPTION_WORDS[option] for option in options)
    lever = f"Light for you: {how}, and stop when about {10 - wanted.effort:.0f} reps are left." if how else ""
    rest = "Heavy strength does not carry over from loads this light."
    return f"{lever} {rest}".strip()


def _relative_u(
    exercise: Exercise,
    binding: Binding,
    person: Person,
    ceiling: Ceiling,
    moved_kg: float,
    asked_share: float | None,
) -> float:
    """Relative standard uncertainty of the share of the maximum, as far as it does not cancel against the asked set.

    The relation's own error and a body share common to both movements cancel where shares and movements are alike; what
    is left grows with the distance moved (`transfer_u`), the step in share (`CURVE_U`), the body share and the load.
    """
    if not ceiling.measured:
        return GUESS_RANGE_U
    share = moved_kg / ceiling.one_rep.value
    step = abs(math.log(share / asked_share)) if asked_share else 1.0
    load_u = binding.load.mass.u if binding.load is not None else 0.0
    body_kg = exercise.side_share * exercise.body.share * person.body_mass_kg
    body_u = 0.0 if ceiling.transfer_u == 0 else body_kg * SHARE_U[exercise.body.basis] / moved_kg / 2
    load_part = exercise.side_share * exercise.load_share * load_u / moved_kg
    return math.hypot(ceiling.transfer_u, CURVE_U * step, body_u, load_part, 0.01)


def _reachable(share: float, asked: float | None, middle: float, most: float, wanted: Prescription) -> float:
    """1 at the asked share, 0 at half or double it, less where the effort asks for more repetitions than are usual.

    And less where it leaves too few to train with. At the asked share the written repetitions count, not those that
    would bring anyone to the effort.
    """
    if asked is None:
        return max(0.2, min(1.0, most / middle)) if middle >= FEWEST_REPS else max(0.0, middle / FEWEST_REPS)
    needed = middle
    if wanted.reps is not None and share >= ALIKE * asked:
        needed = min(middle, wanted.reps)
    fewest = min(FEWEST_REPS, wanted.reps or FEWEST_REPS)
    enough = min(1.0, most / max(needed, 1.0), max(middle, 0.0) / fewest)
    return min(enough, max(0.0, 1 - abs(math.log(share / asked)) / math.log(2)))


def _by_levers(share: float, asked: float | None, options: tuple[Option, ...]) -> float:
    """What moving slowly, or one side alone, makes of a load that is too light: little, and less the lighter it is."""
    return LEVERS * min(1.0, share / asked) if options and asked else 0.0


def _by_feel(exercise: Exercise, person: Person, wanted: Prescription) -> Dose:
    """Repetitions that no known load stands behind: those asked for as far as they are usual here."""
    low, high = _usual(exercise, person) if wanted.reps is None else (wanted.reps - 1, wanted.reps + 3)
    note = f"Stop when about {10 - wanted.effort:.0f} reps are left." if is_strength(exercise) else ""
    return Dose(
        sets=wanted.sets,
        reps=(round(_within(low, exercise)), round(_within(high, exercise))),
        effort=wanted.effort,
        reachable=_felt(exercise) if is_strength(exercise) else 1.0,
        notes=(note,) if note else (),
    )


def _felt(exercise: Exercise) -> float:
    return BY_FEEL if any(Use.BAND in need.uses for need in exercise.needs) else AGAINST_ONESELF


def _timed(exercise: Exercise, person: Person, wanted: Prescription) -> Dose:
    low, high = _usual(exercise, person)
    if wanted.seconds is not None:
        low, high = _within(0.9 * wanted.seconds, exercise), _within(1.1 * wanted.seconds, exercise)
    return Dose(
        sets=wanted.sets if high <= LONG_S else 1,
        seconds=(_tidy_s(low, exercise), _tidy_s(high, exercise)),
        effort=wanted.effort,
    )


def _by_distance(exercise: Exercise, person: Person, wanted: Prescription) -> Dose:
    low, high = _usual(exercise, person)
    if wanted.distance_m is not None:
        low, high = _within(0.9 * wanted.distance_m, exercise), _within(1.1 * wanted.distance_m, exercise)
    return Dose(sets=wanted.sets, distance_m=(_tidy_m(low, exercise), _tidy_m(high, exercise)), effort=wanted.effort)


def _within(amount: float, exercise: Exercise) -> float:
    """The amount inside the exercise's own range."""
    low, high = exercise.typical
    return min(max(amount, low), high)


def _usual(exercise: Exercise, person: Person) -> tuple[float, float]:
    """The part of the exercise's own range that suits the person's experience."""
    low, high = exercise.typical
    place = EXPERIENCE_PLACE[person.experience]
    span = high - low
    return low + 0.25 * place * span, low + (0.5 + 0.25 * place) * span


def _tidy_s(seconds: float, exercise: Exercise) -> int:
    step = 5 if seconds <= 120 else 60
    return round(_within(round(seconds / step) * step, exercise))


def _tidy_m(metres: float, exercise: Exercise) -> int:
    step = 5 if metres <= 200 else 100
    return round(_within(round(metres / step) * step, exercise))
