"""The week screen: eight weeks as a ribbon, seven days as columns, and below them what it trains, pours and checks.

Planning runs off the GUI thread; the newest request wins. Every plan is checked by the independent validator before it
is shown. Pins, bans and days are saved at once; the week itself changes only on "Rebuild around my changes".
"""

from __future__ import annotations

import datetime
from dataclasses import dataclass, replace
from functools import partial

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QHBoxLayout, QMenu, QStackedWidget, QVBoxLayout, QWidget

from core.errors import FillmarkError
from core.house.model import House, Person
from core.house.wishes import DayWish, Pin
from core.knowledge import Catalog
from core.plan.model import Status, Week, WeekRequest
from core.store.commands import ChangeSettings, SetPins, SetWishes
from core.store.values import ChangeSet, Kind
from gui.desk.desk import SETTING_KINDS, Desk, Jump
from gui.shell.entry import ScreenName
from gui.theme import Icon, Space
from gui.week.days_panel import DaysPanel
from gui.week.detail import DetailCard
from gui.week.parts import ChecksCard, ClashCard, FillsCard, TrainedCard
from gui.week.present import block_detail, check_lines, day_views, fills_view, low_target, parted, trained_rows
from gui.week.readiness_card import ReadinessCard
from gui.week.ribbon import Ribbon
from gui.widgets import DayColumn, EmptyState, Page, PrimaryButton, SecondaryButton
from gui.widgets.page import PageScroll
from gui.worker import Errand, Report


@dataclass(frozen=True, slots=True, kw_only=True)
class Planned:
    """What the worker brings back: a checked week."""

    week: Week
    errors: tuple[str, ...]


def plan(request: WeekRequest, house: House, person: Person, catalog: Catalog, report: Report) -> Planned:
    """Plan and check a week. Runs in the worker; the solver is loaded there at its first use."""
    from core.plan.validate import find_week_errors
    from core.plan.week import plan_week

    report(0, 1)
    week = plan_week(request, house, person, catalog)
    return Planned(week=week, errors=tuple(find_week_errors(week, request, house, person)))


