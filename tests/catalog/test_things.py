"""The loader of household things: what a good entry becomes, and how every fault of a file is told."""

from __future__ import annotations

from pathlib import Path

import pytest

from catalog.errors import CatalogFaults
from catalog.materials import load_materials
from catalog.schema_things import SOURCED
from catalog.sources import load_sources
from catalog.things import ICONS, load_fill_groups, load_kinds
from core.errors import InputError
from core.mass.model import FullLevel, Shouldered
from core.mass.weigh import estimate
from core.quantity import Origin
from core.things.model import Closure, Form, Handle, Hazard, RatingOrigin, Rigidity

FILLS = """
[[fills]]
id = "still"
materials = ["water", "sand_dry"]
"""
PAIL = """
[[thing]]
id = "deck_pail"
name = "Deck pail"
aliases = ["boat bucket"]
icon = "bucket"
common = 1
cost = 1
form = "vessel"
litres = [10.0, 0.2]
brimful = [1.1, 0.05]
tare_kg = [0.5, 0.1]
shape = { form = "tapered", bottom_cm = 20.0, top_cm = 27.0, height_cm = 25.0 }
length_cm = 28.0
width_cm = 28.0
height_cm = 26.0
handle = "bail"
grip_cm = [2.0, 9.0, 6.0]
closure = "open"
rigidity = "semi"
hazards = ["slippery_wet"]
fills = "still"
cautions = ["It spills."]
sources = { capacity = "label", brimful = "guess", tare = "scale", shape = "tape", size = "tape", grip = "tape" }
"""
STEP = """
[[thing]]
id = "deck_step"
name = "Deck step"
plural = "Steps of the deck"
icon = "stairs"
common = 0
cost = 2
form = "step"
surface_cm = 20.0
rating_kg = 150.0
rating_origin = "label"
sources = { surface = "tape", rating = "label" }
"""


def sentences_of(text: str, fills: str = FILLS) -> tuple[str, ...]:
    with pytest.raises(CatalogFaults) as caught:
        load_kinds({"mine.toml": text}, fills)
    return caught.value.sentences


def test_an_entry_becomes_a_kind_with_its_facts() -> None:
    (kind,) = load_kinds({"vessels.toml": PAIL}, FILLS)
    assert (kind.id, kind.name, kind.plural, kind.group) == ("deck_pail", "Deck pail", "Deck pails", "vessels")
    assert (kind.common, kind.cost, kind.icon, kind.fills) == (1, 1, "bucket", ("water", "sand_dry"))
    facts = kind.facts
    assert (facts.form, facts.handle, facts.closure, facts.rigidity) == (
        Form.VESSEL,
        Handle.BAIL,
        Closure.OPEN,
        Rigidity.SEMI,
    )
    assert (facts.grip_cm, facts.grip_length_cm, facts.grip_room_cm) == (2.0, 9.0, 6.0)
    assert facts.hazards == {Hazard.SLIPPERY_WET}
    assert kind.standing[0] == ("brimful", "guess")
    assert kind.source_ids == ("guess", "label", "scale", "tape")


def test_a_vessel_is_scaled_to_its_brimful_capacity() -> None:
    (kind,) = load_kinds({"vessels.toml": PAIL}, FILLS)
    container = kind.facts.container
    assert container is not None
    assert container.brimful_l.value == pytest.approx(11.0)
    assert container.shape.full_volume_l == pytest.approx(11.0)
    assert container.nominal_l.value == 10.0
    assert container.tare_kg.u95 == pytest.approx(2 * 0.1 / 3**0.5)


def test_a_fixture_keeps_its_rating_and_own_plural() -> None:
    (kind,) = load_kinds({"steps.toml": STEP}, FILLS)
    assert kind.plural == "Steps of the deck"
    assert (kind.facts.rating_kg, kind.facts.rating_origin) == (150.0, RatingOrigin.LABEL)
    assert (kind.facts.mass, kind.facts.container, kind.fills) == (None, None, ())


