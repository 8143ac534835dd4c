"""The week: seven days planned from what the house has, and why each movement is there."""

from gui.week.screen import WeekScreen

__all__ = ["WeekScreen"]
