"""Fill & weigh: what a container weighs at any fill, how to fill it to a mass, and what the scale said."""

from gui.fill.screen import FillScreen

__all__ = ["FillScreen"]
