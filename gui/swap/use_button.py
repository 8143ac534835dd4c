"""The button that takes an answer: filled on the card in hand, outlined on the others."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from gui.theme import Tokens
from gui.widgets import PrimaryButton


class UseButton(PrimaryButton):
    """`set_leading` changes how it is painted, not what it does."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__("Use this", parent=parent)
        self._leading = False

    def set_leading(self, leading: bool) -> None:
        """Whether it is the one to press."""
        self._leading = leading
        self.update()

    def is_leading(self) -> bool:
        """Whether it is painted as the one to press."""
        return self._leading

    def _colours(self, tokens: Tokens) -> tuple[str, str, str, str]:
        if self._leading:
            return super()._colours(tokens)
        fill = tokens.track if self.isDown() else tokens.surface_soft if self.underMouse() else tokens.surface
        return fill, tokens.control_line, tokens.ink, tokens.focus
