"""A machine that lacks Qt's system libraries gets the names of the packages to install."""

from __future__ import annotations

from scripts.qt_libraries import missing_libraries, packages_for

LISTING = """\
/x/libqxcb.so:
\tlinux-vdso.so.1 (0x00007ffe)
\tlibGL.so.1 => not found
\tlibxcb-cursor.so.0 => not found
\tlibc.so.6 => /lib/x86_64-linux-gnu/libc.so.6 (0x00007f)
/x/libQt6Gui.so.6:
\tlibGL.so.1 => not found
"""


def test_each_missing_library_is_found_once() -> None:
    assert missing_libraries(LISTING) == ["libGL.so.1", "libxcb-cursor.so.0"]


def test_nothing_is_missing_when_every_library_was_found() -> None:
    assert missing_libraries("\tlibc.so.6 => /lib/libc.so.6 (0x00007f)\n") == []


def test_libraries_become_packages_named_once() -> None:
    assert packages_for(["libgthread-2.0.so.0", "libglib-2.0.so.0", "libGL.so.1"]) == ["libgl1", "libglib2.0-0"]


def test_an_unknown_library_is_named_itself() -> None:
    assert packages_for(["libnew.so.9"]) == ["libnew.so.9"]
