"""The mass in large figures, its ± and the other units; below it how the load splits and what a weighing made of it."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from gui.fill.present import BudgetView, MassView
from gui.theme import Space, TextRole
from gui.widgets import BudgetBars, Card, Ink, LoadBar, SectionHeader, SteadyFigure, SteadyText, Text


class MassCard(Card):
    """Paints a `MassView`."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(gap=Space.XS, parent=parent)
        self._caption = Text("This load weighs", TextRole.SMALL, Ink.SOFT)
        self._figure = SteadyFigure()
        self._other = SteadyText(TextRole.SMALL, Ink.SOFT)
        self._bar = LoadBar()
        self._split = SteadyText(TextRole.SMALL, Ink.SOFT)
        self._note = SteadyText(TextRole.SMALL)
        self.body.addWidget(self._caption)
        self.body.addWidget(self._figure)
        self.body.addWidget(self._other)
        self.body.addSpacing(Space.XS)
        for widget in (self._bar, self._split, self._note):
            self.body.addWidget(widget)

    def show_mass(self, view: MassView, caption: str = "This load weighs") -> None:
        """Paint a mass."""
        self._caption.setText(caption)
        self._figure.show_figure(view.figure, view.doubt)
        self._other.setText(view.other)
        self._split.setText(view.split)
        self._split.setVisible(bool(view.split))
        self._note.setText(view.note)
        self._note.setVisible(bool(view.note))
        self._bar.setVisible(view.contents_share is not None)
        if view.contents_share is not None:
            self._bar.show_split(view.contents_share, view.split)
        self.setAccessibleName(f"{caption}: {view.spoken}")

    def text(self) -> str:
        """The mass with its ±, as shown."""
        return self._figure.text()

    def note(self) -> str:
        """What a weighing made of it."""
        return self._note.text()

    def split(self) -> str:
        """How it splits."""
        return self._split.text()

    def other(self) -> str:
        """The other units."""
        return self._other.text()


class BudgetCard(Card):
    """Where the ± comes from, and the one thing that shrinks it most."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self.bars = BudgetBars()
        self._advice = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        self.body.addWidget(SectionHeader("Where the ± comes from"))
        self.body.addWidget(self.bars)
        self.body.addWidget(self._advice)

    def show_budget(self, view: BudgetView) -> None:
        """Paint another budget."""
        self.bars.show_rows(view.rows)
        self._advice.setText(view.advice)
        self._advice.setVisible(bool(view.advice))
        self.setVisible(bool(view.rows))

    def advice(self) -> str:
        """The advice shown."""
        return self._advice.text()
