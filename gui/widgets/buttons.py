"""Buttons: the one to press, the others, links and bare pictures.

Labels are literal: an ampersand is an ampersand, and no shortcut arises from it by accident.
"""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QPushButton, QSizePolicy, QWidget

from gui.theme import CONTROL_HEIGHT, AnyPicture, Icon, Radius, Space, TextRole, Tokens, pixmap, role_font, tokens_of
from gui.widgets.drawing import CENTRE, draw_focus, draw_line, draw_panel, line_height, open_painter, text_width

_SIGN = 16


def set_label(button: QAbstractButton, label: str) -> None:
    """Give `button` a literal label."""
    button.setText(label.replace("&", "&&"))


def label_of(button: QAbstractButton) -> str:
    """The label as a person reads it."""
    return button.text().replace("&&", "&")


class _Button(QPushButton):
    """A painted push button; kinds differ in colours only."""

    def __init__(self, label: str, *, sign: Icon | None = None, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._sign = sign
        self.setFont(role_font(TextRole.CONTROL))
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        set_label(self, label)

    def show_label(self, label: str) -> None:
        """Write another label."""
        set_label(self, label)
        self.updateGeometry()

    def label(self) -> str:
        """The label as a person reads it."""
        return label_of(self)

    def sizeHint(self) -> QSize:
        sign = _SIGN + Space.S - 2 if self._sign else 0
        width = text_width(self.font(), self.label()) + 2 * (Space.M + 2) + sign
        return QSize(width, max(CONTROL_HEIGHT, line_height(self.font()) + Space.L))

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens = tokens_of(self)
        fill, edge, ink, focus = self._colours(tokens)
        painter = open_painter(self)
        draw_panel(painter, self.rect(), fill, radius=Radius.CONTROL, edge=edge)
        left = float(Space.M + 2)
        if self._sign:
            drawn = pixmap(self._sign, _SIGN, ink, ratio=self.devicePixelRatioF())
            painter.drawPixmap(round(left), (self.height() - _SIGN) // 2, drawn)
            left += _SIGN + Space.S - 2
        place = QRectF(left, 0, self.width() - left - Space.M - 2, self.height())
        draw_line(painter, place, self.label(), font=self.font(), ink=ink, align=CENTRE)
        if self.hasFocus():
            draw_focus(painter, self.rect(), focus, radius=Radius.CONTROL, inset=0 if edge else 3)
        painter.end()

    def _colours(self, tokens: Tokens) -> tuple[str, str, str, str]:
        """Fill, edge, ink and focus ring."""
        raise NotImplementedError


class PrimaryButton(_Button):
    """The one thing to do here."""

    def _colours(self, tokens: Tokens) -> tuple[str, str, str, str]:
        if not self.isEnabled():
            return tokens.track, "", tokens.ink_soft, tokens.focus
        pressed = self.isDown() or self.underMouse()
        return (tokens.accent_hover if pressed else tokens.accent), "", tokens.on_accent, tokens.on_accent


class SecondaryButton(_Button):
    """Anything else to do."""

    def _colours(self, tokens: Tokens) -> tuple[str, str, str, str]:
        ink = tokens.ink if self.isEnabled() else tokens.ink_soft
        fill = tokens.track if self.isDown() else tokens.surface_soft if self.underMouse() else tokens.surface
        return fill, tokens.control_line if self.isEnabled() else tokens.line, ink, tokens.focus


class LinkButton(QPushButton):
    """A button that reads as underlined text, for a step aside."""

    def __init__(self, label: str, role: TextRole = TextRole.BODY, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        font = role_font(role)
        font.setUnderline(True)
        self.setFont(font)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        set_label(self, label)

    def show_label(self, label: str) -> None:
        """Write another label."""
        set_label(self, label)
        self.updateGeometry()

    def label(self) -> str:
        """The label as a person reads it."""
        return label_of(self)

    def sizeHint(self) -> QSize:
        return QSize(text_width(self.font(), self.label()) + Space.S, line_height(self.font()) + Space.S)

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens = tokens_of(self)
        painter = open_painter(self)
        ink = tokens.accent_ink if self.isEnabled() else tokens.ink_soft
        draw_line(painter, self.rect(), self.label(), font=self.font(), ink=ink, align=CENTRE)
        if self.hasFocus():
            draw_focus(painter, self.rect(), tokens.focus, radius=Radius.BLOCK)
        painter.end()


class PictureButton(QPushButton):
    """A bare picture to press; `name` is spoken and shown as the tool tip."""

    def __init__(self, picture: AnyPicture, name: str, *, size: int = 28, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._picture = picture
        self.setAccessibleName(name)
        self.setToolTip(name)
        self.setFixedSize(size, size)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens = tokens_of(self)
        painter = open_painter(self)
        if self.underMouse() or self.isDown():
            draw_panel(painter, self.rect(), tokens.track, radius=Radius.BLOCK)
        side = round(self.width() * 0.6)
        inset = (self.width() - side) // 2
        ink = tokens.ink if self.isEnabled() else tokens.ink_soft
        painter.drawPixmap(inset, inset, pixmap(self._picture, side, ink, ratio=self.devicePixelRatioF()))
        if self.hasFocus():
            draw_focus(painter, self.rect(), tokens.focus, radius=Radius.BLOCK)
        painter.end()
