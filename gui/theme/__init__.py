"""How Fillmark looks: colour tokens, type scale, spacing, pictures, and the object that dresses the application.

Use `tokens_of(widget)` for colours inside a paint event, `role_font(TextRole.X)` for text, `Space` and `Radius` for
distances, `family_colour` for movement families, `pixmap(picture, size, ink)` for drawings.
"""

from gui.theme.controller import Theme, ThemeMode
from gui.theme.families import Family, family_colour
from gui.theme.icons import AnyPicture, Icon, MovePicture, ThingPicture, UsePicture, icon, pixmap
from gui.theme.qt_palette import qt_palette, tokens_of
from gui.theme.spacing import CONTROL_HEIGHT, PAGE_MARGIN, SIDEBAR_NARROW, SIDEBAR_WIDTH, Radius, Space
from gui.theme.tokens import DARK, LIGHT, Tokens
from gui.theme.typography import TextRole, body_font, role_font

__all__ = [
    "CONTROL_HEIGHT",
    "DARK",
    "LIGHT",
    "PAGE_MARGIN",
    "SIDEBAR_NARROW",
    "SIDEBAR_WIDTH",
    "AnyPicture",
    "Family",
    "Icon",
    "MovePicture",
    "Radius",
    "Space",
    "TextRole",
    "Theme",
    "ThemeMode",
    "ThingPicture",
    "Tokens",
    "UsePicture",
    "body_font",
    "family_colour",
    "icon",
    "pixmap",
    "qt_palette",
    "role_font",
    "tokens_of",
]
