"""Themes: chosen or followed, seen by every widget through its palette."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QFontInfo, QPalette
from PySide6.QtWidgets import QApplication, QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from gui.theme import DARK, LIGHT, TextRole, Theme, ThemeMode, body_font, role_font, tokens_of
from gui.theme.stylesheet import stylesheet
from gui.widgets import Card, Ink, Text
from tests.gui.looking import colours_in, shows


def test_a_widget_knows_its_theme_by_its_palette(theme: Theme, qtbot: QtBot) -> None:
    widget = QWidget()
    qtbot.addWidget(widget)
    widget.show()
    assert tokens_of(widget) is LIGHT
    theme.set_mode(ThemeMode.DARK)
    assert tokens_of(widget) is DARK


def test_a_change_is_told_once_and_only_when_it_is_one(theme: Theme, qtbot: QtBot) -> None:
    with qtbot.waitSignal(theme.changed):
        theme.set_mode(ThemeMode.DARK)
    with qtbot.assertNotEmitted(theme.changed):
        theme.set_mode(ThemeMode.DARK)


def test_auto_follows_the_system(theme: Theme) -> None:
    theme.set_mode(ThemeMode.AUTO)
    dark = QApplication.styleHints().colorScheme() is Qt.ColorScheme.Dark
    assert theme.tokens is (DARK if dark else LIGHT)
    assert theme.mode is ThemeMode.AUTO


def test_shown_widgets_are_painted_anew(theme: Theme, qtbot: QtBot) -> None:
    card = Card()
    card.resize(80, 60)
    qtbot.addWidget(card)
    card.show()
    assert shows(card, LIGHT.surface)
    theme.set_mode(ThemeMode.DARK)
    assert shows(card, DARK.surface)
    assert not shows(card, LIGHT.surface)


def test_soft_text_follows_the_theme_by_itself(theme: Theme, qtbot: QtBot) -> None:
    label = Text("██████", TextRole.TITLE, Ink.SOFT)
    qtbot.addWidget(label)
    label.show()
    assert LIGHT.ink_soft in colours_in(label)
    theme.set_mode(ThemeMode.DARK)
    assert DARK.ink_soft in colours_in(label)


def test_standard_controls_wear_the_theme(theme: Theme, qtbot: QtBot) -> None:
    edit = QLineEdit()
    qtbot.addWidget(edit)
    edit.show()
    theme.set_mode(ThemeMode.DARK)
    assert shows(edit, DARK.surface)
    assert edit.palette().color(QPalette.ColorRole.Highlight).name() == DARK.accent


def test_the_stylesheet_names_colours_of_its_theme_only() -> None:
    light_only = {getattr(LIGHT, name) for name in ("surface", "control_line", "focus", "track")}
    assert not light_only & set(stylesheet(DARK, "arrow.svg", "tick.svg").replace(";", " ").split())


def test_text_sizes_keep_their_order() -> None:
    order = (
        TextRole.TINY,
        TextRole.SMALL,
        TextRole.BODY,
        TextRole.HEADING,
        TextRole.TITLE,
        TextRole.HUGE,
        TextRole.CLOCK,
    )
    sizes = [role_font(role).pointSizeF() for role in order]
    assert sizes == sorted(sizes)
    assert len(set(sizes)) == len(sizes)


def test_figures_are_equally_wide(qtbot: QtBot) -> None:
    label = Text("", TextRole.FIGURE)
    qtbot.addWidget(label)
    widths = {label.fontMetrics().horizontalAdvance(figure) for figure in "0123456789"}
    assert len(widths) == 1


def test_the_font_is_the_systems_own() -> None:
    assert QFontInfo(body_font()).family()
    assert body_font().featureTags()