class WeekScreen(Page):
    """See the module."""

    def __init__(self, desk: Desk, *, parent: QWidget | None = None) -> None:
        super().__init__("Week", "built from what you own · nothing to buy", scroll=False, parent=parent)
        self._desk = desk
        self._errand = Errand(self)
        self._week: Week | None = None
        self._opened = ""
        self._stack = QStackedWidget()
        self.days_button = SecondaryButton("Days and minutes")
        self.rebuild = PrimaryButton("Plan my week")
        self.days_panel = DaysPanel()
        self.readiness = ReadinessCard()
        self.clash = ClashCard()
        self.columns = tuple(DayColumn() for _ in range(7))
        self.trained, self.fills, self.checks = TrainedCard(), FillsCard(), ChecksCard()
        self.detail = DetailCard()
        self.ribbon = Ribbon(desk)
        self._nobody = EmptyState(
            Icon.CALENDAR,
            "No week yet",
            "A week is built from who you are and what you own. Start with your household.",
            "Go to your household",
        )
        self._arrange()
        self._connect()
        self._show_saved()

    def show_jump(self, jump: Jump) -> None:
        """Coming from the first run: plan at once when there is everything a plan needs."""
        if jump.screen is ScreenName.WEEK and self._week is None and self._desk.wishes().days:
            self.plan_now()

    def plan_now(self) -> None:
        """Plan the week for the wishes as they are, keeping what can stay of the week there is."""
        person = self._desk.person()
        if person is None:
            self._show_saved()
            return
        if self._desk.settings().ready_on is None:
            self._stack.setCurrentWidget(self._readiness_page)
            return
        wishes = self._desk.wishes()
        if not wishes.days:
            self._show_days()
            return
        request = WeekRequest(wishes=wishes, keep=self._week)
        work = partial(plan, request, self._desk.house(), person, self._desk.catalog)
        self._errand.start(work, done=self._show_planned, failed=self._show_failed)

    def week(self) -> Week | None:
        """The week shown."""
        return self._week

    def _arrange(self) -> None:
        self.bar.add_action(self.days_button)
        self.bar.add_action(self.rebuild)
        self._readiness_page = PageScroll(self.readiness)
        self._days_page = PageScroll(self.days_panel)
        self._clash_page = PageScroll(self.clash)
        self._week_page = self._made_week_page()
        for page in (self._nobody, self._readiness_page, self._days_page, self._clash_page, self._week_page):
            self._stack.addWidget(page)
        self.body.addWidget(self._stack, 1)

    def _made_week_page(self) -> QWidget:
        page = QWidget()
        column = QVBoxLayout(page)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Space.M)
        days = QWidget()
        row = QHBoxLayout(days)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Space.S)
        for day in self.columns:
            row.addWidget(day, 1)
        self._parts = QWidget()
        parts = QHBoxLayout(self._parts)
        parts.setContentsMargins(0, 0, 0, 0)
        parts.setSpacing(Space.M)
        for part, share in ((self.trained, 11), (self.fills, 10), (self.checks, 10)):
            parts.addWidget(part, share)
        column.addWidget(self.ribbon)
        column.addWidget(PageScroll(days), 1)
        column.addWidget(self._parts)
        column.addWidget(self.detail)
        self.detail.hide()
        return page

    def _connect(self) -> None:
        self.rebuild.clicked.connect(self.plan_now)
        self.days_button.clicked.connect(self._show_days)
        self.days_panel.changed.connect(self._save_days)
        self.days_panel.done.connect(self.plan_now)
        self.readiness.answered.connect(self._save_readiness)
        self._nobody.acted.connect(self._go_home)
        self._errand.busy_changed.connect(self._show_busy)
        self._desk.changed.connect(self._refresh)
        self.ribbon.week_wanted.connect(self._show_other_week)
        self.detail.pin_wanted.connect(self._toggle_pin)
        self.detail.ban_wanted.connect(self._ban)
        self.detail.swap_wanted.connect(self._swap)
        self.detail.closed.connect(self._close_detail)
        for column in self.columns:
            column.block_chosen.connect(self._open)
            column.block_menu_wanted.connect(self._offer)

    def _show_saved(self) -> None:
        """Show the week on disk, or what is still missing for one."""
        self._week = self._desk.week()
        if self._desk.person() is None:
            self._stack.setCurrentWidget(self._nobody)
        elif self._week is not None:
            self._show_week(self._week)
        elif self._desk.settings().ready_on is None:
            self._stack.setCurrentWidget(self._readiness_page)
        else:
            self._show_days()
        self.rebuild.setVisible(self._desk.person() is not None)
        self.days_button.setVisible(self._desk.person() is not None)
        self.rebuild.show_label("Rebuild around my changes" if self._week is not None else "Plan my week")

    def _show_week(self, week: Week) -> None:
        person = self._desk.person()
        units, pins = self._desk.units(), self._desk.wishes().pins
        today = datetime.date.today().weekday()  # noqa: DTZ011  # the local day of the person in front of it
        for column, view in zip(self.columns, day_views(week, units, pins, today), strict=True):
            column.show_day(view)
        if person is not None:
            self.trained.show_rows(trained_rows(week, low_target(person.experience)))
        self.fills.show_fills(fills_view(week, today, units))
        self.checks.show_checks(check_lines(week))
        self._stack.setCurrentWidget(self._week_page)
        if self._opened:
            self._open(self._opened)

    def _show_planned(self, planned: Planned) -> None:
        if planned.errors:
            self.toast.say(f"This plan broke a rule and is not shown: {planned.errors[0]}")
            return
        week = planned.week
        if week.status is Status.IMPOSSIBLE and week.clash is not None:
            self.clash.show_clash(week.clash)
            self._stack.setCurrentWidget(self._clash_page)
            return
        self._desk.save_week(week, datetime.date.today())  # noqa: DTZ011  # local day
        if week.status is Status.CUT_SHORT:
            self.toast.say("Planning was cut short: this week is sound, but may not be the best one.")

    def _show_failed(self, error: Exception) -> None:
        if not isinstance(error, FillmarkError):
            raise error
        self.toast.say(str(error))

    def _show_busy(self, busy: bool) -> None:
        self.rebuild.setEnabled(not busy)
        person = self._desk.person()
        name = person.name if person is not None else ""
        words = "planning…" if busy else f"for {name} · built from what you own · nothing to buy"
        self.show_title(self.ribbon.title(), words)

    def _show_days(self) -> None:
        self.days_panel.show_days(self._desk.wishes().days, self._desk.house().places)
        self._stack.setCurrentWidget(self._days_page)

    def _show_other_week(self, week: Week) -> None:
        """Look at another week of the block; it is planned, not yet the one to train."""
        self._close_detail()
        self._show_week(week)
        self._show_busy(False)

    def _refresh(self, change: ChangeSet) -> None:
        if change.kinds & ({Kind.WEEK, Kind.SETTINGS} | SETTING_KINDS):
            if (
                self._stack.currentWidget() is self._days_page
                and Kind.WEEK in change.kinds
                and self._desk.week() is None
            ):
                return
            self._show_saved()
            self.ribbon.refresh()
            self._show_busy(self._errand.is_busy())

    def _save_days(self, days: tuple[DayWish, ...]) -> None:
        person = self._desk.person()
        wishes = self._desk.wishes()
        if person is not None and days != wishes.days:
            self._desk.do(SetWishes(person.id, replace(wishes, days=days)))
            self._stack.setCurrentWidget(self._days_page)

    def _save_readiness(self) -> None:
        today = datetime.date.today()  # noqa: DTZ011  # local day
        self._desk.do(ChangeSettings(replace(self._desk.settings(), ready_on=today)))
        self.plan_now()

    def _open(self, shown_id: str) -> None:
        week = self._week
        detail = (
            block_detail(week, shown_id, self._desk.units(), self._desk.wishes().pins) if week is not None else None
        )
        if detail is None:
            self._close_detail()
            return
        self._opened = shown_id
        self.detail.show_detail(detail)
        self._parts.hide()
        self.detail.show()

    def _close_detail(self) -> None:
        self._opened = ""
        self.detail.hide()
        self._parts.show()

    def _offer(self, shown_id: str, at: QPoint) -> None:
        """The same three deeds as in the opened block, under the right button."""
        self._open(shown_id)
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        for button, deed in (
            (self.detail.swap, self._swap),
            (self.detail.pin, self._toggle_pin),
            (self.detail.ban, self._ban),
        ):
            action = QAction(button.label(), menu)
            action.triggered.connect(deed)
            menu.addAction(action)
        menu.popup(at)

    def _toggle_pin(self) -> None:
        person = self._desk.person()
        if person is None or not self._opened:
            return
        weekday, exercise_id = parted(self._opened)
        pins = self._desk.wishes().pins
        rest = tuple(pin for pin in pins if (pin.weekday, pin.exercise_id) != (weekday, exercise_id))
        added = () if len(rest) < len(pins) else (Pin(weekday=weekday, exercise_id=exercise_id),)
        self._desk.do(SetPins(person.id, (*rest, *added)))

    def _ban(self) -> None:
        person = self._desk.person()
        if person is None or not self._opened:
            return
        _, exercise_id = parted(self._opened)
        wishes = self._desk.wishes()
        pins = tuple(pin for pin in wishes.pins if pin.exercise_id != exercise_id)
        changed = replace(wishes, bans=(*wishes.bans, exercise_id), pins=pins)
        name = self._desk.catalog.exercise_by_id[exercise_id].name
        if self._desk.do(SetWishes(person.id, changed)):
            self.toast.say(f"{name} stays out from the next plan on. Rebuild the week to replace it.", undo=True)

    def _swap(self) -> None:
        if self._opened:
            weekday, exercise_id = parted(self._opened)
            self._desk.jump.emit(Jump(screen=ScreenName.SWAP, exercise_id=exercise_id, weekday=weekday))

    def _go_home(self) -> None:
        self._desk.jump.emit(Jump(screen=ScreenName.HOUSEHOLD))
