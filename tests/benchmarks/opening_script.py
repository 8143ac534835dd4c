"""Opens a window in a process of its own and prints what it cost: `bare`, or `fillmark FOLDER` on a data folder.

One JSON line: processor seconds since the start of the process at the first paint and when it can be used, resident
megabytes then, and which heavy modules were loaded at the first paint.
"""

from __future__ import annotations

import json
import sys
import time
from pathlib import Path

HEAVY = ("ortools", "alembic", "scipy", "pandas", "numpy", "sqlalchemy", "pydantic")


def resident_mb() -> float:
    pages = int(Path("/proc/self/statm").read_text(encoding="ascii").split()[1])
    return pages * 4096 / 1e6


def bare() -> dict[str, object]:
    from PySide6.QtCore import QEvent, QTimer, Signal
    from PySide6.QtWidgets import QApplication, QLabel, QMainWindow

    class Window(QMainWindow):
        painted = Signal()

        def event(self, event: QEvent) -> bool:
            if event.type() is QEvent.Type.Paint:
                QTimer.singleShot(0, self.painted.emit)
            return super().event(event)

    app = QApplication([])
    window = Window()
    window.setCentralWidget(QLabel("Nothing"))
    window.resize(1280, 800)
    window.painted.connect(app.quit)
    window.show()
    app.exec()
    cost_s = time.process_time()
    return {"paint_s": cost_s, "usable_s": cost_s, "resident_mb": resident_mb(), "heavy": []}


def fillmark(folder: Path) -> dict[str, object]:
    from PySide6.QtCore import QTimer

    from gui.app import Opener, Opening, make_app
    from gui.opening import start
    from gui.shell.window import MainWindow

    app, theme = make_app(["fillmark"])
    told: dict[str, object] = {}
    window = MainWindow()

    def painted() -> None:
        told["paint_s"] = time.process_time()
        told["heavy"] = [name for name in HEAVY if name in sys.modules]

    def furnish(*given: object) -> None:
        start.open_window(window, theme, given[2], demo=False)  # type: ignore[arg-type]  # what load brought
        QTimer.singleShot(0, usable)

    def usable() -> None:
        told["usable_s"] = time.process_time()
        told["resident_mb"] = resident_mb()
        window.close()

    window.painted.connect(painted)
    opening = Opening(load=lambda _report: start.load(folder), furnish=furnish, explain=start.explain)
    opener = Opener(window, theme, opening)
    window.show()
    app.exec()
    del opener
    return told


if __name__ == "__main__":
    found = bare() if sys.argv[1] == "bare" else fillmark(Path(sys.argv[2]))
    sys.stdout.write(json.dumps(found) + "\n")