def test_kinds_come_sorted_by_id_over_all_files() -> None:
    kinds = load_kinds({"b.toml": STEP, "a.toml": PAIL.replace("deck_pail", "zinc_pail")}, FILLS)
    assert [(kind.id, kind.group) for kind in kinds] == [("deck_step", "b"), ("zinc_pail", "a")]


@pytest.mark.parametrize(
    ("change", "to", "words"),
    [
        ("common = 1", "common = 3", "field common: “3” is refused"),
        ("cost = 1", "", "field cost: “cost” is missing; add the field."),
        ('form = "vessel"', 'form = "jar"', "field form: “jar” is refused"),
        ("common = 1", "common = 1\nweight = 3", "field weight"),
        ("height_cm = 26.0", "height_cm = nan", "field height_cm"),
        ("height_cm = 26.0", "height_cm = 26000.0", "field height_cm"),
        ('id = "deck_pail"', 'id = "Deck Pail"', "field id"),
        ("\nheight_cm = 26.0", "", "length_cm, width_cm and height_cm come together"),
        ("width_cm = 28.0", "width_cm = 29.0", "length_cm is the longer side, width_cm the shorter"),
        ("grip_cm = [2.0, 9.0, 6.0]", "", "a handle needs grip_cm"),
        ('size = "tape", grip', "grip", "sources must say where length_cm comes from (size)"),
        ('grip = "tape"', 'grip = "tape", label = "tape"', "sources names label, but label_kg is not given"),
        ('grip = "tape"', 'grip = "tape", colour = "tape"', "sources names colour, which is no group of numbers"),
        ("tare_kg = [0.5, 0.1]\n", "", "litres, brimful, tare_kg and shape come together"),
        ('fills = "still"', "", "what can be filled needs fills, a group of materials"),
        ('fills = "still"', 'fills = "lava"', "“lava” is no group of fills; use one of still."),
        ("top_cm = 27.0", "top_cm = 0.0", "field shape.tapered.top_cm"),
        ('form = "tapered"', 'form = "round"', "field shape"),
        ('aliases = ["boat bucket"]', 'aliases = ["pail", "pail"]', "must not list one twice"),
    ],
)
def test_each_fault_is_named_with_its_entry_and_field(change: str, to: str, words: str) -> None:
    (sentence,) = [one for one in sentences_of(PAIL.replace(change, to)) if words in one] or [""]
    assert sentence.startswith("mine.toml: entry ")
    assert "Deck Pail" in sentence or "deck_pail" in sentence


@pytest.mark.parametrize(
    ("lines", "words"),
    [
        ('rating_kg = 150.0\nrating_origin = "none"', "a rating needs rating_origin"),
        ('fills = "still"\nrating_kg = 150.0\nrating_origin = "label"', "fills belongs to what can be filled"),
        ('label_kg = 3.0\nrating_kg = 150.0\nrating_origin = "label"', "mass_kg is at least as much"),
        (
            'hold = { litres = 9.0, limit_kg = 5.0 }\nrating_kg = 150.0\nrating_origin = "label"',
            "needs mass_kg, its own mass",
        ),
    ],
)
def test_facts_that_do_not_go_together_are_refused(lines: str, words: str) -> None:
    text = STEP.replace('rating_kg = 150.0\nrating_origin = "label"', lines)
    sources = '{ surface = "tape", rating = "label"'
    more = "".join(
        f', {group} = "tape"' for group in ("label", "hold") if f"{group}_kg = 3" in lines or f"{group} =" in lines
    )
    text = text.replace(sources, sources + more)
    assert any(words in sentence for sentence in sentences_of(text))


def test_what_can_be_filled_has_an_empty_mass_only() -> None:
    text = PAIL.replace("tare_kg", "mass_kg = [0.5, 0.1]\ntare_kg").replace("{ capacity", '{ mass = "tape", capacity')
    assert any("what can be filled has tare_kg, not mass_kg" in sentence for sentence in sentences_of(text))


