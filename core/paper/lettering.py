"""The letters a page is printed with: DejaVu where the system has it, else the fonts every PDF reader has.

Whatever a font cannot draw is written with the nearest plain letters, or as a question mark; the page then says so.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from reportlab.pdfbase.ttfonts import TTFont

FOLDERS = (
    "/usr/share/fonts/truetype/dejavu",
    "/usr/share/fonts/dejavu-sans-fonts",
    "/usr/share/fonts/dejavu",
    "/usr/share/fonts/TTF",
    "/usr/local/share/fonts",
    "/Library/Fonts",
    "C:/Windows/Fonts",
)
REGULAR_FILE, BOLD_FILE = "DejaVuSans.ttf", "DejaVuSans-Bold.ttf"
SUBSTITUTED = "Some letters are not in the fonts here and are printed as near as they can be."


@dataclass(frozen=True, slots=True, kw_only=True)
class Lettering:
    """Names of the regular and the bold font as the page knows them; `letters` None is the Windows Latin set."""

    regular: str = "Helvetica"
    bold: str = "Helvetica-Bold"
    letters: frozenset[int] | None = None

    def can_write(self, character: str) -> bool:
        """Whether the fonts have this letter."""
        if self.letters is not None:
            return ord(character) in self.letters
        try:
            character.encode("cp1252")
        except UnicodeEncodeError:
            return False
        return True

    def drawable(self, text: str) -> str:
        """`text` on one line, every letter one that can be drawn."""
        line = " ".join(text.split())
        return "".join(one if self.can_write(one) else self._nearest(one) for one in line)

    def _nearest(self, character: str) -> str:
        plain = "".join(part for part in unicodedata.normalize("NFKD", character) if not unicodedata.combining(part))
        if plain and plain != character and all(self.can_write(part) for part in plain):
            return plain
        return "" if unicodedata.category(character) in {"Cf", "Mn", "Cc"} else "?"


PLAIN = Lettering()
"""What needs no font file at all."""


def find_lettering(folders: Iterable[str | Path] = FOLDERS) -> Lettering:
    """DejaVu Sans from the first folder that has it, else `PLAIN`."""
    for folder in map(Path, folders):
        regular, bold = folder / REGULAR_FILE, folder / BOLD_FILE
        if regular.is_file() and bold.is_file():
            return _registered(regular, bold)
    return PLAIN


@cache
def _registered(regular: Path, bold: Path) -> Lettering:
    """Make two font files known to the PDF library, whose register of fonts is one for the whole program."""
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFError, TTFont

    try:
        fonts = [TTFont("Fillmark-Regular", str(regular)), TTFont("Fillmark-Bold", str(bold))]
    except (TTFError, OSError):
        return PLAIN
    for font in fonts:
        pdfmetrics.registerFont(font)
    letters = frozenset.intersection(*(_letters(font) for font in fonts))
    return Lettering(regular="Fillmark-Regular", bold="Fillmark-Bold", letters=letters)


def _letters(font: TTFont) -> frozenset[int]:
    return frozenset(font.face.charToGlyph)
