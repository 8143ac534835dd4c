"""Tins by size, by name and by label."""

from __future__ import annotations

import math

import pytest

from core.errors import InputError
from core.mass.tin_sizes import TINS, find_tin, modelled_capacity_l, tin_near
from core.mass.tins import estimate_tin, tare_kg
from core.quantity.units import UnitSystem


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("603x700", "603x700"),
        ("603 X 700", "603x700"),
        ("603×700", "603x700"),
        ("No. 10", "603x700"),
        ("#10", "603x700"),
        ("number 10 can", "603x700"),
        ("303", "303x406"),
        ("no. 2 1/2", "401x411"),
        ("No. 2½ tin", "401x411"),
        ("No. 1.25", "401x206"),
        ("no 3 cylinder", "404x700"),
        ("jumbo", "307x510"),
        ("404x414", "404x414"),
    ],
)
def test_tins_are_found_by_code_and_by_trade_name(text: str, code: str) -> None:
    assert find_tin(text).code == code


@pytest.mark.parametrize("text", ["", "No. 99", "603x799", "099x100", "a tin", "6" * 5000])
def test_sizes_that_are_none_are_refused(text: str) -> None:
    with pytest.raises(InputError, match="is not a tin"):
        find_tin(text)


def test_a_size_outside_the_table_is_modelled_and_doubted_more() -> None:
    listed, modelled = find_tin("404x700").capacity_l, find_tin("404x414").capacity_l
    assert modelled.u / modelled.value > listed.u / listed.value
    assert modelled.value == pytest.approx(modelled_capacity_l(find_tin("404x414")))


def test_a_larger_tin_holds_more_and_weighs_more() -> None:
    by_capacity = sorted(TINS, key=lambda tin: tin.capacity_l.value)
    assert [tin.code for tin in (by_capacity[0], by_capacity[-1])] == ["202x308", "603x700"]
    assert tare_kg(by_capacity[-1]).value > 5 * tare_kg(by_capacity[0]).value


def test_the_nearest_size_is_found_by_ratio() -> None:
    assert tin_near(3.0).code == "603x700"
    assert tin_near(0.43).code == "300x407"


def test_the_printed_net_mass_beats_the_size() -> None:
    by_size, by_label = estimate_tin("No. 10"), estimate_tin("No. 10", net_kg=2.98)
    assert by_label.mass.u < 0.5 * by_size.mass.u
    assert by_label.contents.value == 2.98
    assert by_size.advice.startswith("Read the net mass off the label")
    assert by_label.advice.startswith("Weigh it once on a kitchen scale")


def test_a_label_without_a_size_guesses_the_tin() -> None:
    sized, guessed = estimate_tin("No. 300", net_kg=0.4), estimate_tin(net_kg=0.4)
    assert guessed.tare.u > sized.tare.u
    assert guessed.mass.value == pytest.approx(sized.mass.value, rel=0.05)


def test_a_drained_mass_stands_for_a_heavier_closed_tin_and_for_itself_poured_off() -> None:
    closed = estimate_tin(drained_kg=0.24)
    opened = estimate_tin(drained_kg=0.24, poured_off=True)
    assert closed.contents.value == pytest.approx(0.24 / 0.62)
    assert opened.contents.value == pytest.approx(0.24)
    assert estimate_tin("No. 300", net_kg=0.4, poured_off=True).contents.value == pytest.approx(0.248)


def test_vacuum_sizes_hold_less_than_their_capacity() -> None:
    vacuum, wet = estimate_tin("No. 2 Vacuum"), estimate_tin("No. 2")
    assert vacuum.contents.value / vacuum.volume_l.value < wet.contents.value / wet.volume_l.value


def test_the_budget_of_a_tin_adds_up() -> None:
    for result in (estimate_tin("No. 10"), estimate_tin(net_kg=0.4), estimate_tin(drained_kg=0.24)):
        assert math.fsum(line.u_kg**2 for line in result.budget) == pytest.approx(result.mass.u**2)
        assert result.mass.value == pytest.approx(result.contents.value + result.tare.value)


def test_advice_uses_the_readers_units() -> None:
    assert estimate_tin("No. 10", system=UnitSystem.US).advice.endswith("lb.")


@pytest.mark.parametrize("net_kg", [0.0, -1.0, 25.0, math.nan])
def test_net_masses_that_cannot_be_are_refused(net_kg: float) -> None:
    with pytest.raises(InputError, match="is not the mass of a tin's contents"):
        estimate_tin("No. 10", net_kg=net_kg)


def test_nothing_to_go_by_is_refused() -> None:
    with pytest.raises(InputError, match=r"give its size, like No\. 10"):
        estimate_tin()
