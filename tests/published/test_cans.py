"""The tin table and the capacity model against the published can sizes.

Can Manufacturers Institute, voluntary can standards: all 20 trade sizes, outside dimensions and capacities in ounces of
water at 68 °F. 21 CFR 130.12 defines the water capacity (68 °F, 3/16 in below the top of the double seam). Millilitres
are the ounces divided by the density of water at 20 °C. Body diameters: procurement lists.
"""

from __future__ import annotations

import math

import pytest

from core.mass.tin_sizes import BODY_MM, TINS, Tin, find_tin, modelled_capacity_l

# Name: outside diameter and height in mm, ounces of water, millilitres.
CMI = {
    "6Z": (54.0, 88.9, 6.08, 173),
    "8Z Short": (68.3, 76.2, 7.93, 225),
    "8Z Tall": (68.3, 82.6, 8.68, 247),
    "No. 1 Picnic": (68.3, 101.6, 10.94, 311),
    "No. 211 Cylinder": (68.3, 123.8, 13.56, 385),
    "No. 300": (76.2, 112.7, 15.22, 432),
    "No. 300 Cylinder": (76.2, 141.3, 19.40, 551),
    "No. 1 Tall": (77.8, 119.1, 16.70, 474),
    "No. 303": (81.0, 111.1, 16.88, 479),
    "No. 303 Cylinder": (81.0, 141.3, 21.86, 621),
    "No. 2 Vacuum": (87.3, 85.7, 14.71, 418),
    "No. 2": (87.3, 115.9, 20.55, 584),
    "Jumbo": (87.3, 142.9, 25.80, 733),
    "No. 2 Cylinder": (87.3, 146.1, 26.40, 750),
    "No. 1.25": (103.2, 60.3, 13.81, 392),
    "No. 2.5": (103.2, 119.1, 29.79, 846),
    "No. 3 Vacuum": (108.0, 87.3, 23.90, 679),
    "No. 3 Cylinder": (108.0, 177.8, 51.70, 1468),
    "No. 5": (130.2, 142.9, 59.10, 1678),
    "No. 10": (157.2, 177.8, 109.43, 3108),
}


@pytest.mark.parametrize("name", CMI)
def test_every_published_size_is_in_the_table_with_its_dimensions_and_capacity(name: str) -> None:
    diameter_mm, height_mm, ounces, millilitres = CMI[name]
    tin = find_tin(name)
    assert tin.name == name
    assert tin.diameter_mm == pytest.approx(diameter_mm, abs=0.06)
    assert tin.height_mm == pytest.approx(height_mm, abs=0.06)
    assert tin.water_oz == ounces
    assert tin.capacity_l.value * 1000 == pytest.approx(millilitres, abs=0.51)


def test_the_table_has_no_other_size() -> None:
    assert {tin.name for tin in TINS} == set(CMI)


@pytest.mark.parametrize("tin", [tin for tin in TINS if tin.code[:3] in BODY_MM], ids=lambda tin: tin.name)
def test_the_model_meets_the_fourteen_sizes_with_a_listed_body_diameter(tin: Tin) -> None:
    assert modelled_capacity_l(tin) == pytest.approx(tin.capacity_l.value, rel=0.0075)


@pytest.mark.parametrize("tin", [tin for tin in TINS if tin.code[:3] not in BODY_MM], ids=lambda tin: tin.name)
def test_the_model_meets_sizes_it_was_not_made_from_within_its_stated_doubt(tin: Tin) -> None:
    modelled = modelled_capacity_l(tin)
    assert modelled == pytest.approx(tin.capacity_l.value, rel=0.03)


def test_the_outside_cylinder_would_overstate_the_capacity() -> None:
    shares = [tin.capacity_l.value * 1e6 / (math.pi / 4 * tin.diameter_mm**2 * tin.height_mm) for tin in TINS]
    assert min(shares) == pytest.approx(0.78, abs=0.01)
    assert max(shares) == pytest.approx(0.90, abs=0.01)
    assert math.fsum(shares) / len(shares) == pytest.approx(0.846, abs=0.002)


def test_a_number_ten_is_no_gallon_and_ounces_of_water_are_no_fluid_ounces() -> None:
    ten = find_tin("No. 10").capacity_l.value
    assert ten / 3.785411784 == pytest.approx(0.821, abs=0.001)
    assert ten / 0.0295735295625 == pytest.approx(105.09, abs=0.02)
