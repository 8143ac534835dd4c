"""A load in words: what to take and how full, in the person's units."""

from __future__ import annotations

from core.loads.model import Part, Rung
from core.quantity.display import UnitSystem, format_volume
from gui.desk.wording import nb

BRIEF_LETTERS = 30


def load_words(load: Rung, system: UnitSystem) -> str:
    """“2 × Water carrier with 13.0 L water each”, “Daypack packed with 3 × Bean tin”; names as the person gave them."""
    words = [_part_words(part, system) for part in load.recipe.parts]
    if not load.recipe.packed:
        return " and ".join(words)
    return f"{words[0]} packed with {', '.join(words[1:])}" if len(words) > 1 else f"{words[0]}, empty"


def short_load_words(load: Rung, system: UnitSystem) -> str:
    """The same in fewer words, long names cut: “2 × Water carrier at 13.0 L”, “Daypack with 3 × Bean tin and Brick”."""
    words = [_short_part(part, system) for part in load.recipe.parts]
    if not load.recipe.packed:
        return " and ".join(words)
    return f"{words[0]} with {' and '.join(words[1:])}" if len(words) > 1 else f"{words[0]}, empty"


def _brief(name: str) -> str:
    """A name a person can still tell from others, cut between words."""
    if len(name) <= BRIEF_LETTERS:
        return name
    kept, _, _ = name[:BRIEF_LETTERS].rpartition(" ")
    return f"{(kept or name[:BRIEF_LETTERS]).rstrip(' ,;:')}…"


def _short_part(part: Part, system: UnitSystem) -> str:
    name = _brief(part.name)
    head = name if part.count == 1 else f"{nb(f'{part.count} ×')} {name}"
    if part.material_id is None:
        return head
    return f"{head} at {nb(format_volume(part.fill_l, system))}" if part.fill_l else f"{head}, empty"


def _part_words(part: Part, system: UnitSystem) -> str:
    head = part.name if part.count == 1 else f"{part.count} × {part.name}"
    if part.material_id is None:
        return head
    if not part.fill_l:
        return f"{head}, empty"
    each = " each" if part.count > 1 else ""
    material = f"{part.material_name[:1].lower()}{part.material_name[1:]}"
    return f"{head} with {nb(format_volume(part.fill_l, system))} {material}{each}"
