"""Collecting every fault of a household file, each as one sentence that names file, entry, field, rule and way out."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any, TypeVar

from catalog.errors import CatalogFaults
from catalog.household.schema import TABLE, WORDS
from core.errors import InputError, shorten

if TYPE_CHECKING:
    from pydantic_core import ErrorDetails

T = TypeVar("T")
MOST_LISTED = 50
NO_ENTRY = "the file itself"
WAYS_OUT = {
    "missing": "add it",
    "extra_forbidden": "remove it, or correct its spelling",
    "too_long": "leave some out",
    "string_too_long": "make it shorter",
    "bool_parsing": "write true or false",
    "enum": "choose one of those",
    "literal_error": "choose one of those",
}


class FaultList:
    """The faults found so far in one file."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.sentences: list[str] = []

    @property
    def full(self) -> bool:
        """Whether so much is wrong that looking further helps nobody."""
        return len(self.sentences) >= MOST_LISTED

    def add(self, entry: str, field: str, error: InputError) -> None:
        """Note what is wrong with one field of an entry."""
        self._note(entry, field, f"“{shorten(error.value)}” {error.rule}; {error.way_out}.")

    def add_form_errors(self, data: dict[str, Any], errors: list[ErrorDetails]) -> None:
        """Note everything the form itself found."""
        for error in errors:
            entry, field = _place(data, error["loc"])
            way_out = WAYS_OUT.get(error["type"], "correct it")
            if error["type"] == "missing":
                self._note(entry, field, f"“{field}” is missing; {way_out}.")
                continue
            if error["type"] == "extra_forbidden":
                self._note(entry, field, f"“{shorten(error['loc'][-1])}” is not known here; {way_out}.")
                continue
            message = error["msg"].removeprefix("Value error, ").removeprefix("Input ")
            rule = message if ";" in message else f"is refused ({message}); {way_out}"
            self._note(entry, field, f"“{_found(error)}” {rule}.")

    def attempt(self, entry: str, field: str, make: Callable[[], T]) -> T | None:
        """What `make` gives, or None and a fault."""
        try:
            return make()
        except InputError as error:
            self.add(entry, field, error)
            return None

    def raise_any(self) -> None:
        """`CatalogFaults` if anything was wrong."""
        if self.sentences:
            raise CatalogFaults(self.file, self.sentences)

    def _note(self, entry: str, field: str, told: str) -> None:
        if not self.full:
            place = f"{entry}, field {field}" if field else entry
            self.sentences.append(f"{self.file}: {place}: {told}")


def _found(error: ErrorDetails) -> str:
    found = error["input"]
    return f"{len(found)} entries" if isinstance(found, list | dict) else shorten(found)


def _place(data: dict[str, Any], loc: tuple[int | str, ...]) -> tuple[str, str]:
    """Entry and field of a fault: (“people number 1 (Ines)”, “body_mass”)."""
    parts = [part for part in loc if part not in (TABLE, WORDS)]
    if len(parts) > 1 and isinstance(parts[1], int):
        section, number = str(parts[0]), parts[1]
        listed = data.get(section)
        entry = listed[number] if isinstance(listed, list) and number < len(listed) else None
        return entry_words(section, number, entry), _dotted(parts[2:])
    if len(parts) > 1 and parts[0] == "week":
        return "week", _dotted(parts[1:])
    return NO_ENTRY, _dotted(parts)


def entry_words(section: str, number: int, entry: object) -> str:
    """How a fault names an entry: its place in the file and, where it has one, its name or words."""
    named = entry if isinstance(entry, str) else None
    if isinstance(entry, dict):
        named = next((entry[key] for key in ("name", "is") if isinstance(entry.get(key), str)), None)
    return f"{section} number {number + 1}" + (f" ({shorten(named)})" if named else "")


def _dotted(parts: list[int | str]) -> str:
    """Field names with dots, numbers counted from 1 as in "pins 2.exercise"."""
    text = ""
    for part in parts:
        if isinstance(part, int):
            text += f" {part + 1}"
        else:
            text += f".{part}" if text else str(part)
    return shorten(text)
