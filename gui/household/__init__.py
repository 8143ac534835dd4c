"""The screen of what a household owns: things, people and places, and the first run from nothing to a first week."""

from gui.household.screen import HouseholdScreen

__all__ = ["HouseholdScreen"]
