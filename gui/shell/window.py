"""The window: sidebar, a stack of screens made at their first visit, the keys.

It opens before any data is there. Until `furnish` brings the makers of the screens it shows a quiet waiting page and
remembers which screen somebody asked for.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import QByteArray, Qt, QTimer, Signal
from PySide6.QtGui import QAction, QCloseEvent, QKeySequence, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QMainWindow, QStackedWidget, QWidget

from gui.shell.entry import ENTRIES, Makers, ScreenName
from gui.shell.keys import HELP, QUIT, REDO, SETTINGS_KEY, UNDO, KeyHelp, KeyLine
from gui.shell.sidebar import PersonView, Sidebar
from gui.shell.waiting import WaitingPage, WayOut

NARROW_BELOW = 960
DEFAULT_SIZE = (1280, 800)


@dataclass(frozen=True, slots=True, kw_only=True)
class Deeds:
    """What the window's own keys call."""

    undo: Callable[[], None]
    redo: Callable[[], None]


class MainWindow(QMainWindow):
    """`painted` fires once, after the first paint; `person_chosen` when somebody else trains; `closed` on closing."""

    painted = Signal()
    screen_shown = Signal(ScreenName)
    person_chosen = Signal(str)
    closed = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._makers: Makers = {}
        self._deeds: Deeds | None = None
        self._made: dict[ScreenName, QWidget] = {}
        self._wanted = ENTRIES[0].name
        self._has_painted = False
        self._sidebar = Sidebar(ENTRIES, parent=self)
        self._waiting = WaitingPage()
        self._stack = QStackedWidget()
        self._stack.addWidget(self._waiting)
        self._arrange()
        self._add_keys()
        self._sidebar.picked.connect(self.show_screen)
        self._sidebar.person_chosen.connect(self.person_chosen)
        self._sidebar.show_screen(self._wanted)

    def furnish(self, makers: Makers, deeds: Deeds) -> None:
        """Data is there: make the screen somebody asked for, and the others when they are visited."""
        self._makers = makers
        self._deeds = deeds
        for action in (self._undo, self._redo):
            action.setEnabled(True)
        self.show_screen(self._wanted)

    def show_screen(self, name: ScreenName) -> None:
        """Go to a screen, making it at the first visit."""
        self._wanted = name
        self._sidebar.show_screen(name)
        page = self._page(name)
        self._stack.setCurrentWidget(page)
        if page is not self._waiting:
            self.screen_shown.emit(name)

    def show_people(self, people: tuple[PersonView, ...], current_id: str) -> None:
        """The people of the household, and who trains now."""
        self._sidebar.show_people(people, current_id)

    def unfurnish(self) -> None:
        """The data is no longer there: let its screens go."""
        self._makers, self._deeds = {}, None
        self._stack.setCurrentWidget(self._waiting)
        for page in self._made.values():
            self._stack.removeWidget(page)
            page.deleteLater()
        self._made.clear()

    def show_trouble(self, sentence: str, ways: tuple[WayOut, ...] = ()) -> None:
        """The data can't be used: say so in one sentence, and offer what can be done."""
        self._waiting.show_trouble(sentence, ways)
        self._stack.setCurrentWidget(self._waiting)

    def current_screen(self) -> ScreenName:
        """The screen shown, or asked for while waiting."""
        return self._wanted

    def page(self, name: ScreenName) -> QWidget | None:
        """A screen that was made already."""
        return self._made.get(name)

    def sidebar(self) -> Sidebar:
        """The side with the ways."""
        return self._sidebar

    def come_to_front(self) -> None:
        """Somebody asks for this window."""
        self.setWindowState(self.windowState() & ~Qt.WindowState.WindowMinimized)
        self.show()
        self.raise_()
        self.activateWindow()

    def waiting(self) -> WaitingPage:
        """What stands there while there are no screens."""
        return self._waiting

    def restore_place(self, geometry: bytes) -> None:
        """Stand where the window stood last time."""
        self.restoreGeometry(QByteArray(geometry))

    def place(self) -> bytes:
        """Where the window stands, to remember."""
        return bytes(self.saveGeometry().data())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        narrow = self.width() < NARROW_BELOW
        if narrow is not self._sidebar.is_narrow():
            self._sidebar.show_narrow(narrow)

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if not self._has_painted:
            self._has_painted = True
            QTimer.singleShot(0, self.painted.emit)

    def closeEvent(self, event: QCloseEvent) -> None:
        self.closed.emit()
        super().closeEvent(event)

    def _page(self, name: ScreenName) -> QWidget:
        if name not in self._makers:
            return self._waiting
        if name not in self._made:
            self._made[name] = self._makers[name]()
            self._stack.addWidget(self._made[name])
        return self._made[name]

    def _arrange(self) -> None:
        self.setWindowTitle("Fillmark")
        self.resize(*DEFAULT_SIZE)
        self.setMinimumSize(640, 420)
        middle = QWidget()
        row = QHBoxLayout(middle)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        row.addWidget(self._sidebar)
        row.addWidget(self._stack, 1)
        self.setCentralWidget(middle)
        self._stack.setFocus()

    def _add_keys(self) -> None:
        for button, keys in zip(self._sidebar.buttons(), (*_nav_keys(), SETTINGS_KEY.keys[0]), strict=True):
            action = self._add_action(KeyLine(keys=(keys,), does=button.entry().label), button.click)
            action.setObjectName(f"go-{button.entry().name.value}")
        self._undo = self._add_action(UNDO, self._do_undo)
        self._redo = self._add_action(REDO, self._do_redo)
        for action in (self._undo, self._redo):
            action.setEnabled(False)
        self._add_action(HELP, self._show_keys)
        self._add_action(QUIT, self._quit)

    def _add_action(self, line: KeyLine, slot: Callable[[], object]) -> QAction:
        action = QAction(line.does.replace("&", "&&"), self)
        action.setShortcut(QKeySequence(line.keys[0]))
        action.triggered.connect(slot)
        self.addAction(action)
        return action

    def _do_undo(self) -> None:
        if self._deeds is not None:
            self._deeds.undo()

    def _do_redo(self) -> None:
        if self._deeds is not None:
            self._deeds.redo()

    def _show_keys(self) -> None:
        KeyHelp(self).open()

    def _quit(self) -> None:
        self.close()


def _nav_keys() -> tuple[str, ...]:
    return tuple(f"Alt+{at}" for at in range(1, len(ENTRIES) + 1))
