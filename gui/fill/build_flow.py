"""From a use and a wanted mass to the best ways, and from the way in hand to containers filled for it."""

from __future__ import annotations

from PySide6.QtCore import QObject, Signal

from core.errors import InputError
from core.exercise.model import LOAD_USES, Use
from core.fit.setting import Setting
from core.house.model import Person
from core.loads.building import WITHIN_PCT, Built, Way, build
from core.loads.ladder import Ladder
from core.loads.set_up import fills_of
from core.quantity.display import UnitSystem
from core.quantity.units import parse_mass_kg
from core.store.commands import SetFills
from gui.desk.desk import Desk
from gui.desk.names import USE_NAMES
from gui.fill.build_page import BuildPage
from gui.fill.build_words import (
    answer_words,
    ladder_twin,
    ladder_words,
    load_view,
    near_marks,
    rung_marks,
    steps_round,
    way_views,
)

EXAMPLES = {UnitSystem.METRIC: "12 kg", UnitSystem.US: "26 lb"}
UNITS = {UnitSystem.METRIC: "kg", UnitSystem.US: "lb"}
LIMITS_PCT = (2.0, WITHIN_PCT, 10.0)
ANYBODY = Person(id="anybody", name="Anybody", body_mass_kg=70.0, height_cm=170.0)
"""Stands in for the person while nobody is entered: only what is held overhead depends on their reach."""
ASK = "Write what the load should weigh, or walk the ladder with the arrow keys."
NOTHING = "Nothing you list can be held this way. Hold it otherwise, or add what you have to your household."


