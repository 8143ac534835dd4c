"""The container in hand: its fields, drawn vessel and ladder move one level, and all that is shown follows it."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QObject, QTimer, Signal

from core.errors import InputError
from core.loads.filling import Filling
from core.mass.level_text import parse_level
from core.mass.model import Estimate, Level, Packing
from core.quantity.display import UnitSystem, format_temperature
from core.quantity.units import parse_temperature_c
from core.store.changes import HouseFacts
from core.store.commands import ChangeHouse
from core.things.model import Thing
from gui.desk.desk import Desk
from gui.fill.asked import Asked, choices_for, filling_for, first_asked, lies, offered
from gui.fill.controls import Controls
from gui.fill.present import budget_view, frame_view, rungs, silhouette, ticks
from gui.fill.side import Side
from gui.fill.vessel_card import VesselCard
from gui.fill.words import PACKING_NAMES, contents_text, level_words

WARMTH_UNITS = {UnitSystem.METRIC: "C", UnitSystem.US: "F"}
BUDGET_MS = 60
SINGLE_CM, PAGE_CM = 0.1, 1.0
"""How far an arrow key and a page key move the line."""


class VesselFlow(QObject):
    """`moved` after every move of the line, `filled_anew` when container, material or their state changed."""

    moved = Signal()
    filled_anew = Signal()

    def __init__(self, desk: Desk, left: VesselCard, side: Side, parent: QObject) -> None:
        super().__init__(parent)
        self._desk = desk
        self._left = left
        self._side = side
        self._thing: Thing | None = None
        self._filling: Filling | None = None
        self._asked: dict[str, Asked] = {}
        self._shown: Estimate | None = None
        self._pause = QTimer(self)
        self._pause.setSingleShot(True)
        self._pause.setInterval(BUDGET_MS)
        self._pause.timeout.connect(self._show_budget)
        left.vessel.set_steps(SINGLE_CM, PAGE_CM)
        self._connect(left.controls)

    def filling(self) -> Filling | None:
        """The container in hand with its fill; None while none is in hand."""
        return self._filling

    def asked(self) -> Asked | None:
        """How it is filled on the screen."""
        return None if self._thing is None else self._asked.get(self._thing.id)

    def level(self) -> Level | None:
        """Where its line stands."""
        asked = self.asked()
        return None if asked is None else asked.level

    def inside_words(self) -> str:
        """What is drawn in it now; nothing when no container is in hand."""
        filling, level = self._filling, self.level()
        if filling is None or level is None:
            return ""
        volume_l = filling.volume_l(level)
        return contents_text(volume_l, filling.material, filling.packing, None, filling.system)

    def show_thing(self, thing: Thing) -> bool:
        """Take a container in hand; False when it is none, or nothing may go into it."""
        if self._thing is not None and self._thing.id == thing.id and self._thing.fill != thing.fill:
            self._follow_record(thing)
        self._thing, self._filling = thing, None
        asked = self._ask_for(thing)
        if asked is None:
            return False
        self._fill_anew(asked)
        return True

    def set_level(self, level: Level) -> None:
        """Move the line to a level that fits the container."""
        asked = self.asked()
        if self._thing is not None and asked is not None:
            self._asked[self._thing.id] = replace(asked, level=level)
            self._show_level(level)

    def fill_with(self, material_id: str, level: Level | None = None, packing: Packing = Packing.LOOSE) -> bool:
        """Another material, at the level there is unless another is given; False if it is none of those offered."""
        asked, thing = self.asked(), self._thing
        if asked is None or thing is None:
            return False
        choices = choices_for(thing, self._desk.house(), self._desk.catalog)
        if material_id not in {material.id for material in offered(thing, choices)}:
            return False
        self._fill_anew(replace(asked, material_id=material_id, packing=packing, level=level or asked.level))
        return True

    def expect(self, thing_id: str, material_id: str, level: Level) -> None:
        """How a thing shall be filled when it is taken in hand next."""
        self._asked[thing_id] = Asked(material_id=material_id, level=level)

    def _connect(self, controls: Controls) -> None:
        controls.fill_chosen.connect(self._choose_fill)
        controls.packing_chosen.connect(self._choose_packing)
        controls.level_typed.connect(self._type_level)
        controls.level_entered.connect(self._enter_level)
        controls.warmth_entered.connect(self._enter_warmth)
        controls.reasons_wanted.connect(self._show_reasons)
        self._left.vessel.height_changed.connect(self._drag)
        self._left.ladder.rung_chosen.connect(self._choose_rung)
        self._side.reasons.had.connect(self._have)

    # --- what is asked ---

    def _follow_record(self, thing: Thing) -> None:
        """The record says what is in it now; a line that stands there already keeps how it was read."""
        asked = self._asked.pop(thing.id, None)
        if asked is None or asked.level is None or self._filling is None:
            return
        if self._filling.inside(asked.level) == thing.fill:
            self._asked[thing.id] = asked

    def _ask_for(self, thing: Thing) -> Asked | None:
        if thing.facts.container is None:
            return None
        choices = choices_for(thing, self._desk.house(), self._desk.catalog)
        asked = self._asked.get(thing.id)
        if asked is None or asked.material_id not in {one.id for one in offered(thing, choices)}:
            asked = first_asked(thing, choices)
        return asked

    def _fill_anew(self, asked: Asked) -> None:
        """The container with what is asked; without a level it can have, the line stands half way up."""
        thing = self._thing
        if thing is None:
            return
        packings = lies(thing, asked, self._desk.catalog)
        if asked.packing not in packings:
            asked = replace(asked, packing=packings[0])
        filling = filling_for(thing, asked, self._desk.house(), self._desk.catalog, self._desk.units())
        level = _fitting(filling, asked.level)
        self._asked[thing.id], self._filling = replace(asked, level=level), filling
        self._show_container(thing, filling, asked)
        self._show_level(level)
        self._show_budget()
        self.filled_anew.emit()

    # --- what is shown ---

    def _show_container(self, thing: Thing, filling: Filling, asked: Asked) -> None:
        system = filling.system
        materials = offered(thing, choices_for(thing, self._desk.house(), self._desk.catalog))
        packings = lies(thing, asked, self._desk.catalog)
        controls = self._left.controls
        controls.show_filling(
            tuple(material.name for material in materials),
            [material.id for material in materials].index(asked.material_id),
            tuple(PACKING_NAMES[packing] for packing in packings),
            packings.index(asked.packing),
        )
        controls.show_warmth(format_temperature(asked.temperature_c, system), asked=filling.material.by_temperature)
        self._left.vessel.show_vessel(silhouette(thing), limit_cm=filling.gauge.full_cm, name=thing.name)
        self._left.vessel.show_scale(ticks(filling.gauge, system))
        self._left.show_rungs(rungs(filling))
        self._left.show_filled()
        if not self._side.reasons.isHidden():
            self._show_reasons()

    def _show_level(self, level: Level) -> None:
        """The frame of a drag: everything that depends on the level."""
        filling = self._filling
        if filling is None:
            return
        estimate = filling.at(level)
        view = frame_view(filling, estimate, filling.gauge.height_of(filling.weighings(level).level))
        self._left.vessel.show_fill(view.fill)
        if self._left.ladder.current() != view.pour:
            self._left.ladder.show_current(view.pour)
        self._left.controls.show_level(level_words(level, filling.system))
        self._side.mass.show_mass(view.mass)
        self._side.show_cautions(view.cautions)
        self._shown = estimate
        if not self._pause.isActive():
            self._pause.start()
        self.moved.emit()

    def _show_budget(self) -> None:
        """The budget follows a drag a few times a second: its rows cost as much to lay out as all the rest."""
        if self._shown is not None and self._filling is not None:
            self._side.budget.show_budget(budget_view(self._shown, self._filling.system))

    def _show_reasons(self) -> None:
        if self._thing is None:
            return
        choices = choices_for(self._thing, self._desk.house(), self._desk.catalog)
        to_have = tuple((one.material.id, one.material.name) for one in choices if not one.at_hand)
        rest = tuple((one.material.name, one.why_not) for one in choices if one.why_not and one.at_hand)
        self._side.reasons.show_reasons(to_have, rest)
        self._side.reasons.show()

    # --- the hand ---

    def _drag(self, height_cm: float) -> None:
        if self._filling is not None:
            self.set_level(self._filling.gauge.level_at(height_cm))

    def _choose_rung(self, place: int) -> None:
        if self._filling is not None:
            self.set_level(self._filling.pours[place].level(self._filling.cup_l))

    def _choose_fill(self, place: int) -> None:
        if self._thing is not None:
            choices = choices_for(self._thing, self._desk.house(), self._desk.catalog)
            self.fill_with(offered(self._thing, choices)[place].id)

    def _choose_packing(self, place: int) -> None:
        asked = self.asked()
        if self._thing is not None and asked is not None:
            packing = lies(self._thing, asked, self._desk.catalog)[place]
            self._fill_anew(replace(asked, packing=packing))

    def _type_level(self, text: str) -> None:
        """While typing, a level that can be is shown at once; faults wait until the field is left."""
        try:
            self.set_level(self._read_level(text))
        except InputError:
            return

    def _enter_level(self, text: str) -> None:
        asked = self.asked()
        if asked is None:
            return
        try:
            level = self._read_level(text)
        except InputError as error:
            self._left.controls.level.show_fault(str(error))
            return
        self.set_level(level)

    def _read_level(self, text: str) -> Level:
        """The typed level; `InputError` when it can't be read or doesn't fit."""
        filling = self._filling
        level = parse_level(text, cup_l=self._desk.house().cup_l)
        if filling is not None:
            filling.at(level)
        return level

    def _enter_warmth(self, text: str) -> None:
        asked, controls = self.asked(), self._left.controls
        if asked is None:
            return
        try:
            temperature_c = parse_temperature_c(text, WARMTH_UNITS[self._desk.units()])
            self._fill_anew(replace(asked, temperature_c=temperature_c))
        except InputError as error:
            controls.warmth.show_fault(str(error))
        else:
            controls.warmth.show_fault("")

    def _have(self, material_id: str) -> None:
        """One more fill at hand; undo takes it away."""
        house = self._desk.house()
        facts = HouseFacts(name=house.name, fills=(*house.fills, material_id), cup_l=house.cup_l)
        if self._desk.do(ChangeHouse(facts)):
            self.fill_with(material_id)


def _fitting(filling: Filling, level: Level | None) -> Level:
    """`level` if the container can have it, else half full."""
    if level is None:
        return filling.gauge.half()
    try:
        filling.volume_l(level)
    except InputError:
        return filling.gauge.half()
    return level
