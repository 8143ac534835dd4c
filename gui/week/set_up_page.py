"""Days, goals and quiet hours, and the readiness questions: in the middle of the page, no wider than reads well."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from core.house.model import Place
from core.house.wishes import WeekWishes
from gui.theme import Space
from gui.week.block_panel import BlockPanel
from gui.week.days_panel import DaysPanel
from gui.week.goals_panel import GoalsPanel
from gui.week.quiet_panel import QuietPanel

DAYS_WIDTH, GOALS_WIDTH, ALONE_WIDTH = 640, 420, 720


class SetUpPage(QWidget):
    """`days`, `goals`, `block` and `quiet`, painted together because one sums up the other."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.days = DaysPanel()
        self.goals = GoalsPanel()
        self.quiet = QuietPanel()
        self.days.setMaximumWidth(DAYS_WIDTH)
        self.block = BlockPanel()
        for panel in (self.goals, self.block, self.quiet):
            panel.setMaximumWidth(GOALS_WIDTH)
        beside = QVBoxLayout()
        beside.setSpacing(Space.M)
        beside.addWidget(self.goals)
        beside.addWidget(self.block)
        beside.addWidget(self.quiet)
        beside.addStretch(1)
        row = _row_on_top(self)
        row.setSpacing(Space.M)
        row.addStretch(1)
        row.addWidget(self.days, 30, Qt.AlignmentFlag.AlignTop)
        row.addLayout(beside, 20)
        row.addStretch(1)

    def show_wishes(self, wishes: WeekWishes, places: tuple[Place, ...], *, has_week: bool) -> None:
        """Paint the wishes."""
        self.days.show_days(wishes.days, places)
        self.days.button.show_label("Plan my week again" if has_week else "Plan my week")
        self.goals.show_goals(wishes.goals, wishes.days)
        self.quiet.show_places(places)


def centred(widget: QWidget, most: int = ALONE_WIDTH) -> QWidget:
    """`widget` in the middle, at most that wide."""
    holder = QWidget()
    widget.setMaximumWidth(most)
    row = _row_on_top(holder)
    row.addStretch(1)
    row.addWidget(widget, 100)
    row.addStretch(1)
    return holder


def _row_on_top(holder: QWidget) -> QHBoxLayout:
    """A row as high as its widgets need; the rest of the page stays free below it."""
    column = QVBoxLayout(holder)
    column.setContentsMargins(0, 0, 0, 0)
    row = QHBoxLayout()
    column.addLayout(row)
    column.addStretch(1)
    return row
