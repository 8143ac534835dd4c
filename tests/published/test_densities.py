"""The shipped density ranges against published densities.

FAO: FAO/INFOODS Density Database version 2.0 (2012). USDA: National Nutrient Database for Standard Reference, grams per
cup over 236.588 mL. BUSHEL: US legal bushel weights over 35.239 L (Ohio State University Extension AGF-503). LIST: a
general list of bulk densities of unknown origin. SEA: Millero and Poisson 1981, Deep-Sea Research 28A:625-629. PELLET:
solid bulk cargo schedule. CLAY: a producer's specification of bentonite granules. CEMENT: 94 lb bag as one cubic foot.
"""

from __future__ import annotations

import pytest

from catalog.materials import load_materials

MATERIALS = {material.id: material for material in load_materials()}
POUND_PER_BUSHEL_KG_M3 = 0.45359237 / 35.23907 * 1000

PUBLISHED = [
    ("milk", 1030, "FAO"),
    ("milk", 1034, "FAO"),
    ("cooking_oil", 915, "FAO rapeseed"),
    ("cooking_oil", 918, "FAO olive"),
    ("cooking_oil", 922, "FAO maize"),
    ("cooking_oil", 927, "FAO soya"),
    ("cooking_oil", 913, "USDA"),
    ("juice", 1038, "FAO orange"),
    ("juice", 1040, "FAO apple"),
    ("honey", 1433, "USDA"),
    ("maple_syrup", 1320, "FAO"),
    ("maple_syrup", 1331, "USDA"),
    ("corn_syrup", 1400, "FAO light"),
    ("molasses", 1424, "USDA"),
    ("sea_water", 1025.973, "SEA salinity 35, 15 °C"),
    ("salt_table", 1217, "FAO"),
    ("salt_table", 1280, "FAO granulated"),
    ("salt_table", 1234, "USDA"),
    ("rice_long", 820, "FAO white, raw"),
    ("rice_long", 720, "FAO"),
    ("rice_short", 850, "FAO raw"),
    ("rice_rough", 580, "FAO rough"),
    ("beans_large", 750, "FAO kidney"),
    ("beans_large", 60 * POUND_PER_BUSHEL_KG_M3, "BUSHEL"),
    ("beans_small", 801, "LIST navy"),
    ("lentils", 890, "FAO"),
    ("lentils", 60 * POUND_PER_BUSHEL_KG_M3, "BUSHEL"),
    ("soybeans", 740, "FAO"),
    ("oats_rolled", 340, "FAO"),
    ("oats_whole", 410, "FAO"),
    ("oats_whole", 32 * POUND_PER_BUSHEL_KG_M3, "BUSHEL"),
    ("barley", 620, "FAO"),
    ("barley", 650, "FAO whole"),
    ("barley", 48 * POUND_PER_BUSHEL_KG_M3, "BUSHEL"),
    ("rye", 700, "FAO whole"),
    ("rye", 720, "FAO"),
    ("wheat", 770, "FAO"),
    ("wheat", 769, "LIST"),
    ("wheat", 790, "LIST"),
    ("corn_shelled", 720, "FAO"),
    ("corn_shelled", 810, "FAO"),
    ("corn_shelled", 760, "LIST"),
    ("flour_white", 580, "FAO"),
    ("sugar_granulated", 810, "FAO"),
    ("sugar_granulated", 850, "FAO sucrose"),
    ("semolina", 780, "FAO raw"),
    ("cornmeal_fine", 640, "FAO"),
    ("pasta_elbow", 390, "FAO short macaroni, raw"),
    ("peanuts_shelled", 690, "FAO shelled"),
    ("rapeseed", 770, "FAO"),
    ("millet", 780, "LIST"),
    ("sand_dry", 1442, "LIST loose"),
    ("sand_dry", 1602, "LIST dry"),
    ("sand_wet", 1922, "LIST wet"),
    ("sand_wet", 2080, "LIST wet, packed"),
    ("gravel_pea", 1522, "LIST loose, dry"),
    ("gravel_wet", 2002, "LIST wet"),
    ("crushed_stone", 1602, "LIST"),
    ("wood_pellets", 600, "PELLET"),
    ("wood_pellets", 750, "PELLET"),
    ("cat_litter_clay", 900, "CLAY"),
    ("cat_litter_clay", 1100, "CLAY"),
    ("cement", 94 * 0.45359237 / 0.028316846592, "CEMENT"),
]


@pytest.mark.parametrize(("material_id", "kg_m3", "source"), PUBLISHED)
def test_a_published_density_lies_in_the_shipped_range(material_id: str, kg_m3: float, source: str) -> None:
    material = MATERIALS[material_id]
    assert material.low_kg_m3 <= kg_m3 <= material.high_kg_m3, source


def test_sand_grains_are_denser_than_any_packing_of_them() -> None:
    """Quartz, 2650 kg/m³ (mineral handbooks; from memory): poured sand is then about 40 % air."""
    sand = MATERIALS["sand_dry"]
    assert sand.porosity == pytest.approx(0.40, abs=0.03)
