"""Every table of the record in one place: importing this is importing all row modules."""

from __future__ import annotations

from core.store.rows.base import Base
from core.store.rows.history import RevisionRow, StepRow
from core.store.rows.house import HouseRow, PlaceRow, SettingsRow
from core.store.rows.log import SessionRow, TestRow
from core.store.rows.own import OwnRow
from core.store.rows.people import BlockRow, PersonRow, WeekRow, WishesRow
from core.store.rows.things import ThingRow

ROWS = (
    HouseRow,
    OwnRow,
    PlaceRow,
    SettingsRow,
    PersonRow,
    WishesRow,
    WeekRow,
    BlockRow,
    ThingRow,
    SessionRow,
    TestRow,
    StepRow,
    RevisionRow,
)
METADATA = Base.metadata
