"""Numbers, units and words out of typed text."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.quantity.units import parse_length_cm, parse_mass_kg, parse_volume_l
from core.things.typed_numbers import Measure, Sort, Token, plain_text, tokens_of


def tokens(text: str) -> tuple[Token, ...]:
    return tokens_of(plain_text(text))


@pytest.mark.parametrize(
    ("text", "value", "measure"),
    [
        ("five-litre", 5.0, Measure.VOLUME),
        ("one-gallon", 3.785411784, Measure.VOLUME),
        ("gallon", 3.785411784, Measure.VOLUME),
        ("half-gallon", 1.892705892, Measure.VOLUME),
        ("half a litre", 0.5, Measure.VOLUME),
        ("three-quarter litre", 0.75, Measure.VOLUME),
        ("two and a half litre", 2.5, Measure.VOLUME),
        ("1½ gal", 5.678117676, Measure.VOLUME),
        ("2 1/2 gal", 9.46352946, Measure.VOLUME),
        ("1,5 l", 1.5, Measure.VOLUME),
        (".5 l", 0.5, Measure.VOLUME),
        ("500ml", 0.5, Measure.VOLUME),
        ("25 L", 25.0, Measure.VOLUME),
        ("20kg", 20.0, Measure.MASS),
        ("10 lb", 4.5359237, Measure.MASS),
        ("400 g", 0.4, Measure.MASS),
        ("14 oz", 0.39689332375, Measure.MASS),
        ("19 cm", 19.0, Measure.LENGTH),
        ("7 3/4 in", 19.685, Measure.LENGTH),
        ('18"', 45.72, Measure.LENGTH),
        ("6'", 182.88, Measure.LENGTH),
        ("2 m", 200.0, Measure.LENGTH),
        ("1.5 km", 150_000.0, Measure.LENGTH),
        ("40 m2", 40.0, Measure.AREA),
        ("40 m²", 40.0, Measure.AREA),
        ("100 sq ft", 9.290304, Measure.AREA),
        ("twenty-five litre", 25.0, Measure.VOLUME),
    ],
)
def test_a_quantity_is_read_in_its_unit(text: str, value: float, measure: Measure) -> None:
    (found,) = tokens(text)
    assert (found.sort, found.measure) == (Sort.QUANTITY, measure)
    assert found.value == pytest.approx(value, rel=1e-9)


@pytest.mark.parametrize("text", ["2.5 gal", "12 L", "750 ml", "3 qt", "2 pints", "8 fl oz", "5 imp gal"])
def test_volumes_agree_with_the_units_read_elsewhere(text: str) -> None:
    assert tokens(text)[0].value == pytest.approx(parse_volume_l(text))


@pytest.mark.parametrize("text", ["35 lb", "2 pounds", "16 kg", "250 g", "3 kilos"])
def test_masses_agree_with_the_units_read_elsewhere(text: str) -> None:
    assert tokens(text)[0].value == pytest.approx(parse_mass_kg(text))


@pytest.mark.parametrize("text", ["7 3/4 in", "19 cm", "195 mm", "6 ft", "2 m"])
def test_lengths_agree_with_the_units_read_elsewhere(text: str) -> None:
    assert tokens(text)[0].value == pytest.approx(parse_length_cm(text))


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("two", 2.0),
        ("a dozen", 12.0),
        ("half a dozen", 6.0),
        ("a couple of", 2.0),
        ("pair of", 2.0),
        ("forty-two", 42.0),
    ],
)
def test_a_number_word_is_a_number(text: str, value: float) -> None:
    (found,) = tokens(text)
    assert (found.sort, found.value) == (Sort.NUMBER, value)


@pytest.mark.parametrize("text", ["3 stones", "2 cups", "4 yards"])
def test_words_that_are_things_here_are_no_units(text: str) -> None:
    assert [token.sort for token in tokens(text)] == [Sort.NUMBER, Sort.WORD]


def test_outer_sizes_are_one_token() -> None:
    (found,) = tokens("62 x 38 x 12 cm")
    assert found.sides_cm == (62.0, 38.0, 12.0)
    assert tokens("5 × 2 in")[0].sides_cm == pytest.approx((12.7, 5.08))


def test_a_times_sign_stands_between_a_count_and_a_size() -> None:
    assert [token.sort for token in tokens("3x 1.5 l")] == [Sort.NUMBER, Sort.TIMES, Sort.QUANTITY]


def test_numbers_inside_names_stay_in_the_name() -> None:
    assert [token.sort for token in tokens("no. 10 can")] == [Sort.WORD, Sort.WORD]
    assert [token.sort for token in tokens("six-pack")] == [Sort.WORD]


def test_a_comma_before_three_digits_is_asked_about() -> None:
    with pytest.raises(InputError, match="could mean a thousand or a decimal comma"):
        plain_text("1,500 g")


def test_a_fraction_over_nothing_is_refused() -> None:
    with pytest.raises(InputError, match="divides by zero"):
        tokens("1/0 l")


@given(st.text(max_size=200))
def test_any_text_gives_tokens_or_an_input_error(text: str) -> None:
    try:
        found = tokens(text)
    except InputError:
        return
    assert all(token.text for token in found)
