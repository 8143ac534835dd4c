"""The week screen: readiness once, days and goals, then seven days with what they train, pour and are held to.

Planning runs off the GUI thread; the newest request wins and can be stopped. Every plan is checked by the independent
validator before it is shown. Pins, bans, days and goals are saved at once; the week itself changes only when the
person asks for it.
"""

from __future__ import annotations

from functools import partial

from PySide6.QtGui import QCloseEvent
from PySide6.QtWidgets import QStackedWidget, QWidget

from core.errors import FillmarkError
from core.house.wishes import Pin
from core.plan.model import Status, Week
from core.store.commands import SavePlan
from core.store.values import ChangeSet, Kind
from gui.desk.desk import SETTING_KINDS, Desk, Jump
from gui.shell.entry import ScreenName
from gui.theme import Icon
from gui.week.bar_words import PLANNING, subtitle
from gui.week.clash_card import ClashCard
from gui.week.day_words import moves_sentence
from gui.week.freshness import Freshness, Inputs
from gui.week.move_flow import AROUND, MoveFlow
from gui.week.orders import plan_order
from gui.week.papers import Papers
from gui.week.planning import Kept, Planned, plan
from gui.week.readiness_card import ReadinessCard
from gui.week.readiness_due import ReadinessDue
from gui.week.ribbon import Ribbon
from gui.week.set_up_page import SetUpPage, centred
from gui.week.solving import Solving
from gui.week.week_flow import WeekFlow
from gui.week.week_page import WeekPage
from gui.week.wish_deeds import WishDeeds
from gui.widgets import EmptyState, Page, PrimaryButton, SecondaryButton
from gui.widgets.page import PageScroll

NOT_YET = "No week yet"
NOBODY = "A week is built from who you are and what you own. Start with your household."
CUT_SHORT = " Planning was cut short: the week is sound, but may not be the best one."


