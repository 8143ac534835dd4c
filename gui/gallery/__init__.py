"""Pages that show every widget with invented values, to look at and to test against."""

from gui.gallery.controls import controls_page
from gui.gallery.house import house_page
from gui.gallery.loads import ladder_page, vessel_page
from gui.gallery.pictures_page import pictures_page
from gui.gallery.week import week_page
from gui.gallery.window import window

__all__ = ["controls_page", "house_page", "ladder_page", "pictures_page", "vessel_page", "week_page", "window"]
