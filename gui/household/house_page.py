"""The page of a household: what was asked, the strip, who and where, the cards, and on the right the one in hand."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget

from gui.desk.desk import Desk
from gui.household.add_bar import AskList
from gui.household.cards import ThingCards
from gui.household.house_side import HouseSide
from gui.household.panel import Panel
from gui.household.people_row import PeopleRow
from gui.household.person_side import PersonSide
from gui.household.place_side import PlaceSide
from gui.household.strip_card import StripCard
from gui.household.thing_side import ThingSide
from gui.theme import Space, TextRole, ThingPicture
from gui.widgets import Ink, LinkButton, Sentence, Span, Text
from gui.widgets.page import GUTTER, PageScroll

REMOVE_DEMO = "remove"
SIDE_WIDTH = (320, 400)
LOW_BELOW = 680
NO_THINGS = "Nothing on the list yet. Type what stands about in the field above, or take it from what would help."


class HousePage(QWidget):
    """Holds the parts; the screen tells each what to show."""

    def __init__(self, desk: Desk, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.demo = Sentence(_demo_spans(), TextRole.SMALL, Ink.SOFT)
        self.asks = AskList()
        self.strip = StripCard()
        self.people = PeopleRow()
        self.nothing = Text(NO_THINGS, TextRole.BODY, Ink.SOFT, wrap=True)
        self.cards = ThingCards()
        self.own = LinkButton("Describe a kind of thing of your own", TextRole.SMALL)
        self.things = ThingSide(desk)
        self.person = PersonSide(desk)
        self.place = PlaceSide(desk)
        self.house = HouseSide(desk)
        self.blank = Panel(ThingPicture.JUG)
        self.side = QStackedWidget()
        self.left = PageScroll(self._made_left())
        self._arrange()
        self.asks.installEventFilter(self)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._make_room()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if watched is self.asks and event.type() in {QEvent.Type.ShowToParent, QEvent.Type.HideToParent}:
            self._make_room()
        return super().eventFilter(watched, event)

    def _make_room(self) -> None:
        """Where it is low, a question stands in the place of the strip until it is answered."""
        self.strip.setVisible(self.asks.isHidden() or self.height() >= LOW_BELOW)

    def _made_left(self) -> QWidget:
        left = QWidget()
        column = QVBoxLayout(left)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.nothing)
        column.addWidget(self.cards, 1)
        column.addWidget(self.own, 0, Qt.AlignmentFlag.AlignLeft)
        return left

    def _arrange(self) -> None:
        for side in (self.blank, self.things, self.person, self.place, self.house):
            self.side.addWidget(side)
        self.side.setMinimumWidth(SIDE_WIDTH[0])
        self.side.setMaximumWidth(SIDE_WIDTH[1])
        self.blank.show_head("Nothing in hand", "Choose a thing to see what it weighs and what it is good for.")
        row = QHBoxLayout()
        row.setSpacing(0)
        row.addWidget(self.left, 7)
        row.addWidget(self.side, 3)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, GUTTER, 0)
        column.setSpacing(Space.M)
        for widget in (self.demo, self.asks, self.strip, self.people):
            column.addWidget(widget)
        column.addLayout(row, 1)


def _demo_spans() -> tuple[Span, ...]:
    return (
        Span(text="This household is invented, to look around in. "),
        Span(text="Remove the demo", link=REMOVE_DEMO),
    )
