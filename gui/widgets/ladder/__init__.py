"""The ladder: every load a house can make for one use, and how big the steps between them are."""

from gui.widgets.ladder.rung import RungMark
from gui.widgets.ladder.view import LadderView

__all__ = ["LadderView", "RungMark"]
