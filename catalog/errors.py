"""What a data file with faults raises: every fault at once, each a sentence (file, entry, field, rule, way out)."""

from __future__ import annotations

from collections.abc import Sequence

from core.errors import InputError


class CatalogFaults(InputError):
    """A data file cannot be used; `sentences` holds all its faults, the first one is the message."""

    def __init__(self, file: str, sentences: Sequence[str]) -> None:
        self.sentences = tuple(sentences)
        count = len(self.sentences)
        rule = f"has {count} fault{'s' if count != 1 else ''}"
        super().__init__(file, rule, f"correct {'them' if count != 1 else 'it'}")

    def sentence(self) -> str:
        """The file, the number of faults and the first of them in one line."""
        return f"{super().sentence()} First: {self.sentences[0]}" if self.sentences else super().sentence()
