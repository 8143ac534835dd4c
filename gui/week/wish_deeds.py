"""The edits of a person's wishes for the week; each is saved at once and can be undone."""

from __future__ import annotations

from dataclasses import replace

from core.house.model import QuietHours
from core.house.wishes import DayWish, Goals, Pin, WeekWishes
from core.store.commands import ChangePlace, SetPins, SetWishes
from gui.desk.desk import Desk


class WishDeeds:
    """Changes what the chosen person wishes; each deed says whether something was saved."""

    def __init__(self, desk: Desk) -> None:
        self._desk = desk

    def set_days(self, days: tuple[DayWish, ...]) -> bool:
        """Other days."""
        return self._save(replace(self._desk.wishes(), days=days))

    def set_goals(self, goals: Goals) -> bool:
        """Other goals."""
        return self._save(replace(self._desk.wishes(), goals=goals))

    def set_quiet(self, place_id: str, quiet: QuietHours | None) -> bool:
        """Other quiet hours of a place."""
        place = self._desk.place(place_id)
        return place is not None and self._desk.do(ChangePlace(replace(place, quiet=quiet)))

    def toggle_pin(self, pin: Pin) -> bool:
        """Keep what the pin names, or let go of it."""
        pins = self._desk.wishes().pins
        if pin in pins:
            return self.remove_pin(pin)
        return self._save_pins((*pins, pin))

    def remove_pin(self, pin: Pin) -> bool:
        """Let go of what the pin names."""
        return self._save_pins(tuple(one for one in self._desk.wishes().pins if one != pin))

    def ban(self, exercise_id: str) -> bool:
        """Leave a movement out of every plan from now on; pins of it go."""
        wishes = self._desk.wishes()
        pins = tuple(pin for pin in wishes.pins if pin.exercise_id != exercise_id)
        bans = tuple(dict.fromkeys((*wishes.bans, exercise_id)))
        return self._save(replace(wishes, bans=bans, pins=pins))

    def allow(self, exercise_id: str) -> bool:
        """Let a movement into plans again."""
        wishes = self._desk.wishes()
        return self._save(replace(wishes, bans=tuple(ban for ban in wishes.bans if ban != exercise_id)))

    def _save(self, wishes: WeekWishes) -> bool:
        person = self._desk.person()
        if person is None or wishes == self._desk.wishes():
            return False
        return self._desk.do(SetWishes(person.id, wishes))

    def _save_pins(self, pins: tuple[Pin, ...]) -> bool:
        person = self._desk.person()
        if person is None or pins == self._desk.wishes().pins:
            return False
        return self._desk.do(SetPins(person.id, pins))
