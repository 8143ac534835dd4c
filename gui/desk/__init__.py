"""The desk: the open record and catalog as every screen meets them, and what opening the window loads."""

from gui.desk.desk import Desk, Jump

__all__ = ["Desk", "Jump"]
