"""The shipped materials are whole, sourced and safe; a broken file is named by file, entry and field."""

from __future__ import annotations

from pathlib import Path

import pytest

from catalog import materials, sources
from catalog.materials import find_material_errors, load_materials
from catalog.sources import find_source_errors, load_sources
from core.errors import InputError
from core.mass.model import FullLevel, Material, MaterialKind, Packing, Standing
from core.mass.weigh import estimate
from tests.core.mass.examples import CARRIER

SHIPPED = load_materials()
SOURCE_IDS = frozenset(source.id for source in load_sources())
VALID = """
[[material]]
id = "gravel"
name = "Gravel"
kind = "aggregate"
density = [1450, 1550, 1680]
standing = "seen"
sources = ["bulk_density_list"]
settles = true
settled = [1.0, 1.1]
"""


def test_the_shipped_materials_and_sources_have_no_fault() -> None:
    assert list(find_source_errors(sources.SHIPPED)) == []
    assert list(find_material_errors(materials.SHIPPED, SOURCE_IDS)) == []


def test_there_are_enough_fills_and_reasons_against_the_others() -> None:
    fills = [material for material in SHIPPED if material.as_fill]
    assert len(fills) >= 45
    refused = {material.id for material in SHIPPED if not material.as_fill}
    assert {"lead_shot", "bleach", "fuel", "corrosive", "cement", "pool_chemicals"} <= refused
    assert all(material.why_not for material in SHIPPED if not material.as_fill)


def test_materials_are_sorted_by_id_and_named_once() -> None:
    assert [material.id for material in SHIPPED] == sorted({material.id for material in SHIPPED})
    assert len({material.name for material in SHIPPED}) == len(SHIPPED)


@pytest.mark.parametrize("material", SHIPPED, ids=lambda material: material.id)
def test_every_fill_can_be_weighed_and_every_other_is_refused(material: Material) -> None:
    if not material.as_fill:
        with pytest.raises(InputError, match="is not a fill"):
            estimate(CARRIER, material, FullLevel())
        return
    packings = [packing for packing, known in _packings(material).items() if known]
    masses = [estimate(CARRIER, material, FullLevel(), packing=packing).mass for packing in packings]
    assert all(8 < mass.value < 125 and 0 < mass.u < 0.3 * mass.value for mass in masses)


def _packings(material: Material) -> dict[Packing, bool]:
    return {
        Packing.LOOSE: True,
        Packing.SETTLED: material.settled is not None,
        Packing.DAMP: material.damp is not None,
    }


def test_only_water_follows_its_temperature_and_only_liquids_slosh() -> None:
    assert [material.id for material in SHIPPED if material.by_temperature] == ["water"]
    assert all(material.kind is MaterialKind.LIQUID for material in SHIPPED if material.sloshes)


def test_memory_is_called_memory() -> None:
    for material in SHIPPED:
        only_memory = set(material.source_ids) == {"memory_household"}
        assert only_memory == (material.standing is Standing.MEMORY), material.id


def test_dusty_fills_carry_a_caution_or_are_food() -> None:
    dusty = [one for one in SHIPPED if one.as_fill and one.dusty and one.kind is MaterialKind.AGGREGATE]
    assert {one.id for one in dusty if not one.cautions} <= {"soil_dry", "cat_litter_clay"}


def test_a_valid_entry_is_read_as_written() -> None:
    (gravel,) = load_materials(VALID)
    assert (gravel.low_kg_m3, gravel.typical_kg_m3, gravel.high_kg_m3) == (1450, 1550, 1680)
    assert gravel.settled is not None
    assert gravel.settled.value == pytest.approx(1.05)
    assert gravel.source_ids == ("bulk_density_list",)


@pytest.mark.parametrize(
    ("old", "new", "fault"),
    [
        ('id = "gravel"', 'id = "Gravel stones"', "field id"),
        ('id = "gravel"', "", "field id: “id” is missing"),
        ('kind = "aggregate"', 'kind = "stone"', "field kind"),
        ("[1450, 1550, 1680]", "[1450, nan, 1680]", "field density.1"),
        ("[1450, 1550, 1680]", "[1450, inf, 1680]", "field density.1"),
        ("[1450, 1550, 1680]", "[0, 1550, 1680]", "field density.0"),
        ("[1450, 1550, 1680]", "[1450, 1550]", "field density"),
        ("[1450, 1550, 1680]", "[1550, 1450, 1680]", "density must rise"),
        ('standing = "seen"', 'standing = "sure"', "field standing"),
        ('["bulk_density_list"]', "[]", "field sources"),
        ("settles = true", 'settles = "yes"', "field settles"),
        ("settles = true", "colour = 1", "field colour"),
        ("[1.0, 1.1]", "[1.1, 1.0]", "settled and damp must be low, high"),
        ("settles = true", "solid_kg_m3 = 1500", "the grains must be denser than they lie"),
        ("settles = true", "as_fill = false", "needs why_not"),
        ('kind = "aggregate"', 'kind = "liquid"', "a liquid does not settle"),
    ],
)
def test_a_broken_entry_is_named_by_file_entry_and_field(tmp_path: Path, old: str, new: str, fault: str) -> None:
    path = tmp_path / "mine.toml"
    path.write_text(VALID.replace(old, new), encoding="utf-8")
    with pytest.raises(InputError) as caught:
        load_materials(path)
    assert str(caught.value).startswith("mine.toml: entry ")
    assert fault in str(caught.value)
    assert [fault in sentence for sentence in find_material_errors(path, SOURCE_IDS)].count(True) == 1


def test_all_faults_of_a_file_are_told_at_once() -> None:
    broken = VALID.replace('kind = "aggregate"', 'kind = "stone"') + VALID.replace("1550", "nan")
    assert len(list(find_material_errors(broken, SOURCE_IDS))) == 2
    with pytest.raises(InputError, match=r"\(and 1 more\)"):
        load_materials(broken)


def test_an_id_used_twice_and_a_source_not_listed_are_faults() -> None:
    assert list(find_material_errors(VALID + VALID, SOURCE_IDS)) == [
        "materials: entry gravel, field id: “gravel” is used twice"
    ]
    assert list(find_material_errors(VALID, frozenset())) == [
        "materials: entry gravel, field sources: “bulk_density_list” is not a listed source"
    ]


@pytest.mark.parametrize(
    ("text", "rule"),
    [
        ("x =", "is not a TOML file"),
        ("material = 3", "must hold its entries as"),
        ("material = [3]", "must hold its entries as"),
        ("[[stuff]]\nid = 1", "is not known at the top of"),
        ("#" * 2_000_001, "is larger than a data file can be"),
        ("a = " + "[" * 100_000, "is not a TOML file"),
    ],
)
def test_what_is_no_materials_file_is_refused(text: str, rule: str) -> None:
    with pytest.raises(InputError, match=rule):
        load_materials(text)


def test_a_file_that_cannot_be_read_is_refused(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="is not there"):
        load_materials(tmp_path / "none.toml")
    with pytest.raises(InputError, match="cannot be read"):
        load_materials(tmp_path)
    picture = tmp_path / "picture.toml"
    picture.write_bytes(b"\xff\xd8\xff\xe0")
    with pytest.raises(InputError, match="cannot be read"):
        load_materials(picture)
