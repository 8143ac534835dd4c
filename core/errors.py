"""The typed errors a person can meet. Each names the value, the rule it breaks and the way out."""

from __future__ import annotations


class FillmarkError(Exception):
    """Root of every error Fillmark raises on purpose; anything else is a bug of ours."""


class InputError(FillmarkError):
    """Something a person typed or a file holds cannot be used.

    `value` is what was given (shortened for display), `rule` says what is required, `way_out` what to do instead.
    `where` names the file entry and field when the value came from a file.
    """

    def __init__(self, value: object, rule: str, way_out: str, *, where: str = "") -> None:
        self.value = value
        self.rule = rule
        self.way_out = way_out
        self.where = where
        super().__init__(self.sentence())

    def sentence(self) -> str:
        """One line for the person: place, value, rule, way out."""
        place = f"{self.where}: " if self.where else ""
        shown = shorten(self.value)
        subject = f"“{shown}”" if shown else "This line"
        return f"{place}{subject} {self.rule}; {self.way_out}."


class Unreachable(FillmarkError):
    """A wanted mass lies outside what a container can hold; `limit_kg` is the nearest mass it can reach."""

    def __init__(self, sentence: str, *, wanted_kg: float, limit_kg: float) -> None:
        self.wanted_kg = wanted_kg
        self.limit_kg = limit_kg
        super().__init__(sentence)


class StoreError(FillmarkError):
    """The data folder or file cannot be used: damaged, newer than this program, full, read-only or in use."""


def shorten(value: object, longest: int = 60) -> str:
    """`value` as one printable line of at most `longest` characters, so a 10 kB name cannot flood a message."""
    text = " ".join(str(value).split())
    printable = "".join(character if character.isprintable() else "?" for character in text)
    return printable if len(printable) <= longest else printable[: longest - 1] + "…"
