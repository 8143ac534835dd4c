"""Own kinds of things: copied, changed in the person's units, checked, used in the household; files in and out."""

from __future__ import annotations

from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from core.house.own import OwnKind
from core.knowledge import Catalog
from core.store.commands import ChangeSettings
from core.store.values import Settings, Units
from gui.desk.desk import Desk, Jump
from gui.household import HouseholdScreen
from gui.own import OwnScreen
from gui.own.field import SetOf
from gui.shell.entry import ScreenName
from tests.gui import hand
from tests.gui.own.hands import begin, checked, faults, line, save, write


def named(catalog: Catalog, icon: str, *, vessel: bool) -> str:
    """The name of a kind with this picture that can be filled, or can't."""
    kinds = (kind for kind in catalog.kinds if kind.icon == icon)
    return next(kind.name for kind in kinds if (kind.facts.container is not None) is vessel)


@pytest.fixture
def sack(screen: OwnScreen, catalog: Catalog, qtbot: QtBot) -> OwnScreen:
    """A new kind begun from a sack that is not filled."""
    begin(screen, OwnKind.THING, "Feed bundle", named(catalog, "sack", vessel=False), qtbot)
    return screen


def test_a_kind_is_copied_changed_and_saved(sack: OwnScreen, desk: Desk, qtbot: QtBot) -> None:
    write(sack, "mass_kg", "12.5 kg ± 0.3 kg", qtbot)
    write(sack, "length_cm", "58 cm", qtbot)
    save(sack, qtbot)
    kind = desk.catalog.kind_by_id["own_feed_bundle"]
    assert kind.facts.mass is not None
    assert kind.facts.mass.value == 12.5
    assert kind.facts.length_cm == 58.0
    assert kind.group == "own"


def test_a_saved_kind_joins_the_household(sack: OwnScreen, desk: Desk, qtbot: QtBot) -> None:
    jumps: list[Jump] = []
    desk.jump.connect(jumps.append)
    save(sack, qtbot)
    sack.toast.action_wanted.emit()
    added = [thing for thing in desk.house().things if thing.kind_id == "own_feed_bundle"]
    assert len(added) == 1
    assert jumps == [Jump(screen=ScreenName.HOUSEHOLD, thing_id=added[0].id)]


def test_a_vessel_keeps_the_shape_it_was_copied_with(
    screen: OwnScreen, desk: Desk, catalog: Catalog, qtbot: QtBot
) -> None:
    original = named(catalog, "bucket", vessel=True)
    begin(screen, OwnKind.THING, "Coal scuttle", original, qtbot)
    write(screen, "litres", "9 L ± 0.5 L", qtbot)
    save(screen, qtbot)
    facts = desk.catalog.kind_by_id["own_coal_scuttle"].facts
    before = next(kind for kind in catalog.kinds if kind.name == original).facts
    assert facts.container is not None
    assert before.container is not None
    assert facts.container.nominal_l.value == 9.0
    assert type(facts.container.shape) is type(before.container.shape)


def test_what_is_wrong_with_a_kind_is_said_beside_its_field(sack: OwnScreen, qtbot: QtBot) -> None:
    write(sack, "mass_kg", "120 kg ± 1 kg", qtbot)
    assert "more than anyone lifts" in faults(sack)["mass_kg"]
    write(sack, "mass_kg", "heavy", qtbot)
    assert "is not a mass" in faults(sack)["mass_kg"]
    write(sack, "mass_kg", "10 kg ± 0.2 kg", qtbot)
    hazards = sack.editor.field("hazards")
    cautions = sack.editor.field("cautions")
    assert isinstance(hazards, SetOf)
    if not hazards.chips["sharp"].isChecked():
        hand.click(hazards.chips["sharp"])
    cautions.edit.clear()  # type: ignore[attr-defined]  # a field of lines
    checked(sack, qtbot)
    assert "needs a caution" in faults(sack)["cautions"]


def test_a_kind_is_shown_in_the_units_one_reads_and_kept_when_nobody_changes_it(
    sack: OwnScreen, desk: Desk, qtbot: QtBot
) -> None:
    write(sack, "mass_kg", "12.5 kg ± 0.3 kg", qtbot)
    save(sack, qtbot)
    before = desk.house().own
    assert desk.do(ChangeSettings(Settings(units=Units.US, person_id="ines")))
    hand.click(sack.list.chips["own_feed_bundle"])
    checked(sack, qtbot)
    assert "lb" in line(sack, "mass_kg").line.text()
    save(sack, qtbot)
    assert desk.house().own == before


def test_everything_goes_into_a_file_and_comes_back(sack: OwnScreen, desk: Desk, qtbot: QtBot, tmp_path: Path) -> None:
    save(sack, qtbot)
    before = desk.house().own
    file = tmp_path / "own.toml"
    sack.give_out(file)
    assert "[[own_kinds]]" in file.read_text(encoding="utf-8")
    hand.click(sack.editor.remove)
    assert desk.house().own == ()
    sack.take_in(file)
    assert desk.house().own == before
    assert sack.toast.sentence() == "Took in 1 own entry."
    desk.undo()
    assert desk.house().own == ()


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("fillmark = 1\n", "holds no movements or kinds of things"),
        ("no toml at all", "own.toml"),
        ('fillmark = 1\n[[own_kinds]]\nname = "X"\n', "own_kinds number 1"),
    ],
)
def test_a_file_that_cannot_be_used_is_refused_in_a_sentence(
    screen: OwnScreen, desk: Desk, tmp_path: Path, text: str, words: str
) -> None:
    file = tmp_path / "own.toml"
    file.write_text(text, encoding="utf-8")
    screen.take_in(file)
    assert words in screen.toast.sentence()
    assert desk.house().own == ()


def test_a_place_that_cannot_be_written_is_said(sack: OwnScreen, qtbot: QtBot, tmp_path: Path) -> None:
    save(sack, qtbot)
    sack.give_out(tmp_path / "missing" / "own.toml")
    assert "can’t be written" in sack.toast.sentence()


def test_the_household_leads_to_an_own_kind(desk: Desk, qtbot: QtBot) -> None:
    jumps: list[Jump] = []
    desk.jump.connect(jumps.append)
    house = HouseholdScreen(desk)
    qtbot.addWidget(house)
    house.show()
    hand.type_in(house.add.field.edit, "coal scuttle")
    hand.click(house.page.own)
    assert jumps == [Jump(screen=ScreenName.OWN, own=OwnKind.THING, name="coal scuttle")]
    house.possible.close()
