"""Colours: contrast as WCAG 2.2 demands it, in both themes."""

from __future__ import annotations

import re
from itertools import combinations

import pytest

from gui.theme import DARK, LIGHT, Family, Tokens, family_colour
from gui.theme.contrast import AA_SHAPE, AA_TEXT, SHAPE_PAIRS, TEXT_PAIRS, contrast

THEMES = pytest.mark.parametrize("tokens", [LIGHT, DARK], ids=["light", "dark"])


def test_contrast_of_black_and_white_is_21_to_1() -> None:
    """Source: W3C, WCAG 2.2, definition of contrast ratio."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21.0)
    assert contrast("#ffffff", "#ffffff") == pytest.approx(1.0)


def test_contrast_agrees_with_the_formula_worked_by_hand() -> None:
    """#767676: 118/255 = 0.46275, linear ((0.46275 + 0.055) / 1.055) ^ 2.4 = 0.18116; 1.05 / 0.23116 = 4.542."""
    assert contrast("#767676", "#ffffff") == pytest.approx(4.542, abs=0.001)


@THEMES
@pytest.mark.parametrize(("ink", "ground"), TEXT_PAIRS)
def test_every_text_is_readable(tokens: Tokens, ink: str, ground: str) -> None:
    assert contrast(getattr(tokens, ink), getattr(tokens, ground)) >= AA_TEXT


@THEMES
@pytest.mark.parametrize(("shape", "ground"), SHAPE_PAIRS)
def test_every_shape_that_says_something_can_be_seen(tokens: Tokens, shape: str, ground: str) -> None:
    assert contrast(getattr(tokens, shape), getattr(tokens, ground)) >= AA_SHAPE


@THEMES
def test_every_colour_is_six_hex_digits(tokens: Tokens) -> None:
    wrong = [
        name for name in Tokens.__slots__ if name != "dark" and not re.fullmatch("#[0-9a-f]{6}", getattr(tokens, name))
    ]
    assert wrong == []


@THEMES
def test_families_differ_in_colour(tokens: Tokens) -> None:
    colours = [family_colour(family, tokens) for family in Family]
    assert all(one != other for one, other in combinations(colours, 2))


@THEMES
def test_every_ink_is_measured_against_its_ground(tokens: Tokens) -> None:
    inks = {name for name in Tokens.__slots__ if name.endswith("_ink") or name.startswith("on_")}
    assert inks <= {ink for ink, _ in TEXT_PAIRS}
