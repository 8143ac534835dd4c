"""The screen for a person's own movements and kinds of things: copied from the catalog, changed, checked."""

from gui.own.screen import OwnScreen

__all__ = ["OwnScreen"]
