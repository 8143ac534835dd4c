"""The swap screen: the question on the left, answers on the right, what was left out below; answers follow typing.

A question is answered off the GUI thread, and the answers before it stay until the newer ones are there.
"""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget

from core.effort.capacity import Prescription
from core.effort.dose_text import parse_dose
from core.errors import InputError
from core.exercise.model import Demand, Exercise
from core.store.values import ChangeSet, Kind
from gui.desk.desk import SETTING_KINDS, Desk, Jump
from gui.desk.wording import Wording
from gui.household.adding import adding, one_of_kind, things_of
from gui.shell.entry import ScreenName
from gui.swap.answer_card import AnswerCard
from gui.swap.answers import TO_HOUSEHOLD, Answers
from gui.swap.ask_panel import NARROW_WIDTH, PANEL_WIDTH, Asked, AskPanel
from gui.swap.asking import Asking, Found, Question, WaysOut
from gui.swap.compare_flow import CompareFlow
from gui.swap.compare_page import ComparePage
from gui.swap.dose_hint import usual_dose
from gui.swap.left_out_words import left_out_view
from gui.swap.present import present
from gui.swap.question import examples, place_ids, question_of, show_people_and_places, week_names
from gui.swap.start_page import StartPage
from gui.swap.use_flow import UseFlow
from gui.swap.ways_words import way_rows
from gui.theme import MovePicture, Space
from gui.widgets import EmptyState, Page
from gui.widgets.page import PageScroll

SHOWN_AT_FIRST, MORE_EACH_TIME = 6, 12
NARROW_BELOW = 880
START_TITLE = "Which movement would you do?"
START_NOTE = "Type any name you know it by; half a word will do. The answers come as you type."
NO_SUCH_TITLE = "No movement here answers to that"
NO_SUCH_NOTE = "Try another word for it, or the pattern it belongs to, such as squat, row or carry."
WAYS_OUT, WAYS_MORE = "The nearest ways out", "What would open more"


