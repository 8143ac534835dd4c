"""The 20/10 x 8 scheme of Tabata et al. 1996 (Med Sci Sports Exerc 28:1327-30): 8 x (20 s + 10 s) = 240 s."""

from __future__ import annotations

from core.plan.intervals import SHORT_HARD


def test_eight_rounds_of_twenty_and_ten_take_four_minutes() -> None:
    assert SHORT_HARD.seconds == 240


def test_five_movements_of_it_take_twenty_minutes() -> None:
    assert 5 * SHORT_HARD.seconds == 20 * 60
