"""Only tests a person can do here are chosen, and what is left out says why."""

from __future__ import annotations

from dataclasses import replace

import pytest

from core.assess.choose import LeftOut, Possible, possible_test, usual_tests
from core.exercise.model import Demand
from core.fit.setting import Setting
from core.house.model import Experience, House, Person
from core.knowledge import Catalog
from tests.dipper import INES, dipper, without


def settings(catalog: Catalog, person: Person = INES, house: House | None = None) -> list[Setting]:
    home = house or dipper()
    return [Setting(home, person, catalog.material_by_id, place) for place in home.places]


def chosen(catalog: Catalog, person: Person = INES, age: int | None = 39, house: House | None = None) -> list[str]:
    found = usual_tests(
        catalog.protocol_by_id,
        catalog.exercise_by_id,
        settings(catalog, person, house),
        person,
        age=age,
        loaded_walks=True,
    )
    return [one.protocol.id for one in found]


def test_a_baseline_has_one_test_of_each_kind(catalog: Catalog) -> None:
    assert chosen(catalog) == ["push_up", "squat_load", "plank", "mile_jog", "loaded_walk"]


def test_someone_new_or_sparing_impact_walks_the_mile(catalog: Catalog) -> None:
    assert "mile_walk" in chosen(catalog, replace(INES, experience=Experience.NEW))
    assert "mile_walk" in chosen(catalog, replace(INES, spares=frozenset({Demand.IMPACT})))


@pytest.mark.parametrize(("age", "there"), [(None, False), (59, False), (60, True), (80, True)])
def test_the_chair_stand_is_for_older_adults(catalog: Catalog, age: int | None, there: bool) -> None:
    assert ("chair_stand_30" in chosen(catalog, age=age)) is there


def test_what_is_spared_is_not_tested(catalog: Catalog) -> None:
    spares = frozenset({Demand.LOADED_WRIST_EXTENSION})
    assert not set(chosen(catalog, replace(INES, spares=spares))) & {"push_up", "push_up_knees"}
    found = possible_test(
        catalog.protocol_by_id["push_up"], catalog.exercise_by_id, settings(catalog, replace(INES, spares=spares)), 39
    )
    assert isinstance(found, LeftOut)
    assert found.why == "you spare loaded wrist extension"


def test_without_a_bag_there_is_no_loaded_walk(catalog: Catalog) -> None:
    assert "loaded_walk" not in chosen(catalog, house=without(dipper(), "daypack"))


def test_a_possible_test_names_the_places_for_it(catalog: Catalog) -> None:
    found = possible_test(catalog.protocol_by_id["mile_walk"], catalog.exercise_by_id, settings(catalog), 39)
    assert isinstance(found, Possible)
    assert found.place_ids == ("towpath",)
