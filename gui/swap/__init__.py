"""The screen that swaps a movement for the nearest one that can be done with what is there."""

from gui.swap.screen import SwapScreen

__all__ = ["SwapScreen"]
