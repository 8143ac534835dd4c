"""Reading a TOML data file and naming every fault in it by file, entry and field.

A file is a text of bounded size; `[[name]]` tables are its entries. pydantic's faults become short sentences.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from core.errors import InputError, shorten

if TYPE_CHECKING:
    from pydantic_core import ErrorDetails

MOST_CHARACTERS = 2_000_000


def read_text(path: Path) -> str:
    """The file's text; `InputError` if it is missing, too large or not UTF-8."""
    try:
        if path.stat().st_size > MOST_CHARACTERS:
            raise InputError(path.name, "is larger than a data file can be (2 MB)", "split it or remove entries")
        return path.read_text(encoding="utf-8")
    except FileNotFoundError as error:
        raise InputError(path.name, "is not there", "check the name of the file") from error
    except (OSError, UnicodeDecodeError) as error:
        raise InputError(path.name, f"cannot be read ({error})", "save it as plain UTF-8 text") from error


def read_tables(text: str, file: str, name: str) -> list[dict[str, Any]]:
    """The `[[name]]` tables of a TOML text; `InputError` if it is no TOML or holds anything else."""
    if len(text) > MOST_CHARACTERS:
        raise InputError(file, "is larger than a data file can be (2 MB)", "split it or remove entries")
    try:
        data = tomllib.loads(text)
    except (tomllib.TOMLDecodeError, RecursionError) as error:
        raise InputError(file, f"is not a TOML file: {error}", "correct that line") from error
    others = sorted(set(data) - {name})
    if others:
        raise InputError(others[0], f"is not known at the top of {file}", f"use only [[{name}]] tables")
    tables = data.get(name, [])
    if not (isinstance(tables, list) and all(isinstance(table, dict) for table in tables)):
        raise InputError(file, f"must hold its entries as [[{name}]] tables", f"begin each entry with [[{name}]]")
    return tables


def entry_name(table: dict[str, Any], number: int) -> str:
    """How a fault names an entry: its id if it has one, else its place in the file."""
    found = table.get("id")
    return f"entry {shorten(found)}" if isinstance(found, str) and found else f"entry number {number}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """One thing wrong in a data file: where it stands, what was found and the rule it breaks."""

    file: str
    entry: str
    field: str
    found: str
    rule: str

    @property
    def where(self) -> str:
        """File, entry and field."""
        return f"{self.file}: {self.entry}, field {self.field}"

    def sentence(self) -> str:
        """The fault in one line."""
        return f"{self.where}: “{self.found}” {self.rule}"


def faults_of(file: str, entry: str, errors: Sequence[ErrorDetails]) -> Iterator[Fault]:
    """The errors pydantic found in one entry, as faults."""
    for error in errors:
        field = ".".join(str(part) for part in error["loc"])
        # A fault of the entry as a whole has no field, and its input is the whole table.
        found = shorten(error["input"]) if field else entry
        rule = f"is refused: {error['msg'].removeprefix('Value error, ').removeprefix('Input ')}"
        if error["type"] == "missing":
            found, rule = field, "is missing"
        yield Fault(file=file, entry=entry, field=field or "(all)", found=found, rule=rule)


def repeated(ids: Sequence[str], file: str) -> Iterator[Fault]:
    """A fault per id that is used twice."""
    seen: set[str] = set()
    for one in ids:
        if one in seen:
            yield Fault(file=file, entry=f"entry {one}", field="id", found=one, rule="is used twice")
        seen.add(one)


def raise_first(faults: Sequence[Fault]) -> None:
    """`InputError` with the first fault, and how many more there are."""
    if faults:
        more = f" (and {len(faults) - 1} more)" if len(faults) > 1 else ""
        raise InputError(faults[0].found, faults[0].rule, f"correct it{more}", where=faults[0].where)
