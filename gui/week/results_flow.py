"""Writing down the results of a test week: read, checked, kept with their day; the newest one of a week counts."""

from __future__ import annotations

import datetime
from collections.abc import Mapping

from PySide6.QtCore import QObject

from core.assess.entry import new_result
from core.assess.model import Protocol
from core.assess.strength import capacities_after
from core.errors import InputError
from core.house.log import LoggedTest
from core.plan.block_model import BlockWeek, TrainingBlock
from core.quantity.units import parse_distance_m, parse_mass_kg, parse_time_min
from core.store.commands import AddTest
from core.store.commands.base import free_id
from gui.desk.desk import Desk
from gui.week.results_panel import Asked, ResultRow, ResultsPanel
from gui.week.ribbon import Ribbon

STOP = "Stop a test at any of these:"


class ResultsFlow(QObject):
    """Shows the tests of the week the ribbon shows, once their time has come, and keeps what is written down."""

    def __init__(self, desk: Desk, ribbon: Ribbon, panel: ResultsPanel) -> None:
        super().__init__(panel)
        self._desk = desk
        self._ribbon = ribbon
        self._panel = panel
        panel.given.connect(self._take)

    def can_write(self) -> bool:
        """Whether the week shown has tests whose time has come."""
        week = self._ribbon.shown()
        return week is not None and bool(week.tests) and week.number <= self._ribbon.present() and self._has_begun()

    def refresh(self) -> None:
        """Paint the tests of the week shown."""
        block, week = self._ribbon.block(), self._ribbon.shown()
        if block is None or week is None or not self.can_write():
            self._panel.hide()
            return
        wanted = {test.protocol_id for test in week.tests}
        protocols = [protocol for protocol in block.tests if protocol.id in wanted]
        rules = dict.fromkeys(rule for protocol in protocols for rule in protocol.stop_rules)
        results = self._of_week(block, week)
        self._panel.show_tests(tuple(_row(one, results) for one in protocols), f"{STOP} {' '.join(rules)}")

    def _has_begun(self) -> bool:
        block = self._ribbon.block()
        return block is not None and block.starts is not None and block.starts <= self._ribbon.today()

    def _of_week(self, block: TrainingBlock, week: BlockWeek) -> tuple[LoggedTest, ...]:
        """What was written down in this week."""
        person, monday = self._desk.person(), block.monday_of(week.number)
        if person is None or monday is None:
            return ()
        days = {monday + datetime.timedelta(days=day) for day in range(7)}
        return tuple(one for one in self._desk.record.tests(person.id) if one.date in days)

    def _take(self, protocol_id: str, texts: Mapping[str, str]) -> None:
        protocol = self._desk.catalog.protocol_by_id[protocol_id]
        self._panel.show_fault(protocol_id, "")
        try:
            self._keep(protocol, self._read(protocol, texts))
        except InputError as error:
            self._panel.show_fault(protocol_id, str(error))

    def _keep(self, protocol: Protocol, result: LoggedTest) -> None:
        """Keep the result, and what it tells of the person's strength, in one step."""
        person = self._desk.record.state().person(result.person_id)
        exercise = self._desk.catalog.exercise_by_id[protocol.exercise_id]
        self._desk.do(AddTest(result, capacities_after(protocol, exercise, result, person)))

    def _read(self, protocol: Protocol, texts: Mapping[str, str]) -> LoggedTest:
        """The result as typed; `InputError` where a number is missing or can't be."""
        person, today = self._desk.person(), self._ribbon.today()
        if person is None:
            raise InputError("the result", "belongs to nobody", "add a person first")
        units = {one.key: one.unit for one in protocol.beside}
        typed = {key: text for key, text in texts.items() if key and text.strip()}
        taken = {one.id for one in self._desk.record.tests(person.id)}
        return new_result(
            protocol,
            read_number(texts[""], protocol.unit),
            {key: read_number(text, units[key]) for key, text in typed.items()},
            result_id=free_id(f"{person.id}_{protocol.id}_{today.isoformat()}", taken),
            person_id=person.id,
            date=self._day(today),
            today=today,
        )

    def _day(self, today: datetime.date) -> datetime.date:
        """Today, or the last day of the week shown when that is over."""
        block, week = self._ribbon.block(), self._ribbon.shown()
        monday = None if block is None or week is None else block.monday_of(week.number)
        return today if monday is None else min(today, monday + datetime.timedelta(days=6))


def _row(protocol: Protocol, results: tuple[LoggedTest, ...]) -> ResultRow:
    """A test with its newest result among those given."""
    found = next((one for one in reversed(results) if one.test_id == protocol.id), None)
    beside = {} if found is None else dict(found.beside)
    result = Asked(key="", caption=f"Result, {protocol.unit}", text="" if found is None else f"{found.result:g}")
    others = (
        Asked(key=one.key, caption=f"{one.name}, {one.unit}", text=f"{beside[one.key]:g}" if one.key in beside else "")
        for one in protocol.beside
    )
    return ResultRow(protocol_id=protocol.id, name=protocol.name, how=protocol.how, asked=(result, *others))


def _clock_min(text: str) -> float | None:
    """“12:30” in minutes; None for what is no such time."""
    minutes, colon, seconds = text.strip().partition(":")
    plain = bool(colon) and all(part.isascii() and part.isdigit() for part in (minutes, seconds))
    return int(minutes) + int(seconds) / 60 if plain and int(seconds) < 60 else None


def read_number(text: str, unit: str) -> float:
    """A number in `unit`; another unit of the same kind may stand behind it."""
    if unit == "kg":
        return parse_mass_kg(text)
    if unit in {"min", "s"}:
        minutes = _clock_min(text)
        minutes = parse_time_min(text, unit) if minutes is None else minutes
        return minutes if unit == "min" else 60 * minutes
    if unit == "m":
        return parse_distance_m(text)
    plain = text.strip().removesuffix(unit).strip().replace(",", ".")
    try:
        return float(plain)
    except ValueError as error:
        raise InputError(text, "is no number", f"write it in {unit}, like 24") from error