class BuildFlow(QObject):
    """`titled` carries a line for the title bar whenever what is shown is another."""

    titled = Signal(str)

    def __init__(self, desk: Desk, page: BuildPage, parent: QObject) -> None:
        super().__init__(parent)
        self._desk = desk
        self._page = page
        self._use = Use.HUG
        self._within_pct = WITHIN_PCT
        self._built: Built | None = None
        self._ladder: Ladder | None = None
        self._way: Way | None = None
        self._steps: tuple[int | None, ...] = ()
        page.use_chosen.connect(self._choose_use)
        page.limit_chosen.connect(self._choose_limit)
        page.mass_typed.connect(self._ask)
        page.way_chosen.connect(self._choose_way)
        page.rung_chosen.connect(self._choose_rung)
        page.step_chosen.connect(self._choose_step)
        page.fill_taken.connect(self._take)

    def refresh(self) -> None:
        """The record changed, or the page comes to the front."""
        uses = self._uses()
        if self._use not in uses:
            self._use = uses[0]
        names = tuple(USE_NAMES[use][0].upper() + USE_NAMES[use][1:] for use in uses)
        limits = tuple(f"{limit:g} %" for limit in LIMITS_PCT)
        self._page.show_uses(names, uses.index(self._use), limits, LIMITS_PCT.index(self._within_pct))
        self._page.mass.edit.setPlaceholderText(EXAMPLES[self._desk.units()])
        self._show_ladder()

    def ask(self, text: str, use: Use | None = None) -> None:
        """Ask for a mass as if it were typed."""
        self._use = use or self._use
        self._page.mass.show_text(text)
        self.refresh()

    def way(self) -> Way | None:
        """The load in hand."""
        return self._way

    def _uses(self) -> tuple[Use, ...]:
        """The ways to hold a load that this house has one for; hugging is always asked about."""
        setting = self._setting()
        return tuple(use for use in LOAD_USES if use is Use.HUG or len(_ladder(setting, use)))

    def _setting(self) -> Setting:
        known = self._desk.setting()
        return known or Setting(self._desk.house(), ANYBODY, self._desk.catalog.material_by_id)

    def _show_ladder(self) -> None:
        system = self._desk.units()
        self._ladder = _ladder(self._setting(), self._use)
        self._page.show_ladder(rung_marks(self._ladder, system), ladder_twin(self._ladder, system))
        self.titled.emit(f"{USE_NAMES[self._use]} · {ladder_words(self._ladder)}")
        self._ask(self._page.mass.text())

    def _ask(self, text: str) -> None:
        """Work the typed mass out; while nothing can be, the ladder alone stays."""
        self._built = None
        fault = ""
        try:
            self._built = self._work_out(text.strip())
        except InputError as error:
            fault = str(error)
        self._page.mass.show_fault(fault)
        built = self._built
        if built is None:
            self._page.show_wanted(0.0, 0.0)
            self._page.show_ways("", ())
            self._hold(None)
            return
        span = built.target_kg * built.within_pct / 100
        self._page.show_wanted(built.target_kg - span, built.target_kg + span)
        views = way_views(built, self._desk.house(), self._desk.units())
        place = self._place_of_held(built)
        self._page.show_ways(answer_words(built, self._use, self._desk.units()), views, place)
        self._hold(built.nearest[place] if built.nearest else None)

    def _place_of_held(self, built: Built) -> int:
        """Where the load in hand is among the ways: after its fill was taken it may rank elsewhere. Else the best."""
        if self._way is None:
            return 0
        held = _made_of(self._way)
        return next((at for at, way in enumerate(built.nearest) if _made_of(way) == held), 0)

    def _work_out(self, text: str) -> Built | None:
        if not text or self._ladder is None:
            return None
        kg = parse_mass_kg(text, UNITS[self._desk.units()])
        one_hand = _ladder(self._setting(), Use.ONE_HAND)
        return build(self._ladder, kg, one_hand=one_hand, within_pct=self._within_pct)

    def _hold(self, way: Way | None) -> None:
        """Take a load in hand and show it whole."""
        self._way = way
        ladder = self._ladder
        if way is None or ladder is None:
            self._page.ladder.show_current(-1)
            self._page.show_near((), -1)
            self._page.show_load(None, ASK if ladder is not None and len(ladder) else NOTHING)
            return
        at = ladder.nearest_index(way.rung.mass.value, 0.0, float("inf"))
        self._page.ladder.show_current(-1 if at is None else at)
        system = self._desk.units()
        below, above = steps_round(ladder, way.rung.mass.value)
        self._steps = (*reversed(below), None, *above)
        self._page.show_near(near_marks(ladder, way, self._steps, system), len(below))
        target_kg = None if self._built is None else self._built.target_kg
        self._page.show_load(load_view(way, self._desk.house(), self._desk.catalog, system, target_kg=target_kg))

    def _choose_use(self, place: int) -> None:
        self._use = self._uses()[place]
        self._show_ladder()

    def _choose_limit(self, place: int) -> None:
        self._within_pct = LIMITS_PCT[place]
        self._ask(self._page.mass.text())

    def _choose_way(self, place: int) -> None:
        if self._built is not None and place < len(self._built.nearest):
            self._hold(self._built.nearest[place])

    def _choose_rung(self, place: int) -> None:
        if self._ladder is None:
            return
        rung = self._ladder.rung(place)
        target_kg = self._built.target_kg if self._built is not None else rung.mass.value
        apart_kg = 0.0 if self._use is Use.PAIR else None
        self._page.show_chosen(-1)
        self._hold(Way(rung=rung, off_kg=rung.mass.value - target_kg, apart_kg=apart_kg))

    def _choose_step(self, place: int) -> None:
        at = self._steps[place]
        if at is not None:
            self._choose_rung(at)

    def _take(self) -> None:
        """Note what is in each container now; one undo takes it all back."""
        fills = () if self._way is None else fills_of(self._way.rung)
        if fills:
            self._desk.do(SetFills(fills))


def _made_of(way: Way) -> tuple[tuple[str, int, str | None, int], ...]:
    """What tells one way from another: things, how many, with what, to the millilitre."""
    return tuple(
        (part.thing_id, part.count, part.material_id, round(1000 * part.fill_l)) for part in way.rung.recipe.parts
    )


def _ladder(setting: Setting, use: Use) -> Ladder:
    return setting.ladder(use, 2 if use is Use.PAIR else 1)
