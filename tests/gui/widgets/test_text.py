"""Texts: never markup by accident, never cut without a way to read the whole."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QLineEdit, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from gui.theme import DARK, TextRole, ThemeMode, role_font
from gui.theme import Theme as ThemeObject
from gui.widgets import ElidedText, Sentence, Span, Text
from gui.widgets.drawing import text_width, wrapped
from tests.gui import hand
from tests.gui.looking import settle

TRICK = '<b>bold</b> & <img src="file:///etc/passwd">'


def test_what_a_person_typed_is_shown_as_typed(qtbot: QtBot) -> None:
    label = Text(TRICK)
    qtbot.addWidget(label)
    assert label.textFormat() is Qt.TextFormat.PlainText
    assert label.text() == TRICK


def test_a_sentence_never_reads_a_persons_words_as_markup(qtbot: QtBot) -> None:
    sentence = Sentence((Span(text=TRICK), Span(text="why", link="a&b")))
    qtbot.addWidget(sentence)
    assert "<img" not in sentence.text()
    assert "<b>" not in sentence.text()
    assert sentence.plain_text() == TRICK + "why"
    assert sentence.accessibleName() == TRICK + "why"


def test_a_link_is_followed_by_key(qtbot: QtBot) -> None:
    sentence = Sentence((Span(text="All 23 "), Span(text="and why", link="left-out")))
    host = QWidget()
    qtbot.addWidget(host)
    before = QLineEdit(host)
    column = QVBoxLayout(host)
    column.addWidget(before)
    column.addWidget(sentence)
    host.show()
    host.activateWindow()
    before.setFocus()
    qtbot.waitUntil(before.hasFocus)
    hand.key(before, Qt.Key.Key_Tab)
    assert sentence.selectedText() == "and why"
    with qtbot.waitSignal(sentence.link_followed) as told:
        hand.key(sentence, Qt.Key.Key_Return)
    assert told.args == ["left-out"]


def test_tab_walks_over_links_and_out_at_both_ends(qtbot: QtBot) -> None:
    holder = QWidget()
    qtbot.addWidget(holder)
    column = QVBoxLayout(holder)
    before, after = QLineEdit(), QLineEdit()
    sentence = Sentence((Span(text="Show ", link="show"), Span(text="or"), Span(text=" hide", link="hide")))
    for widget in (before, sentence, after):
        column.addWidget(widget)
    holder.show()
    holder.activateWindow()
    before.setFocus()
    settle()
    seen = []
    for pressed in (Qt.Key.Key_Tab, Qt.Key.Key_Tab, Qt.Key.Key_Tab, Qt.Key.Key_Backtab, Qt.Key.Key_Backtab):
        hand.key(QApplication.focusWidget() or holder, pressed)
        seen.append(sentence.selectedText() if sentence.hasFocus() else "")
    hand.key(QApplication.focusWidget() or holder, Qt.Key.Key_Backtab)
    assert seen == ["Show ", " hide", "", " hide", "Show "]
    assert before.hasFocus()


def test_links_are_readable_in_the_dark(theme: ThemeObject, qtbot: QtBot) -> None:
    sentence = Sentence((Span(text="and why", link="x"),))
    qtbot.addWidget(sentence)
    theme.set_mode(ThemeMode.DARK)
    settle()
    assert DARK.accent_ink in sentence.text()


def test_a_shortened_line_tells_the_whole_as_a_tip(qtbot: QtBot) -> None:
    label = ElidedText("Narrowboat “Dipper”, all forty-one things aboard & ashore")
    qtbot.addWidget(label)
    label.resize(120, 20)
    label.show()
    assert label.text().endswith("…")
    assert label.toolTip() == "Narrowboat “Dipper”, all forty-one things aboard &amp; ashore"
    assert label.accessibleName() == label.whole_text()
    label.resize(900, 20)
    assert label.text() == label.whole_text()
    assert label.toolTip() == ""


def test_a_wrapped_text_of_fixed_width_gets_its_height(qtbot: QtBot) -> None:
    host = QWidget()
    qtbot.addWidget(host)
    label = Text(
        "a sentence long enough for three lines at this width, or four in a larger font", wrap=True, parent=host
    )
    label.setFixedWidth(160)
    QVBoxLayout(host).addWidget(label, 0, Qt.AlignmentFlag.AlignHCenter)
    host.resize(900, 600)
    host.show()
    settle()
    assert label.height() >= label.heightForWidth(160)


def test_a_word_too_wide_for_its_line_is_cut_with_a_hyphen_and_numbers_are_not(theme: ThemeObject) -> None:
    font = role_font(TextRole.SMALL_STRONG)
    narrow = text_width(font, "straighten-")
    assert wrapped(font, "Bodyweight straightening", narrow) == ("Body-", "weight", "straighte-", "ning")
    assert "".join(wrapped(font, "1234567890", 30)) == "1234567890"
    assert wrapped(font, "Staggered-hands push-up", text_width(font, "Staggered-")) == (
        "Staggered-",
        "hands",
        "push-up",
    )
