"""How people, places, wishes, the saved week, settings and the log are written as JSON; see `core.store.codec`."""

from __future__ import annotations

from core.exercise.model import Demand, Pattern
from core.house.log import LoggedSession, LoggedSet, LoggedTest
from core.house.model import Capacity, Experience, Person, Place, QuietHours, Sex
from core.house.wishes import DayWish, Goals, Pin, PinnedDose, WeekWishes
from core.store.codec import AMOUNT, ID, MEASURED, NAME, SHARE
from core.store.encoding import DATE, FLAG, TIME, Codec, number, one_word, text, unfit, whole
from core.store.encoding_groups import many, maybe, pair_of, record, word_set
from core.store.json_text import from_text
from core.store.values import SavedBlock, SavedWeek, Settings, Theme, Units

NOTE = text(4000, lines=True)

CAPACITY = record(
    "capacity",
    Capacity,
    {"pattern": one_word(Pattern), "one_rep_kg": MEASURED, "exercise_id": ID, "told_by": text(200)},
)

PERSON: Codec[Person] = record(
    "person",
    Person,
    {
        "id": ID,
        "name": NAME,
        "body_mass_kg": AMOUNT,
        "height_cm": AMOUNT,
        "experience": one_word(Experience),
        "spares": word_set(Demand),
        "capacities": many(CAPACITY, 200),
        "birth_year": maybe(whole(0, 9999)),
        "sex": maybe(one_word(Sex)),
    },
    added={"birth_year": None, "sex": None},
)

QUIET = record("quiet_hours", QuietHours, {"start": TIME, "end": TIME})

PLACE: Codec[Place] = record(
    "place",
    Place,
    {
        "id": ID,
        "name": NAME,
        "ceiling_cm": maybe(AMOUNT),
        "floor_m2": AMOUNT,
        "walk_m": AMOUNT,
        "outdoors": FLAG,
        "neighbours": FLAG,
        "wet": FLAG,
        "quiet": maybe(QUIET),
    },
)

WEEKDAY = whole(0, 6)

PINNED_DOSE = record(
    "pinned_dose",
    PinnedDose,
    {
        "sets": whole(1, 60),
        "reps": maybe(pair_of(whole(1, 300), whole(1, 300))),
        "work_s": maybe(whole(1, 14_400)),
        "rest_s": maybe(pair_of(whole(0, 600), whole(0, 600))),
    },
)
WISHES: Codec[WeekWishes] = record(
    "wishes",
    WeekWishes,
    {
        "days": many(
            record(
                "day", DayWish, {"weekday": WEEKDAY, "minutes": AMOUNT, "place_id": maybe(ID), "start": maybe(TIME)}
            ),
            7,
        ),
        "goals": record(
            "goals",
            Goals,
            {"strength": SHARE, "run_walk": SHARE, "loaded_walk": SHARE, "mobility": SHARE},
        ),
        "bans": many(ID),
        "pins": many(
            record(
                "pin",
                Pin,
                {"weekday": WEEKDAY, "exercise_id": maybe(ID), "kind": maybe(ID), "dose": maybe(PINNED_DOSE)},
                {"dose": None},
            ),
            200,
        ),
    },
)

_PLAN_TEXT = text(4_000_000, shortest=2, lines=True)


def _read_plan(json_value: object, where: str) -> str:
    written = _PLAN_TEXT.read(json_value, where)
    if not isinstance(from_text(written, where), dict):
        raise unfit(written, "is not a plan", where)
    return written


SAVED_WEEK: Codec[SavedWeek] = record(
    "week",
    SavedWeek,
    {"starts": DATE, "version": whole(1, 10_000), "plan": Codec(str, _read_plan, _PLAN_TEXT.schema)},
)

SAVED_BLOCK: Codec[SavedBlock] = record(
    "block_of_weeks",
    SavedBlock,
    {"starts": DATE, "version": whole(1, 10_000), "plan": Codec(str, _read_plan, _PLAN_TEXT.schema)},
)

SETTINGS: Codec[Settings] = record(
    "settings",
    Settings,
    {
        "units": one_word(Units),
        "theme": one_word(Theme),
        "person_id": maybe(ID),
        "first_run_done": FLAG,
        "ready_on": maybe(DATE),
    },
)

EFFORT_FELT = maybe(number(0, 10))

SESSION: Codec[LoggedSession] = record(
    "session",
    LoggedSession,
    {
        "id": ID,
        "person_id": ID,
        "date": DATE,
        "minutes": number(0, 1440),
        "effort": EFFORT_FELT,
        "note": NOTE,
        "sets": many(
            record(
                "set",
                LoggedSet,
                {
                    "exercise_id": ID,
                    "reps": maybe(whole(0, 100_000)),
                    "time_s": maybe(AMOUNT),
                    "distance_m": maybe(AMOUNT),
                    "load_kg": AMOUNT,
                    "u95_kg": AMOUNT,
                    "effort": EFFORT_FELT,
                    "note": NOTE,
                },
            ),
            500,
        ),
    },
)

TEST: Codec[LoggedTest] = record(
    "test",
    LoggedTest,
    {
        "id": ID,
        "person_id": ID,
        "test_id": ID,
        "date": DATE,
        "result": number(-1e6, 1e6),
        "note": NOTE,
        "beside": many(pair_of(ID, number(-1e6, 1e6)), 50),
    },
    added={"beside": []},
)
