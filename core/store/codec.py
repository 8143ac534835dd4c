"""How things are written as JSON: measured values, shapes, containers, levels, readings and facts.

Each type has a tag and lists its fields one by one, so the form on disk changes only when someone changes it here.
Reading is strict (see `core.store.encoding`) and raises `InputError`; what reads back is equal to what was written.
"""

from __future__ import annotations

from core.mass.model import (
    Bag,
    BoxBase,
    BrimLevel,
    Container,
    CupsLevel,
    FullLevel,
    HeightLevel,
    LearnedDensity,
    LyingCylinder,
    Packing,
    PourTable,
    RoundBase,
    ScaleKind,
    ScaleReading,
    ShareLevel,
    Shouldered,
    StraightBox,
    StraightRound,
    Tapered,
    VolumeLevel,
)
from core.quantity.measured import Measured, Origin
from core.store.encoding import DATE, FLAG, Codec, number, one_word, text, whole
from core.store.encoding_groups import either, many, maybe, pair_of, record, word_set
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

ID = text(120, shortest=1)
NAME = text(120, shortest=1)
SENTENCE = text(1000)
AMOUNT = number(0, 1e6)
"""Any mass, length, area or volume: zero up, and far above what a household has."""
SHARE = number(0, 1)

MEASURED = record(
    "measured",
    Measured,
    {"value": number(-1e6, 1e6), "u": AMOUNT, "origin": one_word(Origin)},
)

_ROUND_BASE = record("round_base", RoundBase, {"diameter_cm": AMOUNT})
_BOX_BASE = record("box_base", BoxBase, {"length_cm": AMOUNT, "width_cm": AMOUNT, "corner_radius_cm": AMOUNT})

SHAPE = either(
    record("straight_round", StraightRound, {"diameter_cm": AMOUNT, "full_height_cm": AMOUNT}),
    record(
        "straight_box",
        StraightBox,
        {"length_cm": AMOUNT, "width_cm": AMOUNT, "corner_radius_cm": AMOUNT, "full_height_cm": AMOUNT},
    ),
    record("tapered", Tapered, {"bottom_cm": AMOUNT, "top_cm": AMOUNT, "full_height_cm": AMOUNT}),
    record("lying_cylinder", LyingCylinder, {"diameter_cm": AMOUNT, "length_cm": AMOUNT}),
    record(
        "shouldered",
        Shouldered,
        {
            "base": either(_ROUND_BASE, _BOX_BASE),
            "straight_to_cm": AMOUNT,
            "neck_diameter_cm": AMOUNT,
            "neck_height_cm": AMOUNT,
            "full_height_cm": AMOUNT,
        },
    ),
    record("bag", Bag, {"full_volume_l": AMOUNT, "full_height_cm": AMOUNT}),
    record("pour_table", PourTable, {"points": many(pair_of(AMOUNT, AMOUNT))}),
)

_LEARNED = record(
    "learned_density",
    LearnedDensity,
    {"material_id": ID, "packing": one_word(Packing), "kg_l": MEASURED},
)

CONTAINER = record(
    "container",
    Container,
    {
        "shape": SHAPE,
        "nominal_l": MEASURED,
        "brimful_l": MEASURED,
        "tare_kg": MEASURED,
        "shape_doubt": SHARE,
        "learned": many(_LEARNED, 200),
    },
)

LEVEL = either(
    record("full", FullLevel, {"half_width_share": SHARE}),
    record("brim", BrimLevel, {"half_width_share": SHARE}),
    record("share", ShareLevel, {"share": number(0, 2), "half_width_share": SHARE}),
    record("volume", VolumeLevel, {"volume_l": AMOUNT, "half_width_share": SHARE}),
    record("cups", CupsLevel, {"count": AMOUNT, "cup_l": AMOUNT, "cup_share": SHARE, "pour_share": SHARE}),
    record("height", HeightLevel, {"height_cm": AMOUNT, "half_width_cm": AMOUNT}),
)

READING = record(
    "reading",
    ScaleReading,
    {
        "kind": one_word(ScaleKind),
        "reading_kg": AMOUNT,
        "without_kg": maybe(AMOUNT),
        "resolution_kg": AMOUNT,
        "repeatability_kg": AMOUNT,
        "offset_doubt_kg": AMOUNT,
        "at_level": maybe(LEVEL),
        "date": maybe(DATE),
        "material_id": maybe(ID),
        "packing": one_word(Packing),
    },
)

FACTS = record(
    "facts",
    Facts,
    {
        "form": one_word(Form),
        "mass": maybe(MEASURED),
        "label_kg": maybe(AMOUNT),
        "container": maybe(CONTAINER),
        "hold": maybe(record("hold", Hold, {"volume_l": AMOUNT, "limit_kg": AMOUNT})),
        "length_cm": AMOUNT,
        "width_cm": AMOUNT,
        "height_cm": AMOUNT,
        "surface_cm": maybe(AMOUNT),
        "handle": one_word(Handle),
        "grip_cm": AMOUNT,
        "grip_length_cm": AMOUNT,
        "grip_room_cm": AMOUNT,
        "closure": one_word(Closure),
        "rigidity": one_word(Rigidity),
        "rating_kg": maybe(AMOUNT),
        "rating_origin": one_word(RatingOrigin),
        "flight": maybe(record("flight", Flight, {"count": whole(1, 1000), "rise_cm": AMOUNT})),
        "hazards": word_set(Hazard),
        "fixed": FLAG,
        "outdoors": FLAG,
        "pack_l": maybe(AMOUNT),
        "route_m": AMOUNT,
        "area_m2": AMOUNT,
    },
)

FILL = record("fill", Fill, {"material_id": ID, "volume_l": AMOUNT, "packing": one_word(Packing)})
OWN_CHECK = record("own_check", OwnCheck, {"date": DATE, "took_kg": AMOUNT})

THING: Codec[Thing] = record(
    "thing",
    Thing,
    {
        "id": ID,
        "kind_id": ID,
        "name": NAME,
        "count": whole(1, 999),
        "facts": FACTS,
        "icon": ID,
        "place_ids": many(ID, 50),
        "fills": many(ID, 200),
        "fill": maybe(FILL),
        "readings": many(READING, 200),
        "own_check": maybe(OWN_CHECK),
        "cautions": many(SENTENCE, 50),
    },
)
