"""The week on its page: painted from the desk, its blocks opened and changed, other weeks of the block looked at."""

from __future__ import annotations

import datetime
from functools import partial

from PySide6.QtCore import QObject, QPoint, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu

from core.house.wishes import WEEKDAYS
from core.plan.block_model import BlockWeek
from core.plan.frame import TARGET_SETS
from core.plan.model import Week
from gui.desk.desk import Desk, Jump
from gui.desk.wording import Wording
from gui.shell.entry import ScreenName
from gui.week.block_words import AboutWeek, about_week, marks_by_day, tests_by_day, week_title
from gui.week.dates import day_words, week_words
from gui.week.day_words import WeekContext, day_views
from gui.week.detail_words import DetailView, block_detail, day_detail
from gui.week.mark_flow import MarkFlow
from gui.week.part_words import check_lines, fills_view, missing_families, trained_rows
from gui.week.results_flow import ResultsFlow
from gui.week.week_page import WeekPage
from gui.week.why_none import WhyNone, WhyOrder
from gui.week.wish_deeds import WishDeeds
from gui.widgets import BarRow

DAY = "day"


class WeekFlow(QObject):
    """`looked` when another week of the block is shown, or the present one again; `banned` (a movement's name);
    `move_wanted` (from a weekday to another).
    """

    looked = Signal()
    banned = Signal(str)
    move_wanted = Signal(int, int)

    def __init__(self, desk: Desk, page: WeekPage, deeds: WishDeeds) -> None:
        super().__init__(page)
        self._desk = desk
        self.page = page
        self._deeds = deeds
        self._week: Week | None = None
        self._opened = ""
        self._menu: QMenu | None = None
        self._why = WhyNone(desk.catalog, self)
        self._why.known.connect(self._show_reasons)
        self.marks = MarkFlow(desk, page.ribbon, page)
        self._results = ResultsFlow(desk, page.ribbon, page.results)
        page.preview.results_wanted.connect(self._turn_results)
        page.ribbon.week_wanted.connect(self._look_at)
        page.ribbon.block_known.connect(self._show_block)
        page.preview.back_wanted.connect(page.ribbon.show_present)
        page.detail.went_wanted.connect(self._offer_marks)
        page.kept.pin_removed.connect(deeds.remove_pin)
        page.kept.ban_removed.connect(deeds.allow)
        page.block_wanted.connect(self._open)
        page.day_wanted.connect(self._open_day)
        page.menu_wanted.connect(self._offer)
        page.detail.pin_wanted.connect(self._toggle_pin)
        page.detail.ban_wanted.connect(self._ban)
        page.detail.swap_wanted.connect(self._swap)
        page.detail.move_wanted.connect(self._offer_days)
        page.move_wanted.connect(self.move_wanted)
        page.detail.closed.connect(self.close_detail)

    def show_week(self, week: Week) -> None:
        """Paint the week the person has, or the present one of its block."""
        self._week = week
        self._paint()

    def show_moved(self, weekday: int) -> None:
        """Follow a session to its new day with the keyboard, and with the details if they were open."""
        if self._opened:
            self._open_day(weekday)
        self.page.columns[weekday].head().setFocus()

    def shown_week(self) -> Week | None:
        """The week on the page: the one of the block that is looked at, or the one a block is made from."""
        shown = self.page.ribbon.shown()
        return self._week if self._week is None or shown is None else shown.week

    def monday(self) -> datetime.date | None:
        """The Monday of the week on the page; None while there is no block."""
        block, shown = self.page.ribbon.block(), self.page.ribbon.shown()
        return None if block is None or shown is None else block.monday_of(shown.number)

    def title(self) -> str:
        """What the page is called."""
        block, shown = self.page.ribbon.block(), self.page.ribbon.shown()
        return "Week" if block is None or shown is None else week_title(shown, block, self.page.ribbon.present())

    def when(self) -> str:
        """The dates of the week on the page, and whether the block has begun, in words."""
        block, monday, ribbon = self.page.ribbon.block(), self.monday(), self.page.ribbon
        if block is None or block.starts is None or monday is None:
            return ""
        if ribbon.is_running() or ribbon.looks_elsewhere():
            return week_words(monday)
        if ribbon.today() < block.starts:
            return f"begins on {day_words(block.starts)}"
        return "this block is over; plan again for the next one"

    def close_work(self) -> None:
        """Wait until nothing is looked into."""
        self._why.close()
        self.marks.close()

    def close_detail(self) -> None:
        """Take the details of a block or a day away."""
        self._opened = ""
        self.page.close_detail()

    def _paint(self) -> None:
        week = self.shown_week()
        if week is None:
            return
        context, page = self._context(), self.page
        page.show_days(day_views(week, context), movable=not page.ribbon.looks_elsewhere())
        page.kept.show_wishes(self._desk.wishes(), self._desk.catalog)
        page.trained.show_rows(self._trained(week))
        page.fills.show_fills(fills_view(week, context.today, context.wording.system))
        page.checks.show_checks(check_lines(week, context.wording))
        page.preview.show_about(self._about(context.wording), with_results=self._results.can_write())
        self._results.refresh()
        self._paint_detail()

    def _trained(self, week: Week) -> tuple[BarRow, ...]:
        person = self._desk.person()
        if person is None:
            return ()
        order = WhyOrder(
            families=missing_families(week),
            bans=self._desk.wishes().bans,
            person=person,
            house=self._desk.house(),
            place_ids=tuple(dict.fromkeys(day.place_id for day in week.days if day.place_id is not None)),
        )
        return trained_rows(week, TARGET_SETS[person.experience][0], self._why.reasons(order))

    def _show_reasons(self, _known: object) -> None:
        week = self.shown_week()
        if week is not None:
            self.page.trained.show_rows(self._trained(week))

    def _context(self) -> WeekContext:
        house, today = self._desk.house(), self._desk.record.clock().weekday()
        names = (*(thing.name for thing in house.things), *(place.name for place in house.places))
        wording = Wording(self._desk.units(), names)
        ribbon = self.page.ribbon
        block, shown = ribbon.block(), ribbon.shown()
        now = today if block is None or (ribbon.is_running() and not ribbon.looks_elsewhere()) else None
        return WeekContext(
            house=house,
            wishes=self._desk.wishes(),
            wording=wording,
            today=now,
            tests={} if block is None or shown is None else tests_by_day(shown),
            marks={} if block is None or shown is None else marks_by_day(shown.number, block.happened),
        )

    def _about(self, wording: Wording) -> AboutWeek | None:
        block, shown, person = self.page.ribbon.block(), self.page.ribbon.shown(), self._desk.person()
        if block is None or shown is None or person is None:
            return None
        results = self._desk.record.tests(person.id) if shown.tests else ()
        return about_week(shown, block, self.page.ribbon.present(), results, wording)

    def _look_at(self, _week: BlockWeek | None) -> None:
        """Look at another week of the block; it is planned, not yet the one to train."""
        self.close_detail()
        self._show_block()

    def _show_block(self) -> None:
        self._paint()
        self.looked.emit()

    def _turn_results(self) -> None:
        self.page.results.setVisible(self.page.results.isHidden())

    def _offer_marks(self) -> None:
        detail, button = self._detail(), self.page.detail.went
        if detail is not None:
            self._menu = self.marks.offer(detail.pin.weekday, button.mapToGlobal(button.rect().bottomLeft()))

    def _open(self, shown_id: str) -> None:
        self._opened = shown_id
        self._paint_detail()

    def _open_day(self, weekday: int) -> None:
        self._open(f"{DAY} {weekday}")

    def _detail(self) -> DetailView | None:
        week = self.shown_week()
        if week is None or not self._opened:
            return None
        if self._opened.startswith(DAY):
            return day_detail(week, int(self._opened.removeprefix(DAY)), self._context())
        return block_detail(week, self._opened, self._context())

    def _paint_detail(self) -> None:
        detail = self._detail()
        if detail is None:
            self.close_detail()
        else:
            changeable = not self.page.ribbon.looks_elsewhere()
            markable = self.marks.can_mark(detail.pin.weekday)
            self.page.open_detail(detail, self._opened, changeable=changeable, markable=markable)

    def _offer(self, shown_id: str, at: QPoint) -> None:
        """The same deeds as in the opened block, under the right button."""
        self._open(shown_id)
        detail = self.page.detail
        menu = self._menu = QMenu(self.page)
        menu.aboutToHide.connect(menu.deleteLater)
        deeds = ((detail.swap, self._swap), (detail.pin, self._toggle_pin), (detail.ban, self._ban))
        for button, deed in deeds:
            if button.isVisibleTo(detail):
                action = QAction(button.label(), menu)
                action.triggered.connect(deed)
                menu.addAction(action)
        menu.popup(at)

    def _offer_days(self) -> None:
        """The other days, to move the opened one to: the same as dragging it there."""
        detail, button = self._detail(), self.page.detail.move_button
        if detail is None:
            return
        menu = self._menu = QMenu(self.page)
        menu.aboutToHide.connect(menu.deleteLater)
        for weekday, name in enumerate(WEEKDAYS):
            if weekday != detail.pin.weekday:
                action = QAction(f"To {name}", menu)
                action.triggered.connect(partial(self.move_wanted.emit, detail.pin.weekday, weekday))
                menu.addAction(action)
        menu.popup(button.mapToGlobal(button.rect().bottomLeft()))

    def menu(self) -> QMenu | None:
        """The menu opened last; None before the first."""
        return self._menu

    def _toggle_pin(self) -> None:
        detail = self._detail()
        if detail is not None:
            self._deeds.toggle_pin(detail.pin)

    def _ban(self) -> None:
        detail = self._detail()
        if detail is not None and detail.exercise_id and self._deeds.ban(detail.exercise_id):
            name = self._desk.catalog.exercise_by_id[detail.exercise_id].name
            self.banned.emit(name)

    def _swap(self) -> None:
        detail = self._detail()
        if detail is not None and detail.exercise_id:
            weekday = detail.pin.weekday
            self._desk.jump.emit(Jump(screen=ScreenName.SWAP, exercise_id=detail.exercise_id, weekday=weekday))
