"""The vessel: a container drawn in true proportion, whose fill line a hand can move."""

from gui.widgets.vessel.frame import VesselFrame
from gui.widgets.vessel.painter import paint_vessel
from gui.widgets.vessel.picture import Contents, Handle, ScaleTick, Silhouette, Top, VesselFill
from gui.widgets.vessel.view import VesselView

__all__ = [
    "Contents",
    "Handle",
    "ScaleTick",
    "Silhouette",
    "Top",
    "VesselFill",
    "VesselFrame",
    "VesselView",
    "paint_vessel",
]
