"""Opening Fillmark: what loads off the GUI thread, and what the window then does with it."""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from gui.app import Opening, start
from gui.shell import MainWindow
from gui.theme import Theme
from gui.worker import Report

if TYPE_CHECKING:
    from core.knowledge import Catalog
    from core.store.faults import InUse
    from core.store.paths import DataFolder


@dataclass(frozen=True, slots=True, kw_only=True)
class Loaded:
    """What the worker brings: the folder to open the record in, and the catalog."""

    folder: DataFolder
    catalog: Catalog


def main(data: Path | None = None, *, demo: bool = False) -> int:
    """Open the window on a data folder; with `demo` the invented household is put in place if the house is empty."""

    def work(report: Report) -> Loaded | InUse:
        report(0, 1)
        return load(data)

    def furnish(window: MainWindow, theme: Theme, loaded: Loaded | InUse) -> None:
        open_window(window, theme, loaded, demo=demo)

    return start([], Opening(load=work, furnish=furnish, explain=explain))


def load(data: Path | None) -> Loaded | InUse:
    """Everything the screens need, or that another window has the folder. Runs in the worker."""
    from core.store.paths import DataFolder

    folder = DataFolder.chosen(data)
    taken = _taken(folder)
    if taken is not None:
        return taken
    import gui.opening.open_record  # noqa: F401  # slow to import, and needed next on the GUI thread
    from catalog.load import load_catalog
    from core.store.opening import holds_own_entries

    if holds_own_entries(folder.database):
        import catalog.own_forms  # noqa: F401  # the same

    return Loaded(folder=folder, catalog=load_catalog())


def open_window(window: MainWindow, theme: Theme, loaded: Loaded | InUse, *, demo: bool) -> None:
    """Open the record in the window, or bring the window to the front that has it open."""
    if not isinstance(loaded, Loaded):
        from gui.opening.first_window import hand_over

        hand_over(window, loaded)
        return
    from gui.opening.open_record import OpenRecord

    record = OpenRecord(loaded.folder, loaded.catalog, window, clock=_now, dress=theme.set_mode)
    record.open()
    desk = record.desk()
    if demo and desk is not None and not desk.house().things:
        desk.load_demo()


def explain(error: Exception) -> str:
    """One sentence for what could not be loaded; a bug of ours is raised again."""
    from core.errors import FillmarkError

    if isinstance(error, FillmarkError):
        return str(error)
    raise error


def _taken(folder: DataFolder) -> InUse | None:
    """The window that has the folder: looked at before the slow work, so that a second start ends quickly."""
    from core.store.faults import FolderUnusable, InUse
    from core.store.paths import FolderLock

    try:
        FolderLock(folder).release()
    except InUse as error:
        return error
    except FolderUnusable:
        return None  # opening the record says so, with what can be done
    return None


def _now() -> datetime.datetime:
    return datetime.datetime.now(tz=datetime.UTC).astimezone()
