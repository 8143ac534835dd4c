"""Buttons and chips: pressed by hand and by key, named, literal in their words."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QWidget
from pytestqt.qtbot import QtBot

from gui.theme import LIGHT, Icon
from gui.widgets import (
    ActionChip,
    Chip,
    ChoiceChip,
    LinkButton,
    PictureButton,
    PrimaryButton,
    RemovableChip,
    SecondaryButton,
    Tone,
)
from gui.widgets.buttons import label_of
from tests.gui import hand
from tests.gui.looking import colours_in, shows

WORDS = "Fill & weigh"


def pressable() -> list[QAbstractButton]:
    return [
        PrimaryButton(WORDS),
        SecondaryButton(WORDS, sign=Icon.PENCIL),
        LinkButton(WORDS),
        PictureButton(Icon.PIN, WORDS),
        ChoiceChip(WORDS),
        ActionChip(WORDS),
        RemovableChip(WORDS),
    ]


@pytest.fixture(params=range(7))
def button(request: pytest.FixtureRequest, qtbot: QtBot) -> QAbstractButton:
    made: QAbstractButton = pressable()[request.param]
    qtbot.addWidget(made)
    made.resize(made.sizeHint())
    made.show()
    return made


def test_a_click_presses(button: QAbstractButton, qtbot: QtBot) -> None:
    with qtbot.waitSignal(button.clicked):
        hand.click(button)


def test_space_presses(button: QAbstractButton, qtbot: QtBot) -> None:
    button.setFocus()
    with qtbot.waitSignal(button.clicked):
        hand.key(button, Qt.Key.Key_Space)


def test_an_ampersand_is_an_ampersand_and_no_shortcut(button: QAbstractButton) -> None:
    heard = QAccessible.queryAccessibleInterface(button)
    assert WORDS in heard.text(QAccessible.Text.Name)
    assert button.shortcut().isEmpty()
    if button.text():
        assert label_of(button) == WORDS


def test_the_keyboard_is_seen(button: QAbstractButton, qtbot: QtBot) -> None:
    button.clearFocus()
    plain = button.grab().toImage()
    button.setFocus(Qt.FocusReason.TabFocusReason)
    qtbot.waitUntil(button.hasFocus)
    assert button.grab().toImage() != plain


def test_words_fit_their_button(button: QAbstractButton) -> None:
    words = button.fontMetrics().horizontalAdvance(button.text().replace("&&", "&"))
    assert button.sizeHint().width() > words


def test_a_button_that_is_off_cannot_be_pressed(qtbot: QtBot) -> None:
    made = PrimaryButton("Not now")
    made.setEnabled(False)
    qtbot.addWidget(made)
    made.show()
    with qtbot.assertNotEmitted(made.clicked):
        hand.click(made)
    assert LIGHT.accent not in colours_in(made)


def test_a_choice_is_kept_and_shown(qtbot: QtBot) -> None:
    chip = ChoiceChip("too loud")
    qtbot.addWidget(chip)
    chip.show()
    hand.click(chip)
    assert chip.isChecked()
    assert shows(chip, LIGHT.selected)


def test_in_a_group_only_one_is_chosen(qtbot: QtBot) -> None:
    host = QWidget()
    qtbot.addWidget(host)
    group = QButtonGroup(host)
    chips = [ChoiceChip(words, parent=host) for words in ("one", "two")]
    for chip in chips:
        group.addButton(chip)
        hand.click(chip)
    assert [chip.isChecked() for chip in chips] == [False, True]


def test_a_removable_chip_says_what_pressing_it_does(qtbot: QtBot) -> None:
    chip = RemovableChip("deep knee bend")
    qtbot.addWidget(chip)
    assert chip.accessibleName() == "Remove deep knee bend"


@pytest.mark.parametrize("tone", list(Tone))
def test_each_tone_has_its_ground(tone: Tone, qtbot: QtBot) -> None:
    chip = Chip("met", tone)
    qtbot.addWidget(chip)
    chip.resize(chip.sizeHint())
    assert shows(chip, getattr(LIGHT, tone.value))
    assert chip.tone() is tone


def test_a_chip_in_a_narrow_place_shortens_its_words_and_keeps_its_shape(qtbot: QtBot) -> None:
    chip = Chip("a caution nobody could ever fit in here", Tone.FAIR)
    qtbot.addWidget(chip)
    chip.setGeometry(QRect(0, 0, 60, chip.sizeHint().height()))
    assert shows(chip, LIGHT.fair)
    assert chip.minimumSizeHint().width() <= 60


def test_a_chip_to_read_is_text_to_a_screen_reader(qtbot: QtBot) -> None:
    chip = Chip("weighed 3 Nov", Tone.GOOD)
    qtbot.addWidget(chip)
    heard = QAccessible.queryAccessibleInterface(chip)
    assert heard.role() is QAccessible.Role.StaticText
    assert heard.text(QAccessible.Text.Name) == "weighed 3 Nov"
