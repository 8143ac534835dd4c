"""Name the Debian packages that hold the system libraries Qt links to and this machine lacks.

Prints the package names on one line and exits 1 when something is missing; prints nothing and exits 0 otherwise.
Without this check Qt aborts with a text that names a plugin, not the line to type.
"""

from __future__ import annotations

import importlib.util
import re
import subprocess
import sys
from collections.abc import Iterable
from pathlib import Path

PACKAGES = {
    "libEGL.so.1": "libegl1",
    "libGL.so.1": "libgl1",
    "libX11-xcb.so.1": "libx11-xcb1",
    "libX11.so.6": "libx11-6",
    "libdbus-1.so.3": "libdbus-1-3",
    "libfontconfig.so.1": "libfontconfig1",
    "libfreetype.so.6": "libfreetype6",
    "libglib-2.0.so.0": "libglib2.0-0",
    "libgthread-2.0.so.0": "libglib2.0-0",
    "libxcb-cursor.so.0": "libxcb-cursor0",
    "libxcb-icccm.so.4": "libxcb-icccm4",
    "libxcb-image.so.0": "libxcb-image0",
    "libxcb-keysyms.so.1": "libxcb-keysyms1",
    "libxcb-randr.so.0": "libxcb-randr0",
    "libxcb-render-util.so.0": "libxcb-render-util0",
    "libxcb-render.so.0": "libxcb-render0",
    "libxcb-shape.so.0": "libxcb-shape0",
    "libxcb-shm.so.0": "libxcb-shm0",
    "libxcb-sync.so.1": "libxcb-sync1",
    "libxcb-util.so.1": "libxcb-util1",
    "libxcb-xfixes.so.0": "libxcb-xfixes0",
    "libxcb-xkb.so.1": "libxcb-xkb1",
    "libxcb.so.1": "libxcb1",
    "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
    "libxkbcommon.so.0": "libxkbcommon0",
}
"""Debian 12 package for each library that Qt's widgets and window plugins link to themselves."""

MODULES = ("Core", "Gui", "Widgets", "DBus", "Svg", "PrintSupport")
PLUGINS = ("libqoffscreen.so", "libqxcb.so")
MISSING_LINE = re.compile(r"^\s*(\S+) => not found", re.MULTILINE)


def qt_files(qt: Path) -> list[Path]:
    """The libraries and window plugins below the `Qt` folder of PySide6 that the program loads."""
    libraries = [qt / "lib" / f"libQt6{module}.so.6" for module in MODULES]
    return libraries + [qt / "plugins" / "platforms" / plugin for plugin in PLUGINS]


def missing_libraries(linker_output: str) -> list[str]:
    """The library names that `ldd` reports as not found, each once, in order."""
    return sorted(set(MISSING_LINE.findall(linker_output)))


def packages_for(libraries: Iterable[str]) -> list[str]:
    """The Debian packages to install; a library this file does not know is named itself."""
    return sorted({PACKAGES.get(library, library) for library in libraries})


def main() -> int:
    """Check the PySide6 that this Python would import."""
    if sys.platform != "linux":
        return 0  # elsewhere the wheel brings all that Qt needs
    found = importlib.util.find_spec("PySide6")
    if found is None or found.origin is None:
        print("PySide6-Essentials")
        return 1
    files = qt_files(Path(found.origin).parent / "Qt")
    listing = subprocess.run(["ldd", *files], capture_output=True, text=True, check=True).stdout
    packages = packages_for(missing_libraries(listing))
    if packages:
        print(" ".join(packages))
    return 1 if packages else 0


if __name__ == "__main__":
    sys.exit(main())
