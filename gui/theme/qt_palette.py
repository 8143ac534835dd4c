"""From tokens to a QPalette, and back from a widget to the tokens it is painted with.

A widget asks its own QPalette which theme it lives in, so no global holds "the current theme".
"""

from __future__ import annotations

from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QWidget

from gui.theme.tokens import DARK, LIGHT, Tokens

_Role = QPalette.ColorRole

_MARK = _Role.Shadow
"""The palette role that tells the themes apart; nothing of ours paints with it."""


def qt_palette(tokens: Tokens) -> QPalette:
    """A complete palette: text roles carry our ink tones, so labels follow a theme change by themselves."""
    palette = QPalette()
    for role, colour in _role_colours(tokens):
        palette.setColor(role, QColor(colour))
    for role in (_Role.WindowText, _Role.Text, _Role.ButtonText):
        palette.setColor(QPalette.ColorGroup.Disabled, role, QColor(tokens.ink_soft))
    palette.setColor(QPalette.ColorGroup.Disabled, _Role.Highlight, QColor(tokens.track))
    return palette


def tokens_of(widget: QWidget) -> Tokens:
    """The tokens of the theme `widget` is shown in."""
    return DARK if widget.palette().color(_MARK) == QColor(DARK.page) else LIGHT


def _role_colours(tokens: Tokens) -> tuple[tuple[QPalette.ColorRole, str], ...]:
    return (
        (_Role.Window, tokens.page),
        (_Role.WindowText, tokens.ink),
        (_Role.Base, tokens.surface),
        (_Role.AlternateBase, tokens.surface_soft),
        (_Role.Text, tokens.ink),
        (_Role.PlaceholderText, tokens.ink_soft),
        (_Role.Button, tokens.surface),
        (_Role.ButtonText, tokens.ink),
        (_Role.BrightText, tokens.bad_ink),
        (_Role.Link, tokens.accent_ink),
        (_Role.LinkVisited, tokens.accent_ink),
        (_Role.Highlight, tokens.accent),
        (_Role.HighlightedText, tokens.on_accent),
        (_Role.Accent, tokens.accent),
        (_Role.ToolTipBase, tokens.outline),
        (_Role.ToolTipText, tokens.page),
        (_Role.Light, tokens.surface_hover),
        (_Role.Midlight, tokens.track),
        (_Role.Mid, tokens.line),
        (_Role.Dark, tokens.control_line),
        (_MARK, tokens.page),
    )
