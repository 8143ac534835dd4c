"""How many weeks the block has and from which Monday; it counts from the next plan on."""

from __future__ import annotations

import datetime
from dataclasses import dataclass

from PySide6.QtWidgets import QHBoxLayout, QWidget

from core.plan.block_model import BLOCK_WEEKS, TrainingBlock
from gui.theme import Space, TextRole
from gui.week.dates import day_words
from gui.week.planning import USUAL_WEEKS, monday_of
from gui.widgets import Card, ChoiceField, Ink, SectionHeader, Text

LENGTHS = tuple(range(BLOCK_WEEKS[0], BLOCK_WEEKS[1] + 1))
WEEK = datetime.timedelta(weeks=1)


@dataclass(frozen=True, slots=True, kw_only=True)
class BlockWish:
    """The length and the first Monday of a block."""

    weeks: int
    starts: datetime.date


class BlockPanel(Card):
    """Two choices, kept here until the next plan is made; `wish` tells them."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self._mondays: tuple[datetime.date, ...] = ()
        self._painted: tuple[object, ...] = ()
        self.length = ChoiceField("weeks", tuple(str(weeks) for weeks in LENGTHS), name="Weeks in the block")
        self.start = ChoiceField("from", (), name="First Monday of the block")
        row = QHBoxLayout()
        row.setSpacing(Space.M)
        row.addWidget(self.length, 2)
        row.addWidget(self.start, 5)
        self.body.addWidget(SectionHeader("How many weeks?"))
        hint = "A test week comes before them; tests again in the last one. It counts from the next plan on."
        self.body.addWidget(Text(hint, TextRole.SMALL, Ink.SOFT, wrap=True))
        self.body.addLayout(row)
        self.body.addStretch(1)

    def show_block(self, block: TrainingBlock | None, today: datetime.date) -> None:
        """Offer to go on with the block there is, or a start; a choice made stays while nothing else changed."""
        known = (None if block is None else (block.starts, len(block.weeks)), today)
        if known == self._painted:
            return
        self._painted = known
        running = None if block is None or block.place_of(today) is None else block.starts
        this = monday_of(today)
        offered = ((running, "going on, "), (this, "this week, "), (this + WEEK, "next week, "))
        mondays = {day: words for day, words in reversed(offered) if day is not None}
        self._mondays = tuple(sorted(mondays))
        words = tuple(f"{mondays[day]}{day_words(day)}" for day in self._mondays)
        going_on = block is not None and block.starts in self._mondays
        chosen = block.starts if block is not None and block.starts is not None and going_on else this
        self.start.show_options(words, self._mondays.index(chosen))
        weeks = len(block.weeks) - 1 if block is not None and going_on else USUAL_WEEKS
        self.length.show_index(LENGTHS.index(weeks))

    def wish(self) -> BlockWish:
        """What is chosen; paint a block first."""
        return BlockWish(weeks=LENGTHS[self.length.index()], starts=self._mondays[self.start.index()])
