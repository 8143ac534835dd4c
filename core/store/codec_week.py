"""How a planned week is written as JSON: movements by id, everything decided about them in full.

A saved week can be shown without planning again. Its movements are looked up in the catalog when it is read; one that
the catalog no longer has is an error that names it, and the week is then simply planned anew.
"""

from __future__ import annotations

from core.effort.dose import Dose
from core.errors import InputError
from core.exercise.model import Exercise, Option, Use
from core.fit.model import Binding, Held
from core.knowledge import Catalog
from core.loads.model import Part, Recipe, Rung
from core.plan.model import Block, Check, Clash, DayKind, DayPlan, FillState, FillStep, Status, Week
from core.store.codec import AMOUNT, ID, MEASURED, NAME
from core.store.encoding import FLAG, Codec, number, one_word, text, whole
from core.store.encoding_groups import many, maybe, pair_of, record
from core.store.json_text import from_text, to_text
from core.things.affordance import Grade

WEEK_VERSION = 1
SENTENCE = text(1000)
SECONDS = whole(0, 100_000)
WEEKDAY = whole(0, 6)

PART = record(
    "part",
    Part,
    {
        "thing_id": ID,
        "name": NAME,
        "count": whole(1, 1000),
        "each": MEASURED,
        "material_id": maybe(ID),
        "material_name": text(200),
        "fill_l": AMOUNT,
        "cups": AMOUNT,
    },
)
RUNG = record(
    "rung",
    Rung,
    {
        "use": one_word(Use),
        "mass": MEASURED,
        "recipe": record("recipe", Recipe, {"parts": many(PART, 100), "packed": FLAG}),
        "set_up_s": AMOUNT,
    },
)
HELD = record(
    "held",
    Held,
    {
        "use": one_word(Use),
        "thing_id": text(200),
        "name": NAME,
        "grade": one_word(Grade),
        "reason": SENTENCE,
        "height_cm": maybe(AMOUNT),
    },
)
BINDING = record(
    "binding",
    Binding,
    {
        "exercise_id": ID,
        "fixtures": many(HELD, 20),
        "load": maybe(RUNG),
        "load_grade": maybe(one_word(Grade)),
        "cautions": many(SENTENCE, 100),
        "set_up_s": AMOUNT,
    },
)


def _whole_pair(value: tuple[float, float]) -> tuple[int, int]:
    return round(value[0]), round(value[1])


def _pair() -> Codec[tuple[int, int]]:
    inner = pair_of(SECONDS, SECONDS)
    return Codec(inner.write, lambda value, where: _whole_pair(inner.read(value, where)), inner.schema)


DOSE = record(
    "dose",
    Dose,
    {
        "sets": whole(1, 100),
        "reps": maybe(_pair()),
        "seconds": maybe(_pair()),
        "distance_m": maybe(_pair()),
        "effort": number(0, 10),
        "share": maybe(number(0, 100)),
        "reachable": number(0, 1),
        "options": many(one_word(Option), 20),
        "notes": many(SENTENCE, 50),
    },
)
STATE = record("state", FillState, {"thing_id": ID, "material_id": ID, "volume_l": AMOUNT})
FILL = record(
    "pour",
    FillStep,
    {
        "weekday": WEEKDAY,
        "thing_id": ID,
        "name": NAME,
        "material_id": ID,
        "volume_l": AMOUNT,
        "mass": MEASURED,
        "during": FLAG,
        "for_exercise": text(200),
    },
)
CHECK = record("check", Check, {"rule": SENTENCE, "met": FLAG, "note": SENTENCE, "hard": FLAG})
CLASH = record("clash", Clash, {"wishes": many(SENTENCE, 100), "ways_out": many(SENTENCE, 100)})


def exercise_codec(catalog: Catalog) -> Codec[Exercise]:
    """A movement as its id; reading one that the catalog does not have is an `InputError`."""
    by_id = catalog.exercise_by_id

    def read(json_value: object, where: str) -> Exercise:
        exercise = by_id.get(ID.read(json_value, where))
        if exercise is None:
            rule = "is no movement of this catalog any more"
            raise InputError(json_value, rule, "plan the week again", where=where)
        return exercise

    return Codec(lambda exercise: exercise.id, read, ID.schema)


def planned_codec(catalog: Catalog) -> Codec[Block]:
    """The codec of one movement in a session."""
    return record(
        "block",
        Block,
        {
            "exercise": exercise_codec(catalog),
            "binding": BINDING,
            "dose": DOSE,
            "rest_s": SECONDS,
            "seconds": SECONDS,
            "hard": FLAG,
            "states": many(STATE, 50),
            "why": many(SENTENCE, 50),
        },
    )


def week_codec(catalog: Catalog) -> Codec[Week]:
    """The codec of a week whose movements come from `catalog`."""
    return week_of(planned_codec(catalog))


def week_of(block: Codec[Block]) -> Codec[Week]:
    """The codec of a week whose movements are written with `block`."""
    day = record(
        "day",
        DayPlan,
        {
            "weekday": WEEKDAY,
            "kind": one_word(DayKind),
            "place_id": maybe(ID),
            "limit_s": SECONDS,
            "seconds": SECONDS,
            "warm_up": many(block, 50),
            "blocks": many(block, 50),
            "cool_down": many(block, 50),
            "pour_s": SECONDS,
        },
    )
    return record(
        "week",
        Week,
        {
            "status": one_word(Status),
            "days": many(day, 7),
            "fills": many(FILL, 200),
            "checks": many(CHECK, 100),
            "clash": maybe(CLASH),
            "objective": whole(-(10**9), 10**9),
        },
    )


def week_text(week: Week, catalog: Catalog) -> str:
    """The week as JSON text; equal weeks give equal text."""
    return to_text(week_codec(catalog).write(week))


def week_from_text(written: str, catalog: Catalog) -> Week:
    """The week from its JSON text; `InputError` names what does not fit."""
    return week_codec(catalog).read(from_text(written, "week"), "week")
