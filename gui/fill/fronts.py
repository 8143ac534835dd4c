"""What stands in front on the fill screen: one container, the builder, or the strips; the latter made when wanted."""

from __future__ import annotations

from enum import StrEnum

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QStackedWidget, QWidget

from gui.desk.desk import Desk
from gui.fill.build_flow import BuildFlow
from gui.fill.build_page import BuildPage
from gui.fill.strip_flow import MARK_NAMES, PAPERS, StripFlow
from gui.fill.strip_page import StripPage


class Front(StrEnum):
    """One container, a load of several things, or the fill strips to print."""

    ONE = "one"
    BUILD = "build"
    STRIP = "strip"


class Fronts(QStackedWidget):
    """`titled` carries the line the builder wants beside the title, `said` what came of saving the strips.

    Many who fill a jug never build nor print: those pages are made when they are first wanted.
    """

    titled = Signal(str)
    said = Signal(str)

    def __init__(self, desk: Desk, work: QWidget, empty: QWidget, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._work = work
        self._empty = empty
        self._front = Front.ONE
        self._build: tuple[BuildPage, BuildFlow] | None = None
        self._strips: tuple[StripPage, StripFlow] | None = None
        for widget in (work, empty):
            self.addWidget(widget)

    def front(self) -> Front:
        """What is in front."""
        return self._front

    def show_front(self, front: Front, *, empty: bool = False) -> None:
        """Bring another to the front; with nothing to weigh (`empty`) one container is none."""
        self._front = front
        if front is Front.ONE:
            self.setCurrentWidget(self._empty if empty else self._work)
        else:
            self.setCurrentWidget(self.builder if front is Front.BUILD else self.strip_page)

    @property
    def builder(self) -> BuildPage:
        """The page of the builder."""
        return self._built()[0]

    @property
    def building(self) -> BuildFlow:
        """What the builder does."""
        return self._built()[1]

    @property
    def strip_page(self) -> StripPage:
        """The page of the strips."""
        return self._printed()[0]

    @property
    def strips(self) -> StripFlow:
        """What makes the strips."""
        return self._printed()[1]

    def _built(self) -> tuple[BuildPage, BuildFlow]:
        if self._build is None:
            page = BuildPage()
            flow = BuildFlow(self._desk, page, self)
            flow.titled.connect(self.titled)
            self.addWidget(page)
            self._build = (page, flow)
        return self._build

    def _printed(self) -> tuple[StripPage, StripFlow]:
        if self._strips is None:
            page = StripPage(PAPERS, MARK_NAMES)
            flow = StripFlow(self._desk, page, self)
            flow.said.connect(self.said)
            self.addWidget(page)
            self._strips = (page, flow)
        return self._strips
