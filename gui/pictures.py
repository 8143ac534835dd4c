"""`python -m gui.pictures FOLDER`: a PNG of every screen in every theme, size, scale and state, to look at.

Each scale runs in a process of its own, because Qt reads the scale factor once. Sizes are in device-independent pixels,
so a picture at 200 % has twice as many. Names: `screen-state-theme-WIDTHxHEIGHT-scale.png`.
"""

from __future__ import annotations

import argparse
import os
import subprocess
import sys
import time
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication, QEvent, QEventLoop, QTimer
from PySide6.QtWidgets import QApplication, QWidget

from gui.theme import Theme, ThemeMode
from gui.worker import Errand

if TYPE_CHECKING:
    from gui.gallery.pictured import PicturedScreen

SIZES = ((1024, 700), (1280, 800), (1920, 1200))
SCALES = (100, 200)
THEMES = (ThemeMode.LIGHT, ThemeMode.DARK)
SETTLED_MS, TURNS = 25, 3
LONGEST_S = 60.0
"""An answer from a worker that takes longer than this is left out of the picture."""


def write_pictures(app: QApplication, folder: Path, screens: Sequence[PicturedScreen], scale_pct: int) -> int:
    """Write every picture of `screens` at the scale this process runs at; returns how many."""
    theme = Theme(app)
    written = 0
    for screen in screens:
        for mode in THEMES:
            theme.set_mode(mode)
            for state in screen.states:
                widget = screen.build(state)
                for width, height in SIZES:
                    name = f"{screen.name}-{state.value}-{mode.value}-{width}x{height}-{scale_pct}.png"
                    _grab(widget, width, height, folder / name)
                    written += 1
                _end(widget)
    return written


def _end(widget: QWidget) -> None:
    """Now rather than with the application, so that hundreds of screens don't wait in memory."""
    widget.close()
    widget.deleteLater()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)


def _grab(widget: QWidget, width: int, height: int, file: Path) -> None:
    widget.resize(width, height)
    widget.show()
    _settle()
    _await_answers(widget)
    if not widget.grab().save(str(file)):
        raise OSError(f"{file} could not be written")


def _settle() -> None:
    """Let layouts that depend on one another come to rest, each turn what the one before has set off."""
    for _ in range(TURNS):
        turn = QEventLoop()
        QTimer.singleShot(SETTLED_MS, turn.quit)
        turn.exec()


def _await_answers(widget: QWidget) -> None:
    """Until no worker of this screen is at work any more."""
    until = time.monotonic() + LONGEST_S
    while any(errand.is_busy() for errand in widget.findChildren(Errand)) and time.monotonic() < until:
        _settle()


def _arguments(words: Sequence[str]) -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="python -m gui.pictures", description=__doc__)
    parser.add_argument("folder", type=Path, help="where the pictures go")
    parser.add_argument("--only", default="", help="only screens whose name begins like this")
    parser.add_argument("--scale", type=int, choices=SCALES, help="one scale in this process (used inside)")
    return parser.parse_args(words)


def _one_scale(given: argparse.Namespace) -> int:
    from gui.gallery.pictured import pictured_screens

    app = QApplication.instance() or QApplication(sys.argv[:1])
    if not isinstance(app, QApplication):
        raise TypeError("pictures need an application with windows")
    screens = [screen for screen in pictured_screens() if screen.name.startswith(given.only)]
    many = write_pictures(app, given.folder, screens, given.scale)
    sys.stdout.write(f"{many} pictures at {given.scale} % in {given.folder}\n")
    return 0


def main(words: Sequence[str] | None = None) -> int:
    """Entry of the command; 0 when every picture was written."""
    given = _arguments(sys.argv[1:] if words is None else words)
    given.folder.mkdir(parents=True, exist_ok=True)
    if given.scale:
        return _one_scale(given)
    for scale in SCALES:
        surroundings = {**os.environ, "QT_SCALE_FACTOR": str(scale / 100)}
        surroundings.setdefault("QT_QPA_PLATFORM", "offscreen")
        command = [sys.executable, "-m", "gui.pictures", str(given.folder), "--only", given.only, "--scale", str(scale)]
        done = subprocess.run(command, env=surroundings, check=False)
        if done.returncode:
            return done.returncode
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
