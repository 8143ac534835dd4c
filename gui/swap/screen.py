"""The swap screen: the question on the left, answers on the right, what was left out below; answers follow typing.

A question is answered off the GUI thread, and the answers before it stay until the newer ones are there.
"""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QStackedWidget, QWidget

from core.effort.capacity import Prescription
from core.effort.dose_text import parse_dose
from core.errors import InputError
from core.exercise.model import Exercise
from core.house.own import OwnKind
from core.store.values import ChangeSet, Kind
from gui.desk.desk import SETTING_KINDS, Desk, Jump
from gui.desk.wording import Wording
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
from gui.swap.question import examples, question_of, show_people_and_places, show_things, week_names
from gui.swap.start_page import StartPage
from gui.swap.use_flow import UseFlow
from gui.swap.ways_flow import WaysFlow
from gui.swap.ways_words import way_rows
from gui.theme import MovePicture, Space
from gui.widgets import EmptyState, Page
from gui.widgets.page import PageScroll, on_top

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
        self._most = SHOWN_AT_FIRST
        self._found: Found | None = None
        self._came_from: tuple[str, int] | None = None
        self._using = ""
        self.asking = Asking(desk, self)
        self.panel = AskPanel()
        self.answers = Answers()
        self.compare = ComparePage()
        self.start = StartPage(examples(desk))
        self._comparing = CompareFlow(self.answers, self.compare, self)
        self._ways = WaysFlow(desk, self.panel, self.answers.ways, self)
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
        show_things(self.panel, self._desk, self._using)
        self.ask(self.panel.asked_now())

    def show_jump(self, jump: Jump) -> None:
        """Ask for the movement a jump names, and for answers with the thing it names."""
        if jump.thing_id:
            self._using = jump.thing_id
            show_things(self.panel, self._desk, self._using)
            self.ask(self.panel.asked_now())
        exercise = self._desk.catalog.exercise_by_id.get(jump.exercise_id or "")
        if exercise is not None:
            self._came_from = (exercise.id, jump.weekday) if jump.weekday is not None else None
            self.panel.show_movement(exercise.name)

    def ask(self, asked: Asked) -> None:
        """Have the answers for what the panel says worked out."""
        question = self._question(asked)
        self._using = question.using if question is not None else self._using
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
        self._compare_page = PageScroll(on_top(self.compare))
        self._start_page = PageScroll(on_top(self.start))
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
        panel.place.chosen.connect(self._look_around)
        panel.movement.entered.connect(self._focus_answers)
        self.asking.answered.connect(self._show_found)
        self.asking.ways.connect(self._show_ways)
        answers.used.connect(self._use)
        answers.picked.connect(answers.choose)
        answers.left.connect(self._focus_movement)
        answers.more.clicked.connect(self._show_more)
        answers.bare.link_followed.connect(self._follow)
        answers.chain.wanted.connect(panel.show_movement)
        self.compare.used.connect(self._use_compared)
        self._comparing.opened.connect(partial(self._stack.setCurrentWidget, self._compare_page))
        self._comparing.closed.connect(partial(self._stack.setCurrentWidget, self._answers_page))
        self.start.chosen.connect(panel.show_movement)
        self.start.own_wanted.connect(self._add_own)
        answers.own.clicked.connect(self._make_own)
        self._nobody.acted.connect(self._go_home)
        self._desk.changed.connect(self._refresh)

    def _question(self, asked: Asked) -> Question | None:
        return question_of(asked, self._dose(asked.dose), self._desk)

    def _look_around(self) -> None:
        """Another place has other things."""
        show_things(self.panel, self._desk, self._using)
        self.ask(self.panel.asked_now())

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
            self._show_start(NO_SUCH_TITLE, NO_SUCH_NOTE, unknown=True)
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
        self.answers.ways.show_ways(WAYS_OUT if few else WAYS_MORE, way_rows(ways, self._desk.catalog.kind_by_id))

    def _show_start(self, title: str, note: str, *, unknown: bool = False) -> None:
        self._found = None
        self.panel.show_note("")
        if not self.panel.movement.text().strip():
            self.panel.show_read_as("")
        self.start.show_start(title, note, week_names(self._desk), unknown=unknown)
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

    def _choose_person(self, index: int) -> None:
        self._desk.choose_person(self._desk.house().people[index].id)

    def _refresh(self, change: ChangeSet) -> None:
        if change.kinds & (SETTING_KINDS | {Kind.SETTINGS, Kind.CATALOG}):
            show_people_and_places(self.panel, self._desk)
            show_things(self.panel, self._desk, self._using)
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

    def _add_own(self) -> None:
        name = self.panel.movement.text().strip()
        self._desk.jump.emit(Jump(screen=ScreenName.OWN, own=OwnKind.EXERCISE, name=name))

    def _make_own(self) -> None:
        """A version of the movement asked for; an own one is edited."""
        if self._found is not None and self._found.swap is not None:
            asked_id = self._found.swap.asked.id
            self._desk.jump.emit(Jump(screen=ScreenName.OWN, own=OwnKind.EXERCISE, exercise_id=asked_id))

    def _go_home(self) -> None:
        self._desk.jump.emit(Jump(screen=ScreenName.HOUSEHOLD))


def _named(exercise: Exercise, matched: str) -> tuple[str, str]:
    """The name, and the alias that answered where it is another word."""
    alias = "" if matched in {exercise.name, exercise.id} else matched
    return exercise.name, alias
