"""The shipped tests and norms are whole; a broken file is named by file, entry and field."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from catalog.load import load_catalog
from catalog.protocols import find_protocol_errors, load_norms, load_protocols
from core.assess.model import Counted
from core.errors import InputError
from core.knowledge import Catalog

PROTOCOL = """
[[protocol]]
id = "hop"
name = "Hops in a minute"
counted = "reps"
low = 0
high = 200
exercise = "push_up"
minutes = 3
steps = ["Stand on one leg.", "Hop and count."]
stop = ["Any pain in the foot."]
beside = [{ key = "pulse_bpm", name = "Pulse", unit = "bpm", low = 40, high = 220 }]
same = ["pulse_bpm"]
sources = ["test_choice_custom"]
"""
NORM = """
[[norm]]
id = "hop_table"
protocol = "hop"
name = "Hops of invented people"
bands = ["low", "high"]
standing = "seen"
note = "Invented for the test."
sources = ["test_choice_custom"]
rows = [{ sex = "male", ages = [20, 29], starts = [30] }, { sex = "female", ages = [20, 29], starts = [25] }]
"""


@pytest.fixture(scope="module")
def catalog() -> Catalog:
    return load_catalog()


def test_every_shipped_test_is_complete(catalog: Catalog) -> None:
    assert len(catalog.protocols) >= 10
    for protocol in catalog.protocols:
        assert protocol.steps
        assert protocol.stop_rules
        assert protocol.things
        assert protocol.source_ids
        assert protocol.exercise_id in catalog.exercise_by_id


def test_the_tests_asked_for_are_all_there(catalog: Catalog) -> None:
    wanted = {"push_up", "squat_load", "step_up_3_min", "mile_walk", "mile_jog", "loaded_walk", "plank"}
    assert wanted | {"chair_stand_30"} <= set(catalog.protocol_by_id)


def test_tests_against_a_load_or_a_step_must_be_done_alike(catalog: Catalog) -> None:
    for protocol_id, keys in {"squat_load": ("load_kg",), "step_up_3_min": ("step_cm",)}.items():
        assert catalog.protocol_by_id[protocol_id].same_beside == keys


def test_a_time_is_better_when_it_is_shorter_unless_it_is_held(catalog: Catalog) -> None:
    for protocol in catalog.protocols:
        assert protocol.more_is_better is (protocol.counted is not Counted.MINUTES)


def test_a_valid_test_and_norm_are_read_as_written() -> None:
    (protocol,) = load_protocols(PROTOCOL)
    (table,) = load_norms(NORM)
    assert (protocol.name, protocol.unit, protocol.same_beside) == ("Hops in a minute", "reps", ("pulse_bpm",))
    assert [row.starts for row in table.rows] == [(30.0,), (25.0,)]


@pytest.mark.parametrize(
    ("load", "text", "old", "new", "field"),
    [
        (load_protocols, PROTOCOL, 'counted = "reps"', 'counted = "hops"', "counted"),
        (load_protocols, PROTOCOL, "high = 200", "high = -1", "high"),
        (load_protocols, PROTOCOL, "low = 0", "low = 300", ""),
        (load_protocols, PROTOCOL, '"Any pain in the foot."', "", "stop"),
        (load_protocols, PROTOCOL, 'same = ["pulse_bpm"]', 'same = ["load_kg"]', ""),
        (load_protocols, PROTOCOL, "minutes = 3", "minutes = 3\ncolour = 1", "colour"),
        (load_protocols, PROTOCOL, 'sources = ["test_choice_custom"]', "sources = []", "sources"),
        (load_norms, NORM, "starts = [30]", "starts = [30, 40]", ""),
        (load_norms, NORM, "starts = [30]", "starts = [inf]", "rows"),
        (load_norms, NORM, 'sex = "female"', 'sex = "male"', ""),
        (load_norms, NORM, 'standing = "seen"', 'standing = "sure"', "standing"),
    ],
)
def test_a_broken_entry_is_named_by_entry_and_field(
    load: Callable[[str], object], text: str, old: str, new: str, field: str
) -> None:
    assert old in text
    with pytest.raises(InputError, match=rf"entry hop\w*.*{field}"):
        load(text.replace(old, new))


def test_an_id_used_twice_is_a_fault() -> None:
    with pytest.raises(InputError, match="used twice"):
        load_protocols(PROTOCOL + PROTOCOL)


def test_mentions_of_what_is_not_there_are_faults(catalog: Catalog) -> None:
    protocols = load_protocols(PROTOCOL.replace('"push_up"', '"moon_walk"'))
    norms = load_norms(NORM.replace('protocol = "hop"', 'protocol = "skip"'))
    assert list(find_protocol_errors(protocols, norms, catalog.exercises, frozenset())) == [
        "hop: the movement moon_walk is not there",
        "hop: the source test_choice_custom is not listed",
        "hop_table: the test skip is not there",
        "hop_table: the source test_choice_custom is not listed",
    ]
