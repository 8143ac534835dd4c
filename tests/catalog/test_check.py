"""The checker of the whole catalog: a broken catalog gives an exact list of sentences, the shipped one gives none."""

from __future__ import annotations

from dataclasses import replace

from catalog.check import find_catalog_errors
from core.exercise.model import Need, Use
from core.knowledge import Catalog, Source
from core.mass.model import Material, MaterialKind, Standing
from core.things.model import Facts, Form, Handle, ThingKind
from tests.catalog.test_check_exercises import one

WATER = Material(
    id="water",
    name="Water",
    kind=MaterialKind.LIQUID,
    low_kg_m3=995.0,
    typical_kg_m3=998.0,
    high_kg_m3=1000.0,
    standing=Standing.SEEN,
    source_ids=("tables",),
)
LYE = replace(WATER, id="lye", name="Lye", as_fill=False, why_not="It burns.")
STOOL = ThingKind(
    id="stool",
    name="Stool",
    plural="Stools",
    group="seats",
    icon="stool",
    facts=Facts(form=Form.SEAT, length_cm=35, width_cm=35, height_cm=45, surface_cm=45),
    standing=(("all", "tables"),),
)
PAIL = ThingKind(
    id="pail",
    name="Pail",
    plural="Pails",
    group="vessels",
    icon="bucket",
    facts=Facts(form=Form.VESSEL, length_cm=30, width_cm=30, height_cm=30, handle=Handle.BAIL),
    fills=("water",),
)
GOOD = Catalog(
    exercises=(one("seat_stand", needs=(Need(uses=(Use.SIT,), height_cm=(38, 55), bears=1.0),)),),
    kinds=(PAIL, STOOL),
    materials=(LYE, WATER),
    sources=(Source(id="tables", citation="Printed tables", kind="published"),),
)


def errors(catalog: Catalog) -> list[str]:
    """All sentences but those that say which uses nothing serves: a catalog of two kinds serves few."""
    return [sentence for sentence in find_catalog_errors(catalog) if not sentence.startswith("use ")]


def test_a_catalog_in_order_gives_no_sentence() -> None:
    assert errors(GOOD) == []


def test_the_things_are_checked_too() -> None:
    assert "use rings: no kind of thing serves it; add one." in find_catalog_errors(GOOD)


def test_a_broken_catalog_gives_exactly_these_sentences() -> None:
    broken = Catalog(
        exercises=(
            one("bar_hang", needs=(Need(uses=(Use.HANG_BAR,), bears=1.0),)),
            one("high_seat_stand", needs=(Need(uses=(Use.SIT,), height_cm=(60, 80), bears=1.0),)),
            one("wall_sit", needs=(Need(uses=(Use.WALL,)),), cues=("Sit",)),
        ),
        kinds=(PAIL, replace(PAIL, id="tub", name="Tub", plural="Tubs", fills=("mercury",)), STOOL),
        materials=(WATER, WATER, LYE, replace(LYE, id="acid", source_ids=("rumour",))),
        sources=(*GOOD.sources, *GOOD.sources),
    )
    assert errors(broken) == [
        "water: the material id is used 2 times",
        "tables: the source id is used 2 times",
        "wall_sit: it has 1 cues, not 2 to 4",
        "wall_sit: “Sit” must be one sentence that ends with a full stop",
        "thing tub: there is no material “mercury”; correct its group of fills.",
        "acid: the source rumour is not listed",
        "bar_hang: no kind of thing can meet its need number 1 (hang_bar)",
        "high_seat_stand: no kind of thing can meet its need number 1 (sit at 60 to 80 cm)",
    ]