class SwapScreen(Page):
    """See the module."""

    def __init__(self, desk: Desk, *, parent: QWidget | None = None) -> None:
        subtitle = "find the nearest thing you can do, with what you own, today"
        super().__init__("Swap a movement", subtitle, scroll=False, gutter=False, parent=parent)
        self._desk = desk
        self._icons = {kind.id: kind.icon for kind in desk.catalog.kinds}
        self._most = SHOWN_AT_FIRST
        self._found: Found | None = None
        self._came_from: tuple[str, int] | None = None
        self.asking = Asking(desk, self)
        self.panel = AskPanel()
        self.answers = Answers()
        self.compare = ComparePage()
        self.start = StartPage(examples(desk))
        self._comparing = CompareFlow(self.answers, self.compare, self)
        self.use = UseFlow(desk, self.answers.used_card, self)
        self._nobody = EmptyState(
            MovePicture.SQUAT,
            "Who trains?",
            "Swaps depend on your body mass and height, and on what you own. Give those first.",
            "Go to your household",
        )
        self._stack = QStackedWidget()
        self._arrange()
        self._connect()
        show_people_and_places(self.panel, self._desk)
        self.ask(self.panel.asked_now())

    def show_jump(self, jump: Jump) -> None:
        """Ask for the movement a jump names."""
        exercise = self._desk.catalog.exercise_by_id.get(jump.exercise_id or "")
        if exercise is not None:
            self._came_from = (exercise.id, jump.weekday) if jump.weekday is not None else None
            self.panel.show_movement(exercise.name)

    def ask(self, asked: Asked) -> None:
        """Have the answers for what the panel says worked out."""
        question = self._question(asked)
        if self._desk.person() is None:
            self.asking.stop()
            self._stack.setCurrentWidget(self._nobody)
        elif question is None:
            self.asking.stop()
            self._show_start(START_TITLE, START_NOTE)
        else:
            self.asking.ask(question)

    def answer_now(self) -> None:
        """Work out at once what the panel says, for pictures of the screen."""
        question = self._question(self.panel.asked_now())
        if question is not None:
            self.asking.answer_now(question)

    def cards(self) -> tuple[AnswerCard, ...]:
        """The answers shown, best first."""
        return self.answers.cards()

    def is_comparing(self) -> bool:
        """Whether two answers stand side by side."""
        return self._stack.currentWidget() is self._compare_page

    def is_starting(self) -> bool:
        """Whether no movement is chosen."""
        return self._stack.currentWidget() is self._start_page

    def close_work(self) -> None:
        """Wait until nothing works in the background any more."""
        self.asking.close()

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._focus_movement()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        width = NARROW_WIDTH if self.width() < NARROW_BELOW else PANEL_WIDTH
        if width != self.panel.width():
            self.panel.setFixedWidth(width)
            self._left.setFixedWidth(width + Space.L)

    def _arrange(self) -> None:
        self._answers_page = PageScroll(self.answers)
        self._compare_page = PageScroll(_on_top(self.compare))
        self._start_page = PageScroll(_on_top(self.start))
        for page in (self._answers_page, self._compare_page, self._start_page, self._nobody):
            self._stack.addWidget(page)
        row = QHBoxLayout()
        row.setSpacing(Space.S)
        self._left = PageScroll(self.panel)
        self._left.setFixedWidth(PANEL_WIDTH + Space.L)
        row.addWidget(self._left)
        row.addWidget(self._stack, 1)
        self.body.addLayout(row, 1)

    def _connect(self) -> None:
        panel, answers = self.panel, self.answers
        panel.asked.connect(self.ask)
        panel.person_chosen.connect(self._choose_person)
        panel.movement.entered.connect(self._focus_answers)
        self.asking.answered.connect(self._show_found)
        self.asking.ways.connect(self._show_ways)
        answers.used.connect(self._use)
        answers.picked.connect(answers.choose)
        answers.left.connect(self._focus_movement)
        answers.more.clicked.connect(self._show_more)
        answers.bare.link_followed.connect(self._follow)
        answers.chain.wanted.connect(panel.show_movement)
        answers.ways.have.connect(self._have)
        answers.ways.look.connect(self._look)
        answers.ways.unspare.connect(self._unspare)
        answers.ways.drop.connect(panel.causes.button(0).click)
        self.compare.used.connect(self._use_compared)
        self._comparing.opened.connect(partial(self._stack.setCurrentWidget, self._compare_page))
        self._comparing.closed.connect(partial(self._stack.setCurrentWidget, self._answers_page))
        self.start.chosen.connect(panel.show_movement)
        self._nobody.acted.connect(self._go_home)
        self._desk.changed.connect(self._refresh)

    def _question(self, asked: Asked) -> Question | None:
        return question_of(asked, self._dose(asked.dose), self._desk)

    def _dose(self, text: str) -> Prescription | None:
        self.panel.dose.show_fault("")
        if not text.strip():
            return None
        try:
            return parse_dose(text)
        except InputError as error:
            self.panel.dose.show_fault(str(error))
            return None

    def _show_found(self, found: Found) -> None:
        """The names that come near, and the answers; the newest question only."""
        panel = self.panel
        typed = found.question.text
        best = found.near[0] if found.near else None
        exact = best is not None and best.exact
        panel.movement.show_near(() if exact else tuple(_named(one.exercise, one.matched) for one in found.near))
        said = best is None or best.exercise.name.casefold() == typed.strip().casefold()
        panel.show_read_as("" if best is None or said else best.exercise.name)
        if best is None or found.swap is None:
            self._show_start(NO_SUCH_TITLE, NO_SUCH_NOTE)
            return
        panel.show_usual_dose(usual_dose(best.exercise, found.question.person, self._desk.units()))
        self._most = SHOWN_AT_FIRST
        self._comparing.forget()
        if self._found is None or self._found.swap is None or self._found.swap.asked.id != best.exercise.id:
            self.answers.used_card.hide()
        self._found = found
        self.answers.show_bare(not found.question.house.things)
        self._show()
        self._stack.setCurrentWidget(self._answers_page)

    def _show(self) -> None:
        if self._found is None or self._found.swap is None:
            return
        swap, cause = self._found.swap, self._found.question.cause
        house = self._found.question.house
        names = (*(thing.name for thing in house.things), *(place.name for place in house.places))
        wording = Wording(self._desk.units(), names)
        view = present(swap, cause, wording, self._most)
        self.panel.show_note(view.note)
        self.answers.show_swap(view, left_out_view(swap, self._desk.catalog, wording))
        self._comparing.mark()

    def _show_ways(self, ways: WaysOut) -> None:
        few = self._found is None or self._found.swap is None or not self._found.swap.answers
        self.answers.ways.show_ways(WAYS_OUT if few else WAYS_MORE, way_rows(ways, self._icons))

    def _show_start(self, title: str, note: str) -> None:
        self._found = None
        self.panel.show_note("")
        if not self.panel.movement.text().strip():
            self.panel.show_read_as("")
        self.start.show_start(title, note, week_names(self._desk))
        self._stack.setCurrentWidget(self._start_page)

    def _show_more(self) -> None:
        self._most += MORE_EACH_TIME
        self._show()

    def _use(self, exercise_id: str) -> None:
        if self._found is None or self._found.swap is None:
            return
        asked = self._found.swap.asked
        came_from = self._came_from[1] if self._came_from is not None and self._came_from[0] == asked.id else None
        self.use.use(self._desk.catalog.exercise_by_id[exercise_id], asked, came_from)
        self._answers_page.ensureVisible(0, 0)

    def _use_compared(self, exercise_id: str) -> None:
        self._comparing.leave()
        self._use(exercise_id)

    def _have(self, kind_id: str) -> None:
        """The person has one after all: it joins the household, and the answers follow."""
        taken = (thing.id for thing in self._desk.house().things)
        self._desk.do(adding(things_of((one_of_kind(self._desk.catalog.kind_by_id[kind_id]),), taken)))

    def _look(self, place_id: str) -> None:
        self.panel.place.show_index(place_ids(self._desk).index(place_id))
        self.ask(self.panel.asked_now())

    def _unspare(self, demand: str) -> None:
        self.panel.unspare(Demand(demand))

    def _choose_person(self, index: int) -> None:
        self._desk.choose_person(self._desk.house().people[index].id)

    def _refresh(self, change: ChangeSet) -> None:
        if change.kinds & (SETTING_KINDS | {Kind.SETTINGS}):
            show_people_and_places(self.panel, self._desk)
            self.ask(self.panel.asked_now())

    def _focus_answers(self) -> None:
        self.panel.movement.hide_near()
        if self.cards() and self._stack.currentWidget() is self._answers_page:
            self.cards()[0].setFocus(Qt.FocusReason.TabFocusReason)

    def _focus_movement(self) -> None:
        self.panel.movement.edit.setFocus(Qt.FocusReason.OtherFocusReason)

    def _follow(self, link: str) -> None:
        if link == TO_HOUSEHOLD:
            self._go_home()

    def _go_home(self) -> None:
        self._desk.jump.emit(Jump(screen=ScreenName.HOUSEHOLD))


def _on_top(card: QWidget) -> QWidget:
    """A card no taller than what it holds, at the top of its page."""
    holder = QWidget()
    column = QVBoxLayout(holder)
    column.setContentsMargins(0, 0, 0, 0)
    column.addWidget(card)
    column.addStretch(1)
    return holder


def _named(exercise: Exercise, matched: str) -> tuple[str, str]:
    """The name, and the alias that answered where it is another word."""
    alias = "" if matched in {exercise.name, exercise.id} else matched
    return exercise.name, alias
