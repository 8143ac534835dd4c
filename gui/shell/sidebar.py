"""The dark green side: the mark, the way to each screen, whom the plan is for, the settings.

Narrow windows get pictures only; names stay as tool tips and for screen readers.
"""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPoint, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QAction, QColor, QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QMenu, QSizePolicy, QVBoxLayout, QWidget

from gui.shell.entry import SETTINGS, ScreenEntry, ScreenName
from gui.theme import SIDEBAR_NARROW, SIDEBAR_WIDTH, Icon, Radius, Space, TextRole, Tokens, pixmap, role_font, tokens_of
from gui.widgets.buttons import set_label
from gui.widgets.drawing import CENTRE, draw_focus, draw_line, draw_panel, line_height, open_painter, text_width

_PICTURE = 20
_HEIGHT = 38


@dataclass(frozen=True, slots=True, kw_only=True)
class PersonView:
    """A person one can train as; `detail` is a short ready text such as “68 kg”."""

    person_id: str
    name: str
    detail: str = ""


class _SideButton(QAbstractButton):
    """What everything to press in the sidebar shares."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._narrow = False
        self.setFont(role_font(TextRole.CONTROL))
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_narrow(self, narrow: bool) -> None:
        self._narrow = narrow
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(SIDEBAR_NARROW - 2 * Space.S, max(_HEIGHT, line_height(self.font()) + Space.L))

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens = tokens_of(self)
        painter = open_painter(self)
        ground = tokens.sidebar_selected if self._raised() else tokens.sidebar_hover if self.underMouse() else ""
        if ground:
            draw_panel(painter, self.rect(), ground, radius=Radius.CONTROL)
        self._paint_inside(painter, tokens)
        if self.hasFocus():
            draw_focus(painter, self.rect(), tokens.sidebar_focus, radius=Radius.CONTROL)
        painter.end()

    def _raised(self) -> bool:
        return self.isChecked()

    def _paint_inside(self, painter: QPainter, tokens: Tokens) -> None:
        raise NotImplementedError


class NavButton(_SideButton):
    """The way to one screen."""

    picked = Signal(ScreenName)

    def __init__(self, entry: ScreenEntry, keys: str, parent: QWidget) -> None:
        super().__init__(parent)
        self._entry = entry
        self.setCheckable(True)
        set_label(self, entry.label)
        self.setAccessibleName(entry.label)
        self.setToolTip(f"{entry.label} ({keys})")
        self.clicked.connect(self._pick)

    def entry(self) -> ScreenEntry:
        """The line it stands for."""
        return self._entry

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.click()
            return
        super().keyPressEvent(event)

    def nextCheckState(self) -> None:
        """Pressing the way to the screen shown leaves it marked; the window marks the others."""
        self.setChecked(True)

    def _paint_inside(self, painter: QPainter, tokens: Tokens) -> None:
        ink = tokens.sidebar_ink
        drawn = pixmap(self._entry.picture, _PICTURE, ink, ratio=self.devicePixelRatioF())
        left = (self.width() - _PICTURE) // 2 if self._narrow else Space.S + 2
        painter.drawPixmap(left, (self.height() - _PICTURE) // 2, drawn)
        if not self._narrow:
            words = QRectF(left + _PICTURE + Space.S + 2, 0, self.width() - left - _PICTURE - Space.L, self.height())
            draw_line(painter, words, self._entry.label, font=self.font(), ink=ink)

    def _pick(self) -> None:
        self.picked.emit(self._entry.name)


class PersonBox(_SideButton):
    """Whom the plan is for; pressing it offers the others. `person_chosen` carries the id."""

    person_chosen = Signal(str)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._people: tuple[PersonView, ...] = ()
        self._current: PersonView | None = None
        self.clicked.connect(self._offer)

    def show_people(self, people: tuple[PersonView, ...], current_id: str) -> None:
        """The people of the household, and who trains now."""
        self._people = people
        self._current = next((person for person in people if person.person_id == current_id), None)
        self.setVisible(self._current is not None)
        name = self._current.name if self._current else ""
        self.setAccessibleName(f"Training as {name}, change")
        self.setToolTip(f"Training as {name}")
        self.update()

    def menu(self) -> QMenu:
        """The people as a menu, the present one marked."""
        menu = QMenu(self)
        for person in self._people:
            action = menu.addAction(f"{person.name}   {person.detail}".replace("&", "&&").rstrip())
            action.setCheckable(True)
            action.setChecked(person is self._current)
            action.setData(person.person_id)
        return menu

    def _raised(self) -> bool:
        return True

    def _paint_inside(self, painter: QPainter, tokens: Tokens) -> None:
        if self._current is None:
            return
        strong = role_font(TextRole.STRONG)
        if self._narrow:
            draw_line(
                painter, QRectF(self.rect()), self._current.name[:1], font=strong, ink=tokens.sidebar_ink, align=CENTRE
            )
            return
        room = self.width() - 2 * (Space.S + 2)
        detail = text_width(self.font(), self._current.detail)
        wide = min(text_width(strong, self._current.name), max(24, room - detail - Space.M))
        name = QRectF(Space.S + 2, 0, wide, self.height())
        draw_line(painter, name, self._current.name, font=strong, ink=tokens.sidebar_ink)
        rest = QRectF(name.right() + Space.M, 0, self.width() - name.right() - Space.M - Space.S, self.height())
        draw_line(painter, rest, self._current.detail, font=self.font(), ink=tokens.sidebar_ink_soft)

    def _offer(self) -> None:
        menu = self.menu()
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        menu.triggered.connect(self._choose)
        menu.popup(self.mapToGlobal(QPoint(0, -menu.sizeHint().height() - Space.XS)))

    def _choose(self, action: QAction) -> None:
        self.person_chosen.emit(str(action.data()))


class _Mark(QWidget):
    """The mark and the name; the mark alone when there is no room."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._narrow = False
        self.setAccessibleName("Fillmark")
        self.setFixedHeight(48)

    def show_narrow(self, narrow: bool) -> None:
        self._narrow = narrow
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens = tokens_of(self)
        painter = open_painter(self)
        side = 26
        left = (self.width() - side) // 2 if self._narrow else Space.S
        ratio = self.devicePixelRatioF()
        mark = pixmap(Icon.MARK, side, tokens.sidebar_ink, accent=tokens.sidebar_mark, ratio=ratio)
        painter.drawPixmap(left, (self.height() - side) // 2, mark)
        if not self._narrow:
            font = role_font(TextRole.HEADING)
            words = QRectF(left + side + Space.S - 2, 0, self.width() - left - side - Space.S, self.height())
            draw_line(painter, words, "Fillmark", font=font, ink=tokens.sidebar_ink)
        painter.end()


class _Caption(QWidget):
    def __init__(self, text: str, parent: QWidget) -> None:
        super().__init__(parent)
        self._text = text
        self.setFixedHeight(line_height(role_font(TextRole.TINY)) + Space.S)

    def paintEvent(self, event: QPaintEvent) -> None:
        tokens = tokens_of(self)
        painter = open_painter(self)
        place = QRectF(Space.S + 2, 0, self.width() - Space.S, self.height())
        draw_line(painter, place, self._text, font=role_font(TextRole.TINY), ink=tokens.sidebar_ink_soft)
        painter.end()


class Sidebar(QWidget):
    """`picked` carries the screen somebody wants, `person_chosen` the person."""

    picked = Signal(ScreenName)
    person_chosen = Signal(str)

    def __init__(self, entries: tuple[ScreenEntry, ...], *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Screens")
        self._mark = _Mark(self)
        self._buttons = tuple(NavButton(entry, f"Alt+{at}", self) for at, entry in enumerate(entries, start=1))
        self._settings = NavButton(SETTINGS, "Ctrl+,", self)
        self._caption = _Caption("Training as", self)
        self._person = PersonBox(self)
        self._person.person_chosen.connect(self.person_chosen)
        self._narrow = False
        self._arrange()
        for button in (*self._buttons, self._settings):
            button.picked.connect(self.picked)
        self.show_people((), "")
        self.show_narrow(False)

    def show_screen(self, name: ScreenName) -> None:
        """Mark the way to the screen shown."""
        for button in (*self._buttons, self._settings):
            button.setChecked(button.entry().name is name)

    def show_people(self, people: tuple[PersonView, ...], current_id: str) -> None:
        """The people of the household, and who trains now."""
        self._person.show_people(people, current_id)
        self._caption.setVisible(not self._person.isHidden() and not self._narrow)

    def show_narrow(self, narrow: bool) -> None:
        """Pictures only, or pictures with names."""
        self._narrow = narrow
        self.setFixedWidth(SIDEBAR_NARROW if narrow else SIDEBAR_WIDTH)
        self._mark.show_narrow(narrow)
        for part in (*self._buttons, self._settings, self._person):
            part.show_narrow(narrow)
        self._caption.setVisible(not narrow and not self._person.isHidden())

    def is_narrow(self) -> bool:
        """Whether only pictures are shown."""
        return self._narrow

    def buttons(self) -> tuple[NavButton, ...]:
        """The ways, settings last."""
        return (*self._buttons, self._settings)

    def person_box(self) -> PersonBox:
        """Whom the plan is for."""
        return self._person

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(tokens_of(self).sidebar))
        painter.end()

    def _arrange(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(Space.M, Space.S, Space.M, Space.L + 2)
        column.setSpacing(Space.XS)
        column.addWidget(self._mark)
        for button in self._buttons:
            column.addWidget(button)
        column.addStretch(1)
        for part in (self._caption, self._person, self._settings):
            column.addWidget(part)
