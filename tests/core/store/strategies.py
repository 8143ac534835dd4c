"""Hypothesis strategies for every value the record keeps, within the limits its codecs set."""

from __future__ import annotations

import datetime

from hypothesis import strategies as st

from core.exercise.model import Demand, Pattern
from core.house.log import LoggedSession, LoggedSet, LoggedTest
from core.house.model import Capacity, Experience, Person, Place, QuietHours, Sex
from core.house.own import OwnEntry, OwnKind
from core.house.wishes import DayWish, Goals, Pin, PinnedDose, WeekWishes
from core.mass.model import (
    BrimLevel,
    Container,
    CupsLevel,
    FullLevel,
    HeightLevel,
    LearnedDensity,
    Packing,
    ScaleKind,
    ScaleReading,
    ShareLevel,
    VolumeLevel,
)
from core.quantity.measured import Measured, Origin
from core.store.changes import HouseFacts
from core.store.json_text import to_text
from core.store.values import SavedBlock, SavedWeek, Settings, Theme, Units
from core.things.model import (
    Closure,
    Facts,
    Fill,
    Flight,
    Form,
    Handle,
    Hazard,
    Hold,
    OwnCheck,
    RatingOrigin,
    Rigidity,
    Thing,
)
from tests.core.mass.examples import SHAPES

_shown = st.characters(
    exclude_categories=("Cc", "Cs", "Zl", "Zp"),
    exclude_characters="\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069",
)
names = st.text(_shown, min_size=1, max_size=120)
ids = st.text("abcdefghijklmnopqrstuvwxyz0123456789_", min_size=1, max_size=12)
notes = st.text(st.one_of(_shown, st.just("\n")), max_size=60)
amounts = st.floats(0, 1e6)
shares = st.floats(0, 1)
dates = st.dates()
times = st.builds(datetime.time, st.integers(0, 23), st.integers(0, 59))
measured = st.builds(Measured, st.floats(-1e6, 1e6), amounts, st.sampled_from(Origin))
learned = st.builds(LearnedDensity, material_id=ids, packing=st.sampled_from(Packing), kg_l=measured)


@st.composite
def _containers(draw: st.DrawFn) -> Container:
    nominal_l = draw(st.floats(0.01, 5000))
    brimful_l = draw(st.floats(nominal_l, 10_000))
    return Container(
        shape=draw(SHAPES),
        nominal_l=Measured(nominal_l, draw(amounts)),
        brimful_l=Measured(brimful_l, draw(amounts)),
        tare_kg=Measured(draw(st.floats(0, 1000)), draw(amounts)),
        shape_doubt=draw(shares),
        learned=tuple(draw(st.lists(learned, max_size=2))),
    )


containers = _containers()
levels = st.one_of(
    st.builds(FullLevel, half_width_share=shares),
    st.builds(BrimLevel, half_width_share=shares),
    st.builds(ShareLevel, share=shares, half_width_share=shares),
    st.builds(VolumeLevel, volume_l=amounts, half_width_share=shares),
    st.builds(CupsLevel, count=amounts, cup_l=amounts, cup_share=shares, pour_share=shares),
    st.builds(HeightLevel, height_cm=amounts, half_width_cm=amounts),
)
readings = st.builds(
    ScaleReading,
    kind=st.sampled_from(ScaleKind),
    reading_kg=amounts,
    without_kg=st.none() | amounts,
    resolution_kg=amounts,
    repeatability_kg=amounts,
    offset_doubt_kg=amounts,
    at_level=st.none() | levels,
    date=st.none() | dates,
    material_id=st.none() | ids,
    packing=st.sampled_from(Packing),
)
facts = st.builds(
    Facts,
    form=st.sampled_from(Form),
    mass=st.none() | measured,
    label_kg=st.none() | amounts,
    container=st.none() | containers,
    hold=st.none() | st.builds(Hold, volume_l=amounts, limit_kg=amounts),
    length_cm=amounts,
    width_cm=amounts,
    height_cm=amounts,
    surface_cm=st.none() | amounts,
    handle=st.sampled_from(Handle),
    grip_cm=amounts,
    grip_length_cm=amounts,
    grip_room_cm=amounts,
    closure=st.sampled_from(Closure),
    rigidity=st.sampled_from(Rigidity),
    rating_kg=st.none() | amounts,
    rating_origin=st.sampled_from(RatingOrigin),
    flight=st.none() | st.builds(Flight, count=st.integers(1, 1000), rise_cm=amounts),
    hazards=st.frozensets(st.sampled_from(Hazard)),
    fixed=st.booleans(),
    outdoors=st.booleans(),
    pack_l=st.none() | amounts,
    route_m=amounts,
    area_m2=amounts,
)
fills = st.builds(Fill, material_id=ids, volume_l=amounts, packing=st.sampled_from(Packing))
own_checks = st.builds(OwnCheck, date=dates, took_kg=amounts)


