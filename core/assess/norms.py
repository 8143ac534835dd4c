"""Where a result stands in a published table, if one covers this sex and age; otherwise why there is none."""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass

from core.assess.model import NormRow, NormTable, Protocol
from core.house.model import Sex


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """A band of a published table: its name, where it begins and where the next one does (None: no end)."""

    table: NormTable
    row: NormRow
    band: str
    starts: float | None
    next_starts: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class NoNorm:
    """No table covers it; `why` is a sentence."""

    why: str


def place_of(
    tables: tuple[NormTable, ...], protocol: Protocol, result: float, *, age: int | None, sex: Sex | None
) -> Place | NoNorm:
    """The band of the first table that covers this sex and age, or why there is none. No table is stretched."""
    mine = [table for table in tables if table.protocol_id == protocol.id]
    if not mine:
        return NoNorm(why=f"No published norm is known for this test: {protocol.name.lower()}.")
    if age is None or sex is None:
        return NoNorm(why="The published table goes by age and sex. Add your year of birth and sex to read it.")
    for table in mine:
        row = next((row for row in table.rows if row.sex is sex and row.ages[0] <= age <= row.ages[1]), None)
        if row is not None:
            return _placed(table, row, result)
    return NoNorm(why=f"The published table has no row for {_who(sex)} of {age}.")


def _placed(table: NormTable, row: NormRow, result: float) -> Place:
    at = bisect_right(row.starts, result)
    return Place(
        table=table,
        row=row,
        band=table.bands[at],
        starts=row.starts[at - 1] if at > 0 else None,
        next_starts=row.starts[at] if at < len(row.starts) else None,
    )


def _who(sex: Sex) -> str:
    return "men" if sex is Sex.MALE else "women"