class WeekScreen(Page):
    """See the module."""

    def __init__(self, desk: Desk, *, parent: QWidget | None = None) -> None:
        super().__init__("Week", "", scroll=False, gutter=False, parent=parent)
        self._desk = desk
        self._deeds = WishDeeds(desk)
        self._fresh = Freshness()
        self._due = ReadinessDue(desk)
        self._week: Week | None = None
        self._person_id = ""
        self.solving = Solving(self)
        self.print_button, self.calendar_button = SecondaryButton("Print"), SecondaryButton("To calendar")
        self.days_button, self.again = SecondaryButton("Days and goals"), SecondaryButton("Plan again")
        self.rebuild = PrimaryButton("Plan again")
        self.stop = SecondaryButton("Stop planning")
        self.nobody = EmptyState(Icon.CALENDAR, NOT_YET, NOBODY, "Go to your household")
        self.readiness = ReadinessCard()
        self.set_up = SetUpPage()
        self.clash = ClashCard()
        self.page = WeekPage(Ribbon(desk))
        self.flow = WeekFlow(desk, self.page, self._deeds)
        self.moves = MoveFlow(desk, self.page.ribbon, self._fresh, self)
        self.papers = Papers(desk, self.flow, self)
        self._stack = QStackedWidget()
        self._readiness_page = PageScroll(centred(self.readiness))
        self._set_up_page = PageScroll(self.set_up)
        self._clash_page = PageScroll(centred(self.clash))
        self._arrange()
        self._connect()
        self._show_saved()

    def show_jump(self, jump: Jump) -> None:
        """Plan at once when the jump asks for it, or when there is no week yet and everything a plan needs."""
        if jump.plan or (self._week is None and self._desk.wishes().days):
            self.plan_now()

    def plan_now(self) -> None:
        """Plan the week for the wishes as they are, keeping what can stay of the week there is."""
        person, wishes = self._desk.person(), self._desk.wishes()
        if person is None:
            self._show_saved()
        elif self._due.is_due(person):
            self._turn_to(self._readiness_page)
        elif not wishes.days:
            self._show_set_up()
            self.toast.say("Choose at least one day first.")
        else:
            self._start(Inputs.of(wishes, person, self._desk.house()))

    def _start(self, inputs: Inputs) -> None:
        self._paint_set_up()
        order = plan_order(self._desk, self.page.ribbon, self.set_up.block.wish())
        if order is not None:
            done = partial(self._show_planned, inputs)
            self.solving.start(partial(plan, order), done=done, failed=self._show_failed)

    def week(self) -> Week | None:
        """The week the person has."""
        return self._week

    def close_work(self) -> None:
        """Stop whatever runs, and wait for its thread to end."""
        self.solving.close()
        self.page.ribbon.solving.close()
        self.moves.close()
        self.flow.close_work()
        self.papers.close()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Closed as a window of its own; inside the main window that one tells."""
        self.close_work()
        super().closeEvent(event)

    def _arrange(self) -> None:
        for button in self._buttons():
            self.bar.add_action(button)
        for page in (self.nobody, self._readiness_page, self._set_up_page, self._clash_page, self.page):
            self._stack.addWidget(page)
        self.body.addWidget(self._stack, 1)

    def _buttons(self) -> tuple[PrimaryButton | SecondaryButton, ...]:
        plain = (self.print_button, self.calendar_button, self.days_button, self.again)
        return (*plain, self.rebuild, self.stop)

    def _connect(self) -> None:
        self.rebuild.clicked.connect(self.plan_now)
        self.again.clicked.connect(self.plan_now)
        self.stop.clicked.connect(self._stop)
        self.days_button.clicked.connect(self._turn_days)
        self.print_button.clicked.connect(self.papers.print_week)
        self.calendar_button.clicked.connect(self.papers.to_calendar)
        self.papers.said.connect(self.toast.say)
        self.toast.action_wanted.connect(self._act)
        self.nobody.acted.connect(self._go_home)
        self.readiness.answered.connect(self._save_readiness)
        self.set_up.days.changed.connect(self._deeds.set_days)
        self.set_up.days.done.connect(self.plan_now)
        self.set_up.goals.changed.connect(self._deeds.set_goals)
        self.set_up.quiet.changed.connect(self._deeds.set_quiet)
        self.solving.busy_changed.connect(self._paint_bar)
        self._desk.changed.connect(self._refresh)
        self._connect_clash()
        self.flow.looked.connect(self._paint_bar)
        self.flow.marks.refused.connect(self.toast.say)
        self.flow.banned.connect(self._say_banned)
        self.flow.move_wanted.connect(self.moves.move)
        self.moves.moved.connect(self.flow.show_moved)
        self.moves.moved.connect(self._paint_bar)
        self.moves.refused.connect(partial(self.toast.say, action=AROUND))

    def _connect_clash(self) -> None:
        self.clash.pin_removed.connect(self._unpin_and_plan)
        self.clash.days_wanted.connect(self._show_set_up)
        self.clash.week_wanted.connect(self._show_saved)

    def _refresh(self, change: ChangeSet) -> None:
        if not change.kinds & ({Kind.WEEK, Kind.LOG, Kind.SETTINGS} | SETTING_KINDS):
            return
        person = self._desk.person()
        other = person is None or person.id != self._person_id
        page = self._stack.currentWidget()
        if other or page is self.nobody:
            self.solving.stop()
            self._show_saved()
        elif page is self._set_up_page:
            self._week = self._desk.week()
            self._paint_set_up()
        elif page is self.page:
            self._show_saved()
        self.page.ribbon.refresh()
        self._paint_bar()

    def _show_saved(self) -> None:
        """Show the week on disk, or what is still missing for one."""
        person = self._desk.person()
        if person is None or person.id != self._person_id:
            self.flow.close_detail()
        self._person_id = person.id if person is not None else ""
        self._week = self._desk.week()
        self.page.ribbon.refresh()
        if person is None:
            self._turn_to(self.nobody)
        elif self._week is not None:
            self.flow.show_week(self._week)
            self._turn_to(self.page)
        elif self._due.is_due(person):
            self._turn_to(self._readiness_page)
        else:
            self._show_set_up()

    def _turn_to(self, page: QWidget) -> None:
        self._stack.setCurrentWidget(page)
        self._paint_bar()

    def _show_set_up(self) -> None:
        self._paint_set_up()
        self._turn_to(self._set_up_page)

    def _paint_set_up(self) -> None:
        places = self._desk.house().places
        self.set_up.show_wishes(self._desk.wishes(), places, has_week=self._week is not None)
        self.set_up.block.show_block(self.page.ribbon.block(), self.page.ribbon.today())

    def _turn_days(self) -> None:
        """To the days, or from them back to the week."""
        if self._stack.currentWidget() is self._set_up_page and self._week is not None:
            self._show_saved()
        else:
            self._show_set_up()

    def _show_planned(self, inputs: Inputs, planned: Planned) -> None:
        week, before = planned.week, self._week
        if planned.errors:
            self.toast.say(f"This plan broke a rule and is not shown: {planned.errors[0]}")
        elif week.clash is not None or week.status is Status.IMPOSSIBLE:
            self._show_clash(planned)
        elif planned.kept is not None:
            self._keep(planned.kept, before, inputs)

    def _keep(self, kept: Kept, before: Week | None, inputs: Inputs) -> None:
        """Save a planned week and its block; that they changed paints them, on the page turned to before."""
        week = kept.week
        self._stack.setCurrentWidget(self.page)
        self.page.ribbon.expect(kept.saved_block, kept.block)
        self._fresh.planned(kept.saved_week, inputs)
        if not self._desk.do(SavePlan(self._person_id, kept.saved_week, kept.saved_block)):
            self._show_saved()
            return
        short = CUT_SHORT if week.status is Status.CUT_SHORT else ""
        self.toast.say(f"{moves_sentence(before, week)}{short}", undo=True)

    def _show_clash(self, planned: Planned) -> None:
        if planned.week.clash is not None:
            self.clash.show_clash(planned.week.clash, planned.pins, has_week=self._week is not None)
            self._turn_to(self._clash_page)

    def _show_failed(self, error: Exception) -> None:
        if not isinstance(error, FillmarkError):
            raise error
        self.toast.say(str(error))

    def _stop(self) -> None:
        self.solving.stop()
        self.toast.say("Stopped. Nothing was changed.")

    def _paint_bar(self, *_ignored: object) -> None:
        """Title, and the buttons that make sense now."""
        busy = self.solving.is_busy()
        page = self._stack.currentWidget()
        on_week, on_days = page is self.page, page is self._set_up_page
        has_week = self._week is not None
        fresh = on_week and self._is_fresh()
        self.print_button.setVisible(on_week)
        self.calendar_button.setVisible(on_week)
        self.days_button.setVisible(on_week or (on_days and has_week))
        self.days_button.show_label("Back to my week" if on_days else "Days and goals")
        self.rebuild.setVisible(on_week and not busy and not fresh)
        self.again.setVisible(on_week and not busy and fresh)
        self.stop.setVisible(busy)
        words = subtitle(self._desk.person(), self.flow.when() if on_week else "", stale=on_week and not fresh)
        self.show_title(self.flow.title() if on_week else "Week", PLANNING if busy else words)

    def _is_fresh(self) -> bool:
        person, saved = self._desk.person(), self._desk.record.week(self._person_id)
        if person is None or saved is None or self._week is None:
            return False
        house = self._desk.house()
        return self._fresh.is_fresh(saved, self._week, Inputs.of(self._desk.wishes(), person, house), house)

    def _save_readiness(self) -> None:
        self._due.answer()
        if self._desk.wishes().days:
            self.plan_now()
        else:
            self._show_saved()

    def _say_banned(self, name: str) -> None:
        self.toast.say(f"{name} stays out from the next plan on.", undo=True, action="Plan again now")

    def _act(self) -> None:
        """The step the undo line offers: plan, with the wishes of a move that was refused if there was one."""
        self.moves.plan_around()
        self.plan_now()

    def _unpin_and_plan(self, pin: Pin) -> None:
        if self._deeds.remove_pin(pin):
            self.plan_now()

    def _go_home(self) -> None:
        self._desk.jump.emit(Jump(screen=ScreenName.HOUSEHOLD))