def things(
    thing_ids: st.SearchStrategy[str] = ids, place_ids: st.SearchStrategy[str] = ids
) -> st.SearchStrategy[Thing]:
    """Things with ids and places from these."""
    return st.builds(
        Thing,
        id=thing_ids,
        kind_id=ids,
        name=names,
        count=st.integers(1, 999),
        facts=facts,
        icon=ids,
        place_ids=st.lists(place_ids, unique=True, max_size=3).map(tuple),
        fills=st.lists(ids, max_size=3).map(tuple),
        fill=st.none() | fills,
        readings=st.lists(readings, max_size=2).map(tuple),
        own_check=st.none() | own_checks,
        cautions=st.lists(notes.map(lambda note: note.replace("\n", " ")), max_size=2).map(tuple),
    )


capacities = st.builds(
    Capacity,
    pattern=st.sampled_from(Pattern),
    one_rep_kg=measured,
    exercise_id=ids,
    told_by=st.text(_shown, max_size=50),
)


def people(person_ids: st.SearchStrategy[str] = ids) -> st.SearchStrategy[Person]:
    """People with ids from these."""
    return st.builds(
        Person,
        id=person_ids,
        name=names,
        body_mass_kg=st.floats(30, 250),
        height_cm=st.floats(120, 230),
        experience=st.sampled_from(Experience),
        birth_year=st.none() | st.integers(1900, 2100),
        sex=st.none() | st.sampled_from(Sex),
        spares=st.frozensets(st.sampled_from(Demand)),
        capacities=st.lists(capacities, max_size=3).map(tuple),
    )


def places(place_ids: st.SearchStrategy[str] = ids) -> st.SearchStrategy[Place]:
    """Places with ids from these."""
    return st.builds(
        Place,
        id=place_ids,
        name=names,
        ceiling_cm=st.none() | amounts,
        floor_m2=amounts,
        walk_m=amounts,
        outdoors=st.booleans(),
        neighbours=st.booleans(),
        wet=st.booleans(),
        quiet=st.none() | st.builds(QuietHours, start=times, end=times),
    )


weekdays = st.integers(0, 6)
_spans = st.tuples(st.integers(1, 40), st.integers(40, 300))
_doses = st.one_of(
    st.builds(PinnedDose, sets=st.integers(1, 60), reps=_spans, rest_s=st.none() | _spans),
    st.builds(PinnedDose, sets=st.integers(1, 60), work_s=st.integers(5, 14_400), rest_s=st.none() | _spans),
)
pins = st.builds(Pin, weekday=weekdays, exercise_id=st.none() | ids, kind=ids, dose=st.none() | _doses)


