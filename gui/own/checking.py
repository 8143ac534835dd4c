"""An own entry checked off the GUI thread as it is typed; the newest wins."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial

from PySide6.QtCore import QObject, Signal

from catalog.errors import CatalogFaults
from catalog.own import own_exercise, own_kind
from core.errors import InputError
from core.house.own import OwnEntry, OwnKind
from core.knowledge import Catalog
from gui.own.field import Table
from gui.worker import Errand, Report


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """A table that was checked: the entry it makes, or what is wrong with it."""

    entry: OwnEntry | None
    sentences: tuple[str, ...] = ()


def check(kind: OwnKind, table: Table, catalog: Catalog, report: Report) -> Checked:
    """Runs in the worker."""
    report(0, 1)
    make = own_exercise if kind is OwnKind.EXERCISE else own_kind
    try:
        return Checked(entry=make(table, catalog))
    except CatalogFaults as faults:
        return Checked(entry=None, sentences=faults.sentences)
    except InputError as fault:
        return Checked(entry=None, sentences=(str(fault),))


class Checking(QObject):
    """`checked` (a `Checked`) for the newest table."""

    checked = Signal(object)

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._errand = Errand(self)

    def ask(self, kind: OwnKind, table: Table, catalog: Catalog) -> None:
        """Check a table."""
        work = partial(check, kind, table, catalog)
        self._errand.start(work, done=self.checked.emit, failed=_raise)

    def check_now(self, kind: OwnKind, table: Table, catalog: Catalog) -> None:
        """Check here and now, for pictures; whatever was awaited is dropped."""
        self.close()
        self.checked.emit(check(kind, table, catalog, _go_on))

    def stop(self) -> None:
        """Nobody waits any more."""
        self._errand.stop()

    def is_busy(self) -> bool:
        """Whether an answer is awaited."""
        return self._errand.is_busy()

    def close(self) -> None:
        """Wait until no thread is left."""
        self._errand.close()


def _go_on(_done: int, _total: int) -> bool:
    return True


def _raise(error: Exception) -> None:
    raise error
