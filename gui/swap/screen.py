"""The swap screen: the question on the left, answers on the right, what was left out below; answers follow typing."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget

from core.effort.capacity import Prescription
from core.effort.dose_text import parse_dose
from core.errors import InputError
from core.exercise.find import find_exercises
from core.exercise.model import Exercise
from core.house.wishes import WEEKDAYS, Pin
from core.plan.model import DayKind
from core.store.commands import SetPins
from core.store.values import ChangeSet
from core.swap.model import Swap, SwapRequest
from core.swap.swap import swap
from gui.desk.desk import SETTING_KINDS, Desk, Jump
from gui.shell.entry import ScreenName
from gui.swap.answer_card import AnswerCard
from gui.swap.ask_panel import Asked, AskPanel
from gui.swap.present import SwapView, present
from gui.theme import MovePicture, Space, TextRole
from gui.widgets import Card, EmptyState, Ink, LinkButton, Page, Text
from gui.widgets.page import PageScroll

SHOWN_AT_FIRST, MORE_EACH_TIME = 6, 12
SUGGESTIONS = 8
LEFT_OUT_AT_FIRST = 3


class SwapScreen(Page):
    """Finds the nearest thing the person can do. Asks core at every change; a swap takes a few milliseconds."""

    def __init__(self, desk: Desk, *, parent: QWidget | None = None) -> None:
        subtitle = "find the nearest thing you can do, with what you own, today"
        super().__init__("Swap a movement", subtitle, scroll=False, parent=parent)
        self._desk = desk
        self._most = SHOWN_AT_FIRST
        self._exercise: Exercise | None = None
        self._swap: Swap | None = None
        self._cards: list[AnswerCard] = []
        self.panel = AskPanel()
        self._answers = _Answers()
        self._empty = EmptyState(
            MovePicture.SQUAT,
            "Who trains?",
            "Swaps depend on your body mass and height, and on what you own. Give those first.",
            "Go to your household",
        )
        self._quiet = EmptyState(
            MovePicture.SQUAT,
            "Name a movement",
            "Type what you would do, such as back squat, pull-up or easy run. The answers appear as you type.",
            "Try a back squat",
        )
        self._stack = QStackedWidget()
        self._arrange()
        self._connect()
        self._show_places()
        self.ask(self.panel.asked_now())

    def show_jump(self, jump: Jump) -> None:
        """Ask for the movement a jump names."""
        exercise = self._desk.catalog.exercise_by_id.get(jump.exercise_id or "")
        if exercise is not None:
            self.panel.show_movement(exercise.name)

    def ask(self, asked: Asked) -> None:
        """Work out the answers for what the panel says."""
        self._most = SHOWN_AT_FIRST
        self._exercise, self._swap = None, None
        person = self._desk.person()
        if person is None:
            self._stack.setCurrentWidget(self._empty)
            return
        prescription = self._dose(asked.dose)
        found = find_exercises(asked.movement, self._desk.catalog, 1)
        if not found:
            self.panel.movement.show_fault(_unknown(asked.movement))
            self.panel.show_note("")
            self._stack.setCurrentWidget(self._quiet)
            return
        self.panel.movement.show_fault("")
        self._exercise = found[0].exercise
        request = SwapRequest(asked=self._exercise, cause=asked.cause, spare=asked.spare, prescription=prescription)
        setting = self._desk.setting(self._place_ids()[max(0, asked.place)])
        if setting is not None:
            self._swap = swap(request, setting, self._desk.catalog)
            self._show()

    def cards(self) -> tuple[AnswerCard, ...]:
        """The answers shown, best first."""
        return tuple(self._cards)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.panel.movement.edit.setFocus(Qt.FocusReason.OtherFocusReason)

    def _arrange(self) -> None:
        right = QWidget()
        column = QVBoxLayout(right)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(PageScroll(self._answers))
        for widget in (right, self._empty, self._quiet):
            self._stack.addWidget(widget)
        self._right = right
        row = QHBoxLayout()
        row.setSpacing(Space.L)
        left = PageScroll(self.panel)
        left.setFixedWidth(self.panel.width() + Space.L)
        row.addWidget(left)
        row.addWidget(self._stack, 1)
        self.body.addLayout(row, 1)

    def _connect(self) -> None:
        self.panel.asked.connect(self.ask)
        self.panel.typed.connect(self._suggest)
        self._answers.more.clicked.connect(self._show_more)
        self._empty.acted.connect(self._go_home)
        self._quiet.acted.connect(self._try_one)
        self._desk.changed.connect(self._refresh)

    def _suggest(self, text: str) -> None:
        found = find_exercises(text, self._desk.catalog, SUGGESTIONS)
        self.panel.show_suggestions(tuple(one.exercise.name for one in found))

    def _dose(self, text: str) -> Prescription | None:
        self.panel.dose.show_fault("")
        if not text.strip():
            return None
        try:
            return parse_dose(text)
        except InputError as error:
            self.panel.dose.show_fault(str(error))
            return None

    def _place_ids(self) -> tuple[str | None, ...]:
        return tuple(place.id for place in self._desk.house().places) or (None,)

    def _show_places(self) -> None:
        names = tuple(place.name for place in self._desk.house().places) or ("Anywhere",)
        index = max(0, self.panel.place.index())
        self.panel.place.show_options(names, min(index, len(names) - 1))

    def _show(self) -> None:
        if self._swap is None:
            return
        view = present(self._swap, self._desk.units(), self._most)
        self.panel.show_note(view.note)
        self._cards = self._answers.show_swap(view)
        for card in self._cards:
            card.used.connect(self._use)
            card.picked.connect(self._pick)
        self._answers.more.setVisible(len(self._swap.answers) > self._most)
        self._stack.setCurrentWidget(self._right)

    def _show_more(self) -> None:
        self._most += MORE_EACH_TIME
        self._show()

    def _pick(self, exercise_id: str) -> None:
        for card in self._cards:
            card.set_chosen(card.view().exercise_id == exercise_id)

    def _use(self, exercise_id: str) -> None:
        """Pin the answer to the day that has the movement asked for, else to the first strength day."""
        person = self._desk.person()
        weekday = self._day_for()
        if person is None:
            return
        if weekday is None:
            self.toast.say("You have no training days yet. Give your days on the Week screen first.")
            return
        wishes = self._desk.wishes()
        asked_id = self._exercise.id if self._exercise is not None else ""
        pins = tuple(pin for pin in wishes.pins if (pin.weekday, pin.exercise_id) != (weekday, asked_id))
        if self._desk.do(SetPins(person.id, (*pins, Pin(weekday=weekday, exercise_id=exercise_id)))):
            name = self._desk.catalog.exercise_by_id[exercise_id].name
            self.toast.say(f"{name} is pinned to {WEEKDAYS[weekday]}. Rebuild the week to fit it in.", undo=True)

    def _day_for(self) -> int | None:
        week = self._desk.week()
        asked_id = self._exercise.id if self._exercise is not None else ""
        days = week.days if week is not None else ()
        for day in days:
            if any(block.exercise.id == asked_id for block in day.blocks):
                return day.weekday
        strength = [day.weekday for day in days if day.kind is DayKind.STRENGTH]
        wished = [wish.weekday for wish in self._desk.wishes().days]
        return next(iter(strength or wished), None)

    def _refresh(self, change: ChangeSet) -> None:
        if change.kinds & SETTING_KINDS or not self._cards:
            self._show_places()
            self.ask(self.panel.asked_now())

    def _go_home(self) -> None:
        self._desk.jump.emit(Jump(screen=ScreenName.HOUSEHOLD))

    def _try_one(self) -> None:
        self.panel.show_movement("Back squat")


def _unknown(text: str) -> str:
    if not text.strip():
        return ""
    return "No movement here answers to that. Try another word for it."


class _Answers(QWidget):
    """Heading, answer cards, and the card of what was left out."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._heading = Text("", TextRole.SMALL, Ink.SOFT)
        self._cards = QVBoxLayout()
        self._cards.setSpacing(Space.M)
        self.more = LinkButton("Show more")
        self.left_out = _LeftOut()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Space.M)
        column.addWidget(self._heading)
        column.addLayout(self._cards)
        column.addWidget(self.more, 0, Qt.AlignmentFlag.AlignLeft)
        column.addWidget(self.left_out)
        column.addStretch(1)

    def show_swap(self, view: SwapView) -> list[AnswerCard]:
        """Paint a swap; the cards made."""
        self._heading.setText(view.heading)
        while (item := self._cards.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        cards = [AnswerCard(answer, first=at == 0) for at, answer in enumerate(view.answers)]
        for card in cards:
            self._cards.addWidget(card)
        self.left_out.show_left_out(view.left_out)
        return cards


class _LeftOut(Card):
    """The first few movements left out; all of them with their reasons on demand."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self._short = Text("", TextRole.BODY, wrap=True)
        self._all = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        self._toggle = LinkButton("")
        self._toggle.clicked.connect(self._open)
        self._count = 0
        for widget in (self._short, self._toggle, self._all):
            self.body.addWidget(widget)

    def show_left_out(self, rows: tuple[tuple[str, str], ...]) -> None:
        """Paint other rows of (name, reason)."""
        self._count = len(rows)
        first = "; ".join(f"{name} ({why})" for name, why in rows[:LEFT_OUT_AT_FIRST])
        self._short.setText(f"Left out: {first}.")
        self._all.setText("\n".join(f"{name}: {why}" for name, why in rows))
        self._all.hide()
        self._toggle.show_label(f"All {len(rows)} and why")
        self._toggle.setVisible(len(rows) > LEFT_OUT_AT_FIRST)
        self.setVisible(bool(rows))

    def text(self) -> str:
        """Everything left out, as shown when open."""
        return self._all.text()

    def _open(self) -> None:
        opening = not self._all.isVisible()
        self._all.setVisible(opening)
        self._toggle.show_label("Fewer" if opening else f"All {self._count} and why")
