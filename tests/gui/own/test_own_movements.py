"""Own movements: begun from one of the catalog, changed with faults beside the fields, saved, used, copied, removed."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QMenu
from pytestqt.qtbot import QtBot

from core.exercise.model import Demand, DoseKind, Muscle, Pattern
from core.house.own import OwnKind
from core.knowledge import Catalog
from gui.desk.desk import Desk, Jump
from gui.own import OwnScreen
from gui.own.field import ChoiceOf, FlagsOf, LinesOf, SetOf
from gui.own.needs import NeedsOf
from gui.own.neighbours import NeighboursOf
from gui.own.weights import WeightsOf
from gui.shell.entry import ScreenName
from gui.widgets import RemovableChip
from tests.gui import hand
from tests.gui.own.hands import begin, checked, faults, line, save, write


@pytest.fixture
def shove(screen: OwnScreen, qtbot: QtBot) -> OwnScreen:
    """A new movement begun from the push-up."""
    begin(screen, OwnKind.EXERCISE, "Lock beam push", "Push-up", qtbot)
    return screen


def choose(field: object, words: str) -> None:
    """Pick from a list as a hand does."""
    assert isinstance(field, ChoiceOf)
    box = field.choice.box
    index = next(at for at in range(box.count()) if box.itemText(at) == words)
    box.setCurrentIndex(index)
    box.activated.emit(index)


def test_a_new_movement_begins_as_a_copy_with_its_own_name(shove: OwnScreen) -> None:
    assert shove.is_editing()
    assert shove.editor.title() == "A new movement"
    assert line(shove, "name").line.text() == "Lock beam push"
    cues = shove.editor.field("cues")
    assert isinstance(cues, LinesOf)
    assert cues.edit.toPlainText()
    assert faults(shove) == {}
    assert shove.editor.save.isEnabled()


def test_a_saved_movement_is_in_the_catalog_with_everything_copied(
    shove: OwnScreen, desk: Desk, catalog: Catalog, qtbot: QtBot
) -> None:
    save(shove, qtbot)
    own, original = desk.catalog.exercise_by_id["own_lock_beam_push"], catalog.exercise_by_id["push_up"]
    assert own.name == "Lock beam push"
    for fact in ("patterns", "dose", "sides", "needs", "demands", "level", "typical", "cues", "cautions"):
        assert getattr(own, fact) == getattr(original, fact), fact
    assert own.aliases == ()
    assert own.body.share == original.body.share
    assert not own.staple
    assert shove.editor.title() == "Lock beam push"
    assert list(shove.list.chips) == ["own_lock_beam_push"]


def test_every_kind_of_field_is_kept(shove: OwnScreen, desk: Desk, qtbot: QtBot) -> None:
    editor = shove.editor
    write(shove, "aliases", "gate push, beam shove", qtbot)
    write(shove, "typical", "5-9", qtbot)
    write(shove, "body", "60 %", qtbot)
    choose(editor.field("level"), "3 · some practice")
    demands, place = editor.field("demands"), editor.field("outdoors_only")
    assert isinstance(demands, SetOf)
    assert isinstance(place, FlagsOf)
    hand.click(demands.chips["strong_grip"])
    hand.click(place.chips["outdoors_only"])
    muscles = editor.field("muscles")
    assert isinstance(muscles, WeightsOf)
    hand.click(muscles.rows[-1].drop)
    save(shove, qtbot)
    own = desk.catalog.exercise_by_id["own_lock_beam_push"]
    assert own.aliases == ("gate push", "beam shove")
    assert own.typical == (5.0, 9.0)
    assert own.body.share == 0.6
    assert own.level == 3
    assert Demand.STRONG_GRIP in own.demands
    assert own.outdoors_only
    assert own.patterns[0] == (Pattern.PUSH_LEVEL, 1.0)
    assert dict(own.muscles)[Muscle.CHEST] == 1.0


def test_what_is_wrong_is_said_beside_its_field_while_typing(shove: OwnScreen, qtbot: QtBot) -> None:
    write(shove, "name", "Push-up", qtbot)
    assert faults(shove) == {"name": "“Push-up” already means Push-up; choose another name."}
    assert not shove.editor.save.isEnabled()
    write(shove, "name", "Lock beam push", qtbot)
    assert faults(shove) == {}
    write(shove, "aliases", "press-up", qtbot)
    assert faults(shove) == {"aliases": "“press-up” already means Push-up; choose another name."}
    write(shove, "aliases", "", qtbot)
    write(shove, "typical", "many", qtbot)
    assert "is no number" in faults(shove)["typical"]
    write(shove, "typical", "15 to 8", qtbot)
    assert faults(shove) == {"typical": "The usual dose must be low, high; change it."}
    write(shove, "typical", "8 to 15", qtbot)
    write(shove, "body", "130 %", qtbot)
    assert "more than all of it" in faults(shove)["body"]
    assert not shove.editor.save.isEnabled()


def test_an_empty_name_is_said_plainly(shove: OwnScreen, qtbot: QtBot) -> None:
    write(shove, "name", "", qtbot)
    assert "at least 2 letters" in faults(shove)["name"]


def test_two_leading_patterns_are_refused_at_the_patterns(shove: OwnScreen, qtbot: QtBot) -> None:
    patterns = shove.editor.field("patterns")
    assert isinstance(patterns, WeightsOf)
    hand.click(patterns.add)
    added = patterns.rows[-1]
    added.share.show_index(0)
    added.share.box.activated.emit(0)
    checked(shove, qtbot)
    assert list(faults(shove)) == ["patterns"]


def test_a_movement_counted_by_time_needs_no_seconds_of_a_repetition(
    shove: OwnScreen, desk: Desk, qtbot: QtBot
) -> None:
    choose(shove.editor.field("dose"), "time, in seconds")
    write(shove, "typical", "20 to 60 s", qtbot)
    save(shove, qtbot)
    own = desk.catalog.exercise_by_id["own_lock_beam_push"]
    assert (own.dose, own.rep_s, own.typical) == (DoseKind.TIME, 1.0, (20.0, 60.0))


def test_needs_are_added_changed_and_left_out(shove: OwnScreen, desk: Desk, qtbot: QtBot) -> None:
    needs = shove.editor.field("needs")
    assert isinstance(needs, NeedsOf)
    before = len(needs.cards)
    hand.click(needs.add)
    menu = needs.add.findChildren(QMenu)[-1]
    next(action for action in menu.actions() if action.text() == "step on").trigger()
    menu.close()
    card = needs.cards[-1]
    card.range.edit.selectAll()
    hand.type_in(card.range.edit, "20 to 30 cm")
    hand.click(card.optional)
    save(shove, qtbot)
    own = desk.catalog.exercise_by_id["own_lock_beam_push"]
    assert len(own.needs) == before + 1
    step = own.needs[-1]
    assert (step.uses[0].value, step.height_cm, step.bears, step.optional) == ("step", (20.0, 30.0), 1.0, True)
    fresh = shove.editor.field("needs")
    assert isinstance(fresh, NeedsOf)
    hand.click(fresh.cards[-1].drop)
    save(shove, qtbot)
    assert len(desk.catalog.exercise_by_id["own_lock_beam_push"].needs) == before


def test_a_load_and_its_range_are_kept_and_can_be_changed(screen: OwnScreen, desk: Desk, qtbot: QtBot) -> None:
    original = next(
        one for one in desk.catalog.exercises if one.load_need is not None and not one.needs_gym and len(one.needs) == 1
    )
    begin(screen, OwnKind.EXERCISE, "Feed sack lift", original.name, qtbot)
    save(screen, qtbot)
    assert desk.catalog.exercise_by_id["own_feed_sack_lift"].needs == original.needs
    needs = screen.editor.field("needs")
    assert isinstance(needs, NeedsOf)
    edit = needs.cards[0].range.edit
    edit.selectAll()
    hand.type_in(edit, "10 to 25 % of your body mass")
    save(screen, qtbot)
    assert desk.catalog.exercise_by_id["own_feed_sack_lift"].needs[0].mass_share == (0.1, 0.25)


def test_a_need_nobody_can_read_is_said_below_the_needs(screen: OwnScreen, desk: Desk, qtbot: QtBot) -> None:
    original = next(one for one in desk.catalog.exercises if one.load_need is not None and not one.needs_gym)
    begin(screen, OwnKind.EXERCISE, "Feed sack lift", original.name, qtbot)
    needs = screen.editor.field("needs")
    assert isinstance(needs, NeedsOf)
    edit = needs.cards[0].range.edit
    edit.selectAll()
    hand.type_in(edit, "light")
    checked(screen, qtbot)
    assert "is no range" in faults(screen)["needs"]


def test_neighbours_are_found_by_typing_and_lead_back(shove: OwnScreen, desk: Desk, qtbot: QtBot) -> None:
    easier = shove.editor.field("easier")
    assert isinstance(easier, NeighboursOf)
    before = easier.names()
    hand.click(easier.findChildren(RemovableChip)[0])
    assert easier.names() == before[1:]
    hand.type_in(easier.field.edit, before[0].lower())
    hand.key(easier.field.edit, Qt.Key.Key_Return)
    assert easier.names() == (*before[1:], before[0])
    save(shove, qtbot)
    below = next(one for one in desk.catalog.exercises if one.name == before[0])
    assert "own_lock_beam_push" in below.harder


def test_a_saved_movement_is_looked_at_in_swap(shove: OwnScreen, desk: Desk, qtbot: QtBot) -> None:
    jumps: list[Jump] = []
    desk.jump.connect(jumps.append)
    save(shove, qtbot)
    assert shove.toast.sentence() == "Added Lock beam push."
    shove.toast.action_wanted.emit()
    hand.click(shove.back)
    assert jumps == [
        Jump(screen=ScreenName.SWAP, exercise_id="own_lock_beam_push"),
        Jump(screen=ScreenName.SWAP),
    ]


def test_a_movement_is_changed_copied_and_removed_and_each_can_be_undone(
    shove: OwnScreen, desk: Desk, qtbot: QtBot
) -> None:
    save(shove, qtbot)
    write(shove, "name", "Lock gate push", qtbot)
    save(shove, qtbot)
    assert [entry.name for entry in desk.house().own] == ["Lock gate push"]
    hand.click(shove.editor.copy)
    checked(shove, qtbot)
    assert line(shove, "name").line.text() == "My lock gate push"
    save(shove, qtbot)
    assert [entry.name for entry in desk.house().own] == ["Lock gate push", "My lock gate push"]
    hand.click(shove.editor.remove)
    assert [entry.name for entry in desk.house().own] == ["Lock gate push"]
    assert not shove.is_editing()
    desk.undo()
    assert len(desk.house().own) == 2
    hand.click(shove.list.chips["own_lock_beam_push"])
    checked(shove, qtbot)
    assert shove.editor.title() == "Lock gate push"


def test_leaving_saves_nothing(shove: OwnScreen, desk: Desk, qtbot: QtBot) -> None:
    hand.click(shove.editor.leave)
    assert desk.house().own == ()
    assert not shove.is_editing()


def test_a_jump_begins_with_the_name_typed_elsewhere(screen: OwnScreen) -> None:
    screen.show_jump(Jump(screen=ScreenName.OWN, own=OwnKind.EXERCISE, name="towpath squat"))
    assert screen.is_beginning()
    assert screen.copy.name.text() == "towpath squat"


def test_a_jump_to_an_original_opens_a_copy_and_to_an_own_one_the_entry(
    screen: OwnScreen, desk: Desk, qtbot: QtBot
) -> None:
    screen.show_jump(Jump(screen=ScreenName.OWN, own=OwnKind.EXERCISE, exercise_id="push_up"))
    checked(screen, qtbot)
    assert line(screen, "name").line.text() == "My push-up"
    save(screen, qtbot)
    screen.show_jump(Jump(screen=ScreenName.OWN, own=OwnKind.EXERCISE, exercise_id="own_my_push_up"))
    checked(screen, qtbot)
    assert screen.editor.title() == "My push-up"
