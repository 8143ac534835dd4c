"""What `fillmark weigh` answers about one container with one material: an estimate, or how to fill it to a mass."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from core.errors import Unreachable
from core.loads.filling import Filling, other_ways
from core.loads.measures import Measure, measured_out
from core.mass.model import Estimate, Fill, FullLevel, Level, ScaleReading, VolumeLevel
from core.quantity.display import (
    UnitSystem,
    format_doubts,
    format_length,
    format_mass,
    format_measured_mass,
    format_volume,
)
from core.things.model import Thing
from gui.command_line.answer import Answer, Column, Document, counted, table
from gui.command_line.home import Home


def counted_thing(count: int, name: str) -> str:
    """“4 × Bean tin”."""
    return name if count == 1 else f"{count} × {name}"


def named(thing: Thing) -> str:
    """The thing, and that it is one of several."""
    return f"{thing.name} (each of {thing.count})" if thing.count > 1 else thing.name


def caution_lines(sentences: Sequence[str]) -> list[str]:
    """What to mind, a line each."""
    return [f"Mind: {sentence}" for sentence in sentences]


@dataclass(frozen=True, slots=True)
class Case:
    """One container with one material, as the options ask about it; the numbers come from `core.loads.filling`."""

    home: Home
    filling: Filling
    caution: tuple[str, ...]
    measure: Measure

    def estimated(self, level: Level, readings: Sequence[ScaleReading]) -> Answer:
        """Mass, contents, tare, volume and height at the level, with the budget of the ±."""
        filling = self.filling
        if readings:
            filling = filling.also(tuple(filling.reading_at(level, reading) for reading in readings))
        found = filling.at(level)
        return Answer(document=self._document(found), lines=tuple(self._lines(found)))

    def _document(self, found: Estimate) -> Document:
        weighing = found.weighing
        return {
            "thing": self.filling.thing.name,
            "count": self.filling.thing.count,
            "fill": self.filling.material.id,
            "mass_kg": found.mass.value,
            "u95_kg": found.mass.u95,
            "contents_kg": found.contents.value,
            "tare_kg": found.tare.value,
            "volume_l": found.volume_l.value,
            "height_cm": found.height_cm,
            "budget": [{"from": line.source, "u_kg": line.u_kg} for line in found.budget],
            "advice": found.advice,
            "weighing": None if weighing is None else {"agrees": weighing.agrees, "sentence": weighing.sentence},
            "cautions": [*self.caution, *found.cautions],
        }

    def _lines(self, found: Estimate) -> list[str]:
        system = self.home.system
        height = "" if found.height_cm is None else f", the line at {format_length(found.height_cm, system)}"
        inside = format_volume(found.volume_l.value, system)
        contents, tare = (format_measured_mass(mass, system) for mass in (found.contents, found.tare))
        lines = [
            f"{named(self.filling.thing)} with {self._material}: {format_measured_mass(found.mass, system)}",
            f"Inside: {inside}{height}, {contents}. Empty: {tare}.",
        ]
        lines.extend([found.weighing.sentence] if found.weighing is not None else [])
        lines.extend(["", *_budget_table(found, system), ""])
        lines.extend([found.advice] if found.advice else [])
        return [*lines, *caution_lines((*self.caution, *found.cautions))]

    @property
    def _material(self) -> str:
        return self.filling.material.name.lower()

    def reached(self, wanted_kg: float) -> Answer:
        """How to fill it to the wanted mass, or why it can't be."""
        others = [one for one in self.home.catalog.materials if one.id in self.filling.thing.fills]
        try:
            fill = self.filling.to(wanted_kg, others)
        except Unreachable as fault:
            return self._unreachable(fault, wanted_kg)
        return self._fill_answer(fill, wanted_kg)

    def _unreachable(self, fault: Unreachable, wanted_kg: float) -> Answer:
        ways = list(other_ways(self.filling, self.home.house, self.home.catalog.materials, wanted_kg))
        lines = [str(fault)]
        for way in ways:
            volume = format_volume(way.fill.volume_l, self.home.system)
            added = "" if way.added is None else f" and {counted_thing(way.count, way.added.name)} added"
            lines.append(f"{way.thing.name} reaches it with {volume} of {way.material.name.lower()}{added}.")
        document = self._document(self.filling.at(FullLevel())) | {
            "wanted_kg": wanted_kg,
            "reachable": False,
            "limit_kg": fault.limit_kg,
            "sentence": str(fault),
            "fill_to": None,
            "other_ways": [
                {
                    "thing": way.thing.name,
                    "fill": way.material.id,
                    "volume_l": way.fill.volume_l,
                    "added": None if way.added is None else {"thing": way.added.name, "count": way.count},
                }
                for way in ways
            ],
        }
        return Answer(document=document, lines=tuple(lines))

    def _fill_answer(self, fill: Fill, wanted_kg: float) -> Answer:
        found = self.filling.at(VolumeLevel(volume_l=fill.volume_l))
        found = replace(found, mass=fill.reaches, height_cm=fill.height_cm)
        fill_to = {
            "volume_l": fill.volume_l,
            "height_cm": fill.height_cm,
            "from_brim_cm": fill.from_brim_cm,
            "cups": fill.cups,
            "whole_cups": fill.whole_cups,
            "cup_l": self.filling.cup_l,
            "share_of_nominal": fill.share_of_nominal,
        }
        document = self._document(found) | {"wanted_kg": wanted_kg, "reachable": True, "fill_to": fill_to}
        return Answer(document=document, lines=tuple(self._fill_lines(fill, wanted_kg, found)))

    def _poured(self, volume_l: float) -> str:
        """So many measures, and cups for the rest."""
        out, system = measured_out(volume_l, self.measure, self.filling.cup_l), self.home.system
        name = self.measure.name
        many = counted(out.measures, name) if name.islower() else counted_thing(out.measures, name)
        parts = [f"{many} of {format_volume(self.measure.litres, system)}"]
        if out.cups:
            parts.append(f"{counted(out.cups, 'cup')} of {format_volume(self.filling.cup_l, system)}")
        return " and ".join(parts if out.measures else parts[1:] or parts)

    def _fill_lines(self, fill: Fill, wanted_kg: float, found: Estimate) -> list[str]:
        system = self.home.system
        wanted, volume = format_mass(wanted_kg, system), format_volume(fill.volume_l, system)
        lines = [f"For {wanted}, fill {named(self.filling.thing)} with {volume} of {self._material}."]
        if fill.height_cm is not None and fill.from_brim_cm is not None:
            line, brim = format_length(fill.height_cm, system), format_length(fill.from_brim_cm, system)
            lines.append(f"The line: {line} above the inner base, {brim} below the brim.")
        if fill.whole_cups is not None:
            lines.append(f"Or pour {self._poured(fill.volume_l)}.")
            more = format_mass(self.filling.gauge.kg_l * self.measure.litres, system)
            lines.append(f"One {self.measure.name.lower()} more adds {more}.")
        lines.append(f"It then weighs {format_measured_mass(fill.reaches, system)}.")
        return [*lines, *caution_lines((*self.caution, *found.cautions))]


def _budget_table(found: Estimate, system: UnitSystem) -> list[str]:
    lines = [line for line in found.budget if line.u_kg > 0]
    shown = format_doubts([line.u_kg for line in lines], found.mass, system)
    rows = zip((line.source for line in lines), shown, strict=True)
    return table((Column("where the ± comes from"), Column("±", right=True)), rows)
