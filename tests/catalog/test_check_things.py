"""The checker of things: a broken set gives an exact list of sentences, the shipped one gives none."""

from __future__ import annotations

from dataclasses import replace

import pytest

from catalog.check_things import find_thing_errors
from catalog.materials import load_materials
from catalog.sources import load_sources
from catalog.things import ICONS, load_kinds
from core.mass.model import Container, StraightRound
from core.quantity import Measured
from core.things.model import Closure, Facts, Form, Handle, Hazard, ThingKind

MATERIALS = load_materials()
SOURCES = frozenset({"tape"})
TIN = ThingKind(
    id="tin",
    name="Tin",
    plural="Tins",
    group="tins",
    icon="tin",
    facts=Facts(form=Form.TIN, mass=Measured(0.5), length_cm=8.0, width_cm=8.0, height_cm=11.0, closure=Closure.SEALED),
    standing=(("size", "tape"),),
)
SEAT = ThingKind(
    id="seat",
    name="Seat",
    plural="Seats",
    group="seats",
    icon="stool",
    facts=Facts(form=Form.SEAT, length_cm=35.0, width_cm=35.0, height_cm=45.0, surface_cm=45.0),
)
POT = Container(
    shape=StraightRound(diameter_cm=25.0, full_height_cm=22.4),
    nominal_l=Measured(10.0),
    brimful_l=Measured(11.0),
    tare_kg=Measured(0.5, 0.1),
)
PAIL = ThingKind(
    id="pail",
    name="Pail",
    plural="Pails",
    group="vessels",
    icon="bucket",
    facts=Facts(
        form=Form.VESSEL,
        container=POT,
        length_cm=26.0,
        width_cm=26.0,
        height_cm=24.0,
        handle=Handle.BAIL,
        closure=Closure.OPEN,
    ),
    fills=("water", "sand_dry"),
    cautions=("A small child can drown in it.",),
)


def errors(*kinds: ThingKind) -> list[str]:
    """All sentences but those on uses that nothing serves: a handful of kinds serves few."""
    found = find_thing_errors(kinds, SOURCES, MATERIALS)
    return [sentence for sentence in found if not sentence.startswith("use ")]


def changed(kind: ThingKind, **facts: object) -> ThingKind:
    return replace(kind, facts=replace(kind.facts, **facts))  # type: ignore[arg-type]  # the tests name the fields


def test_the_shipped_things_give_no_sentence() -> None:
    sources = frozenset(source.id for source in load_sources())
    assert list(find_thing_errors(load_kinds(), sources, MATERIALS)) == []


def test_things_in_order_give_no_sentence() -> None:
    assert errors(TIN, SEAT, PAIL) == []


def test_a_broken_set_gives_exactly_these_sentences() -> None:
    broken = (
        replace(TIN, icon="tine", standing=(("size", "ruler"),)),
        replace(TIN, aliases=("seats",)),
        SEAT,
        changed(SEAT, surface_cm=95.0),
        replace(changed(TIN, mass=Measured(9.0)), id="heavy_tin", name="Heavy tin", plural="Heavy tins"),
        replace(PAIL, fills=("water", "lava", "bleach"), cautions=()),
    )
    assert errors(*broken) == [
        "thing tin: the id is used twice; give one of them another.",
        "thing seat: “seat” already means tin; drop it from one of them.",
        "thing seat: the id is used twice; give one of them another.",
        "thing seat: “seat” already means tin; drop it from one of them.",
        f"thing tin: there is no picture “tine”; use one of {', '.join(ICONS)}.",
        "thing tin: the source “ruler” of its size is not listed; add it to the sources.",
        "thing seat: a seat is 25 to 80 cm high; check surface_cm.",
        "thing heavy_tin: 9 kg does not fit 0.7 L; check mass_kg and its size.",
        "thing pail: there is no material “lava”; correct its group of fills.",
        "thing pail: Bleach may not be filled into anything; drop it from the group of fills.",
        "thing pail: a bucket this big needs the caution that a small child can drown in it; add it.",
    ]


@pytest.mark.parametrize(
    ("kind", "sentence"),
    [
        (
            changed(TIN, form=Form.BLOCK, mass=Measured(80.0)),
            "thing tin: 80 kg is more than anyone lifts; check mass_kg.",
        ),
        (
            changed(TIN, length_cm=0.0),
            "thing tin: its outer size is missing; add length_cm, width_cm and height_cm.",
        ),
        (
            changed(PAIL, height_cm=14.0),
            "thing pail: 11.00 L do not fit an outer box of 9.46 L; check litres and its size.",
        ),
        (
            changed(PAIL, container=replace(POT, tare_kg=Measured(0.5, 0.4))),
            "thing pail: the empty mass is doubted by more than itself; check tare_kg.",
        ),
        (
            replace(PAIL, fills=()),
            "thing pail: it can be filled, but with nothing; name a group of fills.",
        ),
        (
            changed(PAIL, hazards=frozenset({Hazard.HELD_CHEMICALS})),
            "thing pail: it held chemicals, so it must not be filled; give mass_kg instead of litres.",
        ),
        (
            changed(TIN, hazards=frozenset({Hazard.SHARP})),
            "thing tin: sharp needs a caution; add one.",
        ),
    ],
)
def test_each_rule_has_its_sentence(kind: ThingKind, sentence: str) -> None:
    assert errors(kind) == [sentence]


def test_a_use_that_nothing_serves_is_told() -> None:
    found = [text for text in find_thing_errors((TIN, SEAT), SOURCES, MATERIALS) if text.startswith("use ")]
    assert "use wall: no kind of thing serves it; add one." in found
    assert not any(text.startswith(("use sit", "use one_hand")) for text in found)


def test_a_use_of_the_home_must_not_hang_on_a_rare_thing() -> None:
    rare = replace(SEAT, common=0)
    assert "use sit: only rare things serve it; add one that many homes have." in list(
        find_thing_errors((rare,), SOURCES, MATERIALS)
    )


def test_a_size_in_the_name_keeps_names_apart() -> None:
    small = replace(TIN, name="1 kg tin", plural="1 kg tins")
    large = replace(TIN, id="large", name="2 kg tin", plural="2 kg tins")
    assert errors(small, large) == []