def wishes(place_ids: st.SearchStrategy[str] = ids) -> st.SearchStrategy[WeekWishes]:
    """Wishes for days at these places."""
    day = st.builds(
        DayWish,
        weekday=weekdays,
        minutes=st.floats(5, 300),
        place_id=st.none() | place_ids,
        start=st.none() | times,
    )
    return st.builds(
        WeekWishes,
        days=st.lists(day, unique_by=lambda wish: wish.weekday, max_size=7).map(tuple),
        goals=st.builds(Goals, strength=st.floats(0.01, 1), run_walk=shares, loaded_walk=shares, mobility=shares),
        bans=st.lists(ids, max_size=3).map(tuple),
        pins=st.lists(pins, max_size=3).map(tuple),
    )


mondays = st.integers(0, 4000).map(lambda weeks: datetime.date(2000, 1, 3) + datetime.timedelta(weeks=weeks))
weeks = st.builds(
    SavedWeek,
    starts=mondays,
    version=st.integers(1, 10_000),
    plan=st.sampled_from(['{"days":[]}', '{"name":"Fährte"}', "{}"]),
)

blocks = st.builds(
    SavedBlock,
    starts=mondays,
    version=st.integers(1, 10_000),
    plan=st.sampled_from(['{"weeks":[]}', '{"name":"Fährte"}', "{}"]),
)


def settings(person_ids: st.SearchStrategy[str] = ids) -> st.SearchStrategy[Settings]:
    """Settings with one of these people chosen, or nobody."""
    return st.builds(
        Settings,
        units=st.sampled_from(Units),
        theme=st.sampled_from(Theme),
        person_id=st.none() | person_ids,
        first_run_done=st.booleans(),
        ready_on=st.none() | dates,
    )


_JSON = st.recursive(
    st.none() | st.booleans() | st.integers(0, 99) | st.floats(-1e6, 1e6) | st.text(_shown, max_size=9),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(_shown, max_size=5), inner, max_size=3),
    max_leaves=6,
)
own_tables = st.dictionaries(st.sampled_from(["level", "body", "needs", "kg"]), _JSON, max_size=4).map(to_text)


def own_entries(
    own_ids: st.SearchStrategy[str] = ids, kinds: st.SearchStrategy[OwnKind] | None = None
) -> st.SearchStrategy[OwnEntry]:
    """Own entries with ids from these; what stands in their tables is the catalog's business."""
    return st.builds(
        OwnEntry,
        kind=st.sampled_from(OwnKind) if kinds is None else kinds,
        id=own_ids.map(lambda plain: f"own_{plain.strip('_') or 'x'}"),
        name=st.text(_shown, min_size=1, max_size=60),
        table=own_tables,
    )


house_facts = st.builds(HouseFacts, name=names, fills=st.lists(ids, max_size=4).map(tuple), cup_l=st.floats(0.001, 20))
_efforts = st.none() | st.floats(0, 10)
logged_sets = st.builds(
    LoggedSet,
    exercise_id=ids,
    reps=st.integers(0, 100_000),
    time_s=st.none() | amounts,
    distance_m=st.none() | amounts,
    load_kg=amounts,
    u95_kg=amounts,
    effort=_efforts,
    note=notes,
)


def sessions(person_ids: st.SearchStrategy[str] = ids) -> st.SearchStrategy[LoggedSession]:
    """Sessions of these people."""
    return st.builds(
        LoggedSession,
        id=ids,
        person_id=person_ids,
        date=dates,
        minutes=st.floats(0, 1440),
        effort=_efforts,
        note=notes,
        sets=st.lists(logged_sets, max_size=3).map(tuple),
    )


def results_of(person_ids: st.SearchStrategy[str] = ids) -> st.SearchStrategy[LoggedTest]:
    """Test results of these people."""
    return st.builds(
        LoggedTest,
        id=ids,
        person_id=person_ids,
        test_id=ids,
        date=dates,
        result=st.floats(-1e6, 1e6),
        note=notes,
        beside=st.dictionaries(ids, st.floats(-1e6, 1e6), max_size=3).map(lambda found: tuple(found.items())),
    )
