"""Text: labels in a role and a tone, sentences with bold spans and links, and sentences a screen reader speaks."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from html import escape

from PySide6.QtCore import QEvent, QSize, Qt, Signal
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent, QFocusEvent, QPalette, QResizeEvent
from PySide6.QtWidgets import QLabel, QSizePolicy, QWidget

from gui.theme import TextRole, role_font, tokens_of


class Ink(Enum):
    """The tone of a text; the value is the palette role that carries it, so it follows the theme by itself."""

    PLAIN = QPalette.ColorRole.WindowText
    SOFT = QPalette.ColorRole.PlaceholderText
    ACCENT = QPalette.ColorRole.Link
    BAD = QPalette.ColorRole.BrightText


class Text(QLabel):
    """Plain text that wraps; whatever a person typed is shown as they typed it, never read as markup."""

    def __init__(
        self,
        text: str = "",
        role: TextRole = TextRole.BODY,
        ink: Ink = Ink.PLAIN,
        *,
        wrap: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setFont(role_font(role))
        self.setForegroundRole(ink.value)
        self.setWordWrap(wrap)
        self.setText(text)

    def heightForWidth(self, width: int) -> int:
        """Wrapped words are as tall as the width they really get, which a fixed or greatest width may limit."""
        return super().heightForWidth(min(width, self.maximumWidth()))

    def set_ink(self, ink: Ink) -> None:
        """Change the tone."""
        self.setForegroundRole(ink.value)


class ElidedText(Text):
    """One line that shortens itself with … and then tells the whole text as a tool tip."""

    def __init__(
        self, text: str = "", role: TextRole = TextRole.BODY, ink: Ink = Ink.PLAIN, *, parent: QWidget | None = None
    ) -> None:
        self._whole = text
        super().__init__(text, role, ink, parent=parent)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        self.show_text(text)

    def show_text(self, text: str) -> None:
        """Show `text`, shortened to the width there is."""
        self._whole = text
        self.setAccessibleName(text)
        self.updateGeometry()
        self._fit()

    def whole_text(self) -> str:
        """The text before shortening."""
        return self._whole

    def sizeHint(self) -> QSize:
        return QSize(self.fontMetrics().horizontalAdvance(self._whole) + 2, super().sizeHint().height())

    def minimumSizeHint(self) -> QSize:
        return QSize(min(self.sizeHint().width(), 40), super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        shown = self.fontMetrics().elidedText(self._whole, Qt.TextElideMode.ElideRight, self.width())
        self.setText(shown)
        self.setToolTip(escape(self._whole) if shown != self._whole else "")


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """A stretch of a sentence: plain, bold, or a link that reports `link` when followed."""

    text: str
    bold: bool = False
    link: str = ""


class Sentence(QLabel):
    """A wrapping sentence of spans; `link_followed` carries the `link` of the span that was clicked or entered."""

    link_followed = Signal(str)

    def __init__(
        self,
        spans: tuple[Span, ...] = (),
        role: TextRole = TextRole.BODY,
        ink: Ink = Ink.PLAIN,
        *,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._spans: tuple[Span, ...] = ()
        self._link_at = -1
        self.setTextFormat(Qt.TextFormat.RichText)
        self.setFont(role_font(role))
        self.setForegroundRole(ink.value)
        self.setWordWrap(True)
        self.linkActivated.connect(self.link_followed)
        self.show_spans(spans)

    def show_spans(self, spans: tuple[Span, ...]) -> None:
        """Paint another sentence."""
        self._spans = spans
        self.setAccessibleName("".join(span.text for span in spans))
        links = any(span.link for span in spans)
        flags = Qt.TextInteractionFlag.LinksAccessibleByMouse | Qt.TextInteractionFlag.LinksAccessibleByKeyboard
        self.setTextInteractionFlags(flags if links else Qt.TextInteractionFlag.NoTextInteraction)
        self._write()

    def plain_text(self) -> str:
        """The sentence as a person reads it."""
        return "".join(span.text for span in self._spans)

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.PaletteChange:
            self._write()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Tab goes straight to a link; a plain label would first stop where nothing can be seen."""
        super().focusInEvent(event)
        back = event.reason() is Qt.FocusReason.BacktabFocusReason
        self._link_at = self._links() if back else -1
        if back or event.reason() is Qt.FocusReason.TabFocusReason:
            self.focusNextPrevChild(not back)

    def focusNextPrevChild(self, forward: bool) -> bool:
        """From link to link, then out; a plain label would not let go of its first link on the way back."""
        at = self._link_at + (1 if forward else -1)
        if 0 <= at < self._links():
            self._link_at = at
            return super().focusNextPrevChild(forward)
        return QWidget.focusNextPrevChild(self, forward)

    def _links(self) -> int:
        return sum(1 for span in self._spans if span.link)

    def _write(self) -> None:
        ink = tokens_of(self).accent_ink
        self.setText("".join(_html(span, ink) for span in self._spans))


def _html(span: Span, link_ink: str) -> str:
    text = escape(span.text)
    if span.bold:
        text = f'<span style="font-weight:600">{text}</span>'
    if span.link:
        text = f'<a href="{escape(span.link)}" style="color:{link_ink}">{text}</a>'
    return text


def announce(widget: QWidget, sentence: str) -> None:
    """Have a running screen reader say `sentence`; does nothing when none runs."""
    if QAccessible.isActive():
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(widget, sentence))
