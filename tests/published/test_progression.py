"""The size of a step and the pace of a march.

American College of Sports Medicine 2009, Med Sci Sports Exerc 41:687-708: a load is raised by 2 to 10 % once one or two
repetitions more than asked can be done. US Army FM 21-18 (1990): a stride of 30 inches at 106 steps a minute. FM 21-20:
march training begins at 20 % of body mass in all, for screened adults. Tabata et al. 1996: see test_intervals.
"""

from __future__ import annotations

import pytest

from core.fit.first_load import WALK_SHARE
from core.house.model import Experience
from core.plan.courses import EXTRA_REPS
from core.plan.long_courses import FIRST_SHARES, MOST_MASS_SHARE, PACE_M_PER_S
from core.plan.rungs import LEAST_STEP, MOST_STEP


def test_a_step_of_the_load_is_two_to_ten_per_cent() -> None:
    assert (LEAST_STEP, MOST_STEP) == (0.02, 0.10)


def test_the_load_goes_up_after_one_or_two_repetitions_more() -> None:
    assert 1 <= EXTRA_REPS <= 2


def test_the_marching_rate_is_thirty_inches_a_hundred_and_six_times_a_minute() -> None:
    rate_km_h = 30 * 0.0254 * 106 * 60 / 1000
    assert rate_km_h == pytest.approx(4.846, abs=0.001)
    assert pytest.approx(rate_km_h, abs=0.05) == 3.6 * PACE_M_PER_S


def test_loaded_walks_begin_below_and_end_at_what_march_training_begins_with() -> None:
    assert MOST_MASS_SHARE == 0.20
    assert FIRST_SHARES[1] <= MOST_MASS_SHARE / 2


@pytest.mark.parametrize("experience", Experience)
def test_every_first_share_lies_in_five_to_ten_per_cent(experience: Experience) -> None:
    assert FIRST_SHARES[0] <= WALK_SHARE[experience] <= FIRST_SHARES[1]