def test_a_shape_that_makes_no_vessel_is_refused_with_the_reason() -> None:
    shape = 'shape = { form = "shouldered", diameter_cm = 9.0, straight_cm = 30.0, neck_cm = 3.0, height_cm = 25.0 }'
    text = PAIL.replace(PAIL[PAIL.index("shape = ") : PAIL.index("length_cm")], shape + "\n")
    assert any("leaves no room for a shoulder" in sentence for sentence in sentences_of(text))


def test_a_shouldered_shape_stands_on_a_round_or_a_box() -> None:
    bases = "diameter_cm = 9.0, length_cm = 9.0"
    both = f'shape = {{ form = "shouldered", {bases}, straight_cm = 9.0, neck_cm = 3.0, height_cm = 25.0 }}'
    text = PAIL.replace(PAIL[PAIL.index("shape = ") : PAIL.index("length_cm")], both + "\n")
    assert any("has diameter_cm, or length_cm and width_cm" in sentence for sentence in sentences_of(text))


def test_an_id_used_twice_is_one_fault() -> None:
    assert sentences_of(STEP + STEP) == (
        "things: entry deck_step, field id: “deck_step” is used twice; give one of them another id.",
    )


def test_all_faults_of_all_files_are_told_at_once() -> None:
    with pytest.raises(CatalogFaults) as caught:
        load_kinds({"a.toml": "nonsense", "b.toml": STEP.replace("cost = 2", "cost = 9")}, FILLS)
    assert [sentence.split(":")[0] for sentence in caught.value.sentences] == ["“a.toml” is not a TOML file", "b.toml"]


def test_a_folder_without_files_is_refused(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="holds no TOML files"):
        load_kinds(tmp_path)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ('[[fills]]\nid = "a_b"\nmaterials = []', "field materials"),
        (FILLS + FILLS, "“still” is used twice"),
        ('[[fills]]\nid = "still"\nmaterials = ["water"]\nmore = 1', "field more"),
    ],
)
def test_a_faulty_group_of_fills_is_named(text: str, words: str) -> None:
    with pytest.raises(CatalogFaults) as caught:
        load_fill_groups(text)
    assert any(words in sentence for sentence in caught.value.sentences)


def test_the_shipped_things_are_many_and_in_ten_groups() -> None:
    kinds = load_kinds()
    assert len(kinds) >= 110
    assert len({kind.group for kind in kinds}) == 10


def test_every_picture_is_drawn() -> None:
    folder = Path(__file__).parents[2] / "resources" / "icons"
    assert [icon for icon in ICONS if not (folder / f"thing-{icon}.svg").is_file()] == []


def test_every_number_of_every_shipped_thing_has_a_listed_source() -> None:
    listed = {source.id for source in load_sources()}
    for kind in load_kinds():
        assert kind.standing or kind.facts.form in (Form.ROUTE, Form.FLOOR), kind.id
        assert {group for group, _ in kind.standing} <= set(SOURCED)
        assert set(kind.source_ids) <= listed


def test_printed_masses_are_labels_and_the_rest_estimates() -> None:
    kinds = {kind.id: kind for kind in load_kinds()}
    for kind_id, origin in (("dumbbell", Origin.LABEL), ("tin_food", Origin.LABEL), ("brick", Origin.ESTIMATE)):
        mass = kinds[kind_id].facts.mass
        assert mass is not None
        assert mass.origin is origin


def test_a_gallon_of_water_in_its_jug_weighs_about_3_84_kg() -> None:
    """3.785 L of water at 15 to 20 °C and a jug of 61 g (trade reports on one-gallon jugs: 60 to 62 g)."""
    water = next(material for material in load_materials() if material.id == "water")
    jug = next(kind for kind in load_kinds() if kind.id == "milk_jug_gallon")
    container = jug.facts.container
    assert container is not None
    assert isinstance(container.shape, Shouldered)
    assert estimate(container, water, FullLevel()).mass.value == pytest.approx(3.84, abs=0.01)
