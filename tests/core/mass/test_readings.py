"""Scale readings: what they are, how they combine with an estimate, and what they teach."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.mass.learning import Setting, fresh, mass_row, observe_earlier
from core.mass.model import (
    EMPTY,
    BrimLevel,
    FullLevel,
    HeightLevel,
    Level,
    Material,
    Packing,
    ScaleKind,
    ScaleReading,
    ShareLevel,
    VolumeLevel,
)
from core.mass.predict import predict
from core.mass.update import Belief
from core.mass.weigh import combine, estimate, learn, reading_on, weighed
from core.quantity import Measured, Origin
from core.quantity.units import UnitSystem
from tests.core.mass.examples import CARRIER, SAND, WATER

BATHROOM = ScaleKind.BATHROOM_DIFFERENCE
FULL = FullLevel()


def _reading(kg: float, u: float = 0.1, offset: float = 0.0, level: Level | None = None) -> ScaleReading:
    return ScaleReading(
        kind=ScaleKind.DIRECT,
        reading_kg=kg,
        resolution_kg=0.0,
        repeatability_kg=u,
        offset_doubt_kg=offset,
        at_level=level,
    )


def test_a_difference_carries_the_scatter_and_the_step_of_both_readings() -> None:
    one = replace(_reading(83.1), resolution_kg=0.1)
    both = replace(one, kind=BATHROOM, without_kg=68.0)
    assert weighed(both).mass_kg == pytest.approx(15.1)
    assert weighed(both).u_repeat_kg == pytest.approx(math.sqrt(2) * weighed(one).u_repeat_kg)
    assert weighed(both).u_lasting_kg == pytest.approx(math.sqrt(2) * weighed(one).u_lasting_kg)


@pytest.mark.parametrize("kind", [ScaleKind.KITCHEN, ScaleKind.LUGGAGE, ScaleKind.DIRECT])
def test_what_a_scale_shows_with_nothing_on_it_is_taken_off(kind: ScaleKind) -> None:
    plain, zeroed = reading_on(kind, 4.3), reading_on(kind, 4.6, without_kg=0.3)
    assert weighed(zeroed).mass_kg == pytest.approx(weighed(plain).mass_kg)
    assert zeroed.offset_doubt_kg < plain.offset_doubt_kg
    assert weighed(zeroed).u_repeat_kg > weighed(plain).u_repeat_kg
    below = reading_on(kind, 4.0, without_kg=-0.3)
    assert weighed(below).mass_kg == pytest.approx(4.3)
    assert below.without_kg == 0.0


@given(kg=st.floats(0.5, 40), off=st.floats(-2, 2))
def test_a_constant_error_of_the_scale_drops_out_of_a_difference(kg: float, off: float) -> None:
    assert weighed(reading_on(BATHROOM, 70 + kg + off, without_kg=70 + off)).mass_kg == pytest.approx(kg)


def test_a_coarse_display_is_doubted_by_its_step() -> None:
    coarse = reading_on(ScaleKind.LUGGAGE, 14.0, resolution_kg=1.0)
    assert weighed(coarse).u_lasting_kg == pytest.approx(math.hypot(1 / math.sqrt(12), 0.15 / math.sqrt(3)))


@pytest.mark.parametrize("step_kg", [0.0, -0.1, 6.0, math.nan])
def test_a_step_no_scale_shows_is_refused(step_kg: float) -> None:
    with pytest.raises(InputError, match="is not a step a scale shows"):
        reading_on(ScaleKind.LUGGAGE, 14.0, resolution_kg=step_kg)


@pytest.mark.parametrize(
    ("reading", "rule"),
    [
        (_reading(-0.1), "is not a scale reading"),
        (_reading(math.nan), "is not a scale reading"),
        (_reading(1e6), "is not a scale reading"),
        (_reading(10.0, u=0.0), "does not describe a scale"),
        (_reading(10.0, u=-1.0), "does not describe a scale"),
        (replace(_reading(80.0), kind=BATHROOM), "is one reading, and a difference needs two"),
        (replace(_reading(60.0), kind=BATHROOM, without_kg=68.0), "is less than you weigh without it"),
    ],
)
def test_readings_that_cannot_be_are_refused(reading: ScaleReading, rule: str) -> None:
    with pytest.raises(InputError, match=rule):
        weighed(reading)


@given(
    value=st.floats(1, 50),
    u=st.floats(0.01, 2),
    gaps=st.lists(st.floats(-1, 1), min_size=1, max_size=4),
    scatter=st.floats(0.02, 1),
)
def test_agreeing_readings_average_by_inverse_variance(
    value: float, u: float, gaps: list[float], scatter: float
) -> None:
    readings = [_reading(value + gap * scatter * 0.3, u=scatter) for gap in gaps]
    found = combine(Measured(value, u), readings)
    weights = [1 / u**2, *(1 / scatter**2 for _ in readings)]
    values = [value, *(reading.reading_kg for reading in readings)]
    mean = sum(w * v for w, v in zip(weights, values, strict=True)) / sum(weights)
    assert found.agrees
    assert found.mass.value == pytest.approx(mean, rel=1e-9)
    assert found.mass.u == pytest.approx(1 / math.sqrt(sum(weights)), rel=1e-9)


@given(u=st.floats(0.01, 3), offset=st.floats(0.01, 1), scatter=st.floats(0.001, 0.5), count=st.integers(1, 30))
def test_weighing_often_never_claims_less_than_the_scale_can_give(
    u: float, offset: float, scatter: float, count: int
) -> None:
    readings = [_reading(10.0, u=scatter, offset=offset) for _ in range(count)]
    found = combine(Measured(10.0, u), readings)
    assert found.mass.u >= min(u, offset / math.sqrt(3)) * (1 - 1e-9)
    assert found.mass.u <= u * (1 + 1e-9)


@pytest.mark.parametrize(("kg", "reason"), [(16.5, "it is damp"), (12.5, "some of it is gone")])
def test_disagreement_is_said_and_not_averaged(kg: float, reason: str) -> None:
    found = combine(Measured(14.7, 0.25), [_reading(kg, u=0.1)])
    assert not found.agrees
    assert found.mass.value == 14.7
    assert found.mass.u95 >= abs(kg - 14.7)
    assert "too far apart to average" in found.sentence
    assert reason in found.sentence


@pytest.mark.parametrize(
    ("material", "by_kg", "reason"),
    [
        (WATER, 4.0, "the container holds more"),
        (WATER, -4.0, "the line stands lower"),
        (SAND, 9.0, "damp or packed"),
        (SAND, -9.0, "lie loose"),
    ],
)
def test_the_likely_reason_depends_on_what_is_inside(material: Material, by_kg: float, reason: str) -> None:
    line = HeightLevel(height_cm=18.0)
    kg = estimate(CARRIER, material, line).mass.value
    weighing = estimate(CARRIER, material, line, readings=[_reading(kg + by_kg)]).weighing
    assert weighing is not None
    assert reason in weighing.sentence


def test_readings_that_contradict_each_other_disagree() -> None:
    found = combine(Measured(15.0, 2.0), [_reading(14.0, u=0.1), _reading(16.0, u=0.1)])
    assert not found.agrees


def test_agreement_names_both_and_the_result_in_the_readers_units() -> None:
    metric = combine(Measured(14.7, 0.15), [_reading(14.6, u=0.1)])
    assert metric.sentence == "The scale says 14.6 kg ± 0.2, the estimate 14.7 kg ± 0.3. Together: 14.63 kg ± 0.17."
    us = combine(Measured(14.7, 0.15), [_reading(14.6, u=0.1)], system=UnitSystem.US)
    assert us.sentence.startswith("The scale says 32.2 lb ± 0.4")


def test_combining_needs_a_reading() -> None:
    with pytest.raises(InputError, match="no reading"):
        combine(Measured(1.0, 0.1), [])


@given(
    size=st.integers(1, 6),
    seed=st.integers(0, 10_000),
    readings=st.integers(1, 5),
)
def test_the_update_agrees_with_least_squares(size: int, seed: int, readings: int) -> None:
    random = np.random.default_rng(seed)
    rows = random.normal(size=(readings, size))
    gaps = random.normal(size=readings)
    scatter = random.uniform(0.1, 2.0, size=readings)
    belief = Belief(size)
    for row, gap, u in zip(rows, gaps, scatter, strict=True):
        belief.observe(row.tolist(), float(gap), float(u))
    # Posterior of N(0, 1) inputs: precision I + Hᵀ R⁻¹ H.
    covariance = np.linalg.inv(np.eye(size) + rows.T @ np.diag(scatter**-2) @ rows)
    shift = covariance @ rows.T @ (gaps / scatter**2)
    weights = random.normal(size=size)
    assert belief.of(weights.tolist()) == pytest.approx(float(weights @ shift), rel=1e-7, abs=1e-9)
    assert belief.variance(weights.tolist()) == pytest.approx(float(weights @ covariance @ weights), rel=1e-7)


def test_a_weighing_of_the_present_fill_shrinks_the_uncertainty_and_heads_the_budget() -> None:
    before = estimate(CARRIER, SAND, FULL)
    after = estimate(CARRIER, SAND, FULL, readings=[reading_on(BATHROOM, 108.9, without_kg=68.0)])
    assert after.weighing is not None
    assert after.weighing.agrees
    assert after.mass.u < 0.15 * before.mass.u
    assert after.mass.origin is Origin.COMBINED
    assert after.budget[0].source == "the weighing itself"
    assert math.fsum(line.u_kg**2 for line in after.budget) == pytest.approx(after.mass.u**2, rel=1e-9)
    assert after.mass.value == pytest.approx(after.contents.value + after.tare.value)
    assert after.advice == "A household scale would not make this much better."


def test_a_weighing_that_disagrees_leaves_the_estimate_and_widens_it() -> None:
    before = estimate(CARRIER, SAND, FULL)
    after = estimate(CARRIER, SAND, FULL, readings=[reading_on(BATHROOM, 101.9, without_kg=68.0)])
    assert after.weighing is not None
    assert not after.weighing.agrees
    assert after.mass.value == before.mass.value
    assert after.mass.u95 >= abs(33.9 - before.mass.value) - 1e-9
    assert "the scale and the estimate disagree" in {line.source for line in after.budget}
    assert math.fsum(line.u_kg**2 for line in after.budget) == pytest.approx(after.mass.u**2, rel=1e-9)


def test_a_reading_below_the_empty_mass_is_refused() -> None:
    with pytest.raises(InputError, match="is less than the empty container weighs"):
        estimate(CARRIER, WATER, FULL, readings=[reading_on(ScaleKind.KITCHEN, 0.2)])


@pytest.mark.parametrize(
    "level", [FULL, BrimLevel(), ShareLevel(share=0.5), VolumeLevel(volume_l=10), HeightLevel(height_cm=18.4)]
)
@pytest.mark.parametrize("material", [WATER, SAND], ids=lambda material: material.id)
def test_an_empty_and_a_full_weighing_improve_every_other_fill(material: Material, level: Level) -> None:
    kg = estimate(CARRIER, material, FULL).mass.value
    readings = [
        reading_on(ScaleKind.KITCHEN, 0.702, at_level=EMPTY),
        reading_on(BATHROOM, 68.0 + kg + 0.1, without_kg=68.0, at_level=FULL),
    ]
    before = estimate(CARRIER, material, level).mass.u
    assert estimate(CARRIER, material, level, readings=readings).mass.u < before
    learned = learn(CARRIER, material, readings)
    assert estimate(learned, material, level).mass.u < before


def test_an_empty_reading_pins_the_tare() -> None:
    learned = learn(CARRIER, WATER, [reading_on(ScaleKind.KITCHEN, 0.702, at_level=EMPTY)])
    assert learned.tare_kg.value == pytest.approx(0.702, abs=0.001)
    assert learned.tare_kg.u < 0.01
    assert learned.brimful_l == CARRIER.brimful_l


def test_a_brimful_reading_of_water_pins_the_capacity() -> None:
    kg = 26.3 * 0.9991 + 0.70
    readings = [
        reading_on(ScaleKind.KITCHEN, 0.702, at_level=EMPTY),
        *(reading_on(BATHROOM, 68.0 + kg, without_kg=68.0, at_level=BrimLevel()) for _ in range(3)),
    ]
    learned = learn(CARRIER, WATER, readings)
    assert learned.brimful_l.value == pytest.approx(26.3, abs=0.1)
    assert learned.brimful_l.u < 0.6 * CARRIER.brimful_l.u


def test_a_full_reading_of_sand_pins_its_density_in_this_container() -> None:
    kg = 25.0 * 1.52 + 0.68
    learned = learn(CARRIER, SAND, [reading_on(BATHROOM, 68.0 + kg, without_kg=68.0, at_level=FULL)])
    (density,) = learned.learned
    assert (density.material_id, density.packing) == ("sand_dry", Packing.LOOSE)
    assert density.kg_l.value == pytest.approx(1.52, abs=0.02)
    again = learn(learned, SAND, [reading_on(BATHROOM, 68.0 + kg, without_kg=68.0, at_level=FULL)])
    assert len(again.learned) == 1
    assert again.learned[0].kg_l.u < density.kg_l.u


def test_a_learned_container_never_claims_less_than_the_readings_themselves() -> None:
    kg = estimate(CARRIER, SAND, FULL).mass.value
    readings = [reading_on(BATHROOM, 68.0 + kg, without_kg=68.0, at_level=FULL)]
    learned = learn(CARRIER, SAND, readings)
    for level in (FULL, ShareLevel(share=0.5), VolumeLevel(volume_l=10.0), HeightLevel(height_cm=18.4)):
        assert estimate(learned, SAND, level).mass.u >= 0.999 * estimate(CARRIER, SAND, level, readings=readings).mass.u


def test_readings_without_a_level_or_that_disagree_teach_nothing() -> None:
    assert learn(CARRIER, WATER, [reading_on(BATHROOM, 93.6, without_kg=68.0)]) == CARRIER
    assert learn(CARRIER, WATER, [reading_on(BATHROOM, 83.6, without_kg=68.0, at_level=FULL)]) == CARRIER


def test_earlier_weighings_that_do_not_fit_are_left_out_and_said() -> None:
    before = estimate(CARRIER, WATER, FULL)
    earlier = reading_on(BATHROOM, 83.6, without_kg=68.0, at_level=FULL)
    after = estimate(CARRIER, WATER, FULL, readings=[earlier])
    assert after.weighing is not None
    assert not after.weighing.agrees
    assert after.mass.value == before.mass.value
    assert after.mass.u > before.mass.u
    assert any("left out" in note for note in after.cautions)


def test_the_same_level_filled_again_keeps_its_own_doubt_of_filling() -> None:
    kg = estimate(CARRIER, WATER, FULL).mass.value
    again = estimate(CARRIER, WATER, FULL, readings=[reading_on(BATHROOM, 68 + kg, without_kg=68.0, at_level=FULL)])
    now = estimate(CARRIER, WATER, FULL, readings=[reading_on(BATHROOM, 68 + kg, without_kg=68.0)])
    assert again.mass.u > now.mass.u
    assert any(line.source == "filling to the mark" for line in again.budget[:2])


def test_the_order_of_readings_does_not_matter() -> None:
    readings = [
        reading_on(ScaleKind.KITCHEN, 0.702, at_level=EMPTY),
        reading_on(BATHROOM, 108.7, without_kg=68.0, at_level=FULL),
        reading_on(BATHROOM, 88.9, without_kg=68.0, at_level=ShareLevel(share=0.5)),
    ]
    found = [estimate(CARRIER, SAND, FULL, readings=order).mass for order in itertools.permutations(readings)]
    assert all(mass.value == pytest.approx(found[0].value, rel=1e-9) for mass in found)
    assert all(mass.u == pytest.approx(found[0].u, rel=1e-9) for mass in found)


def test_what_was_learned_covers_the_truth_about_as_often_as_it_says() -> None:
    """Draw true containers and readings from the stated doubts; u95 must hold the true mass 95 times in 100."""
    random = np.random.default_rng(7)
    inside = 0
    rounds = 400
    now = predict(CARRIER, SAND, ShareLevel(share=0.5), 15.0, Packing.LOOSE)
    then = predict(CARRIER, SAND, FULL, 15.0, Packing.LOOSE)
    setting = Setting(container=CARRIER, material=SAND, temperature_c=15.0, packing=Packing.LOOSE)
    for _ in range(rounds):
        errors = random.normal(size=len(then.kg))
        own = random.normal() * then.own_u_kg
        kg = then.mass_kg + float(np.dot(errors, then.shared_kg)) + own + random.normal() * 0.2
        belief = fresh()
        observe_earlier(belief, setting, [_reading(kg, u=0.2, level=FULL)])
        row = mass_row(now)
        truth = now.mass_kg + float(np.dot(errors, now.kg))
        half_width = 2 * math.sqrt(belief.variance(row))
        inside += abs(truth - now.mass_kg - belief.of(row)) <= half_width
    assert 0.93 * rounds <= inside <= 0.98 * rounds
