"""Sentences in the person's units, with no line broken inside a quantity."""

from __future__ import annotations

import pytest

from core.quantity.display import UnitSystem
from gui.desk.wording import NO_BREAK, Wording, counted, glued

METRIC, US = Wording(UnitSystem.METRIC), Wording(UnitSystem.US)


def plain(text: str) -> str:
    return text.replace(NO_BREAK, " ")


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("4 × 9–15 at 28.2 kg ± 0.8", "4_×_9–15 at 28.2_kg_±_0.8"),
        ("38 min, 3 × 40 s", "38_min, 3_×_40_s"),
        ("6 % of you, 2 to 10 %", "6_% of you, 2 to 10_%"),
        ("short by 35 min: walk more", "short by 35_min: walk more"),
        ("2 × Water carrier", "2 × Water carrier"),
        ("3 kings and 4 suits", "3 kings and 4 suits"),
    ],
)
def test_no_line_ends_between_a_number_and_its_unit(text: str, shown: str) -> None:
    assert glued(text) == shown.replace("_", NO_BREAK)


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("28.2 kg is the load this house makes", "62.2 lb is the load this house makes"),
        ("22.8 kg ± 0.4", "50.3 lb ± 0.9"),
        ("Bench, 45 cm high: rated for 150 kg.", "Bench, 17.7 in high: rated for 330.7 lb."),
        ("4.0 to 6.0 kg is a step of 50 %", "8.82 to 13.2 lb is a step of 50 %"),
        ("it needs 2.5 m² of floor", "it needs 2.5 m² of floor"),
        ("a clear 20 m and 13 L", "a clear 22 yd and 3.43 gal"),
        ("Forty seconds, 20 s off, effort 8", "Forty seconds, 20 s off, effort 8"),
    ],
)
def test_quantities_are_written_anew_in_us_units(text: str, shown: str) -> None:
    assert plain(US.sentence(text)) == shown
    assert plain(METRIC.sentence(text)) == text


def test_what_the_person_named_stays_as_typed() -> None:
    wording = Wording(UnitSystem.US, ("Coal bag 10 kg", "Daypack 28 L", "Stool"))
    text = "coal bag 10 kg and Daypack 28 L: 10 kg in all"
    assert plain(wording.sentence(text)) == "coal bag 10 kg and Daypack 28 L: 22.0 lb in all"


def test_one_is_not_many() -> None:
    assert [plain(counted(number, "fill")) for number in (0, 1, 2)] == ["0 fills", "1 fill", "2 fills"]
    assert plain(counted(2, "day of rest", "days of rest")) == "2 days of rest"
