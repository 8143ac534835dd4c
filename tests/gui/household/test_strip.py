"""The strip of patterns: worked out off the GUI thread, what would help is one press away."""

from __future__ import annotations

from pytestqt.qtbot import QtBot

from gui.desk.desk import Desk
from gui.household import HouseholdScreen
from gui.household.gap_words import SHOW_HELP
from tests.gui import hand
from tests.gui.looking import clipped_labels, settle, show_at


def test_what_would_help_is_listed_whole_and_taken_with_one_press(desk: Desk, qtbot: QtBot) -> None:
    screen = HouseholdScreen(desk)
    qtbot.addWidget(screen)
    show_at(screen, 1096, 800)
    qtbot.waitUntil(lambda: not screen.possible.is_busy(), timeout=30_000)
    strip = screen.page.strip
    assert "movements possible" in screen.bar.subtitle()
    strip.sentence.link_followed.emit(SHOW_HELP)
    settle()
    rows = strip.rows()
    assert rows
    assert clipped_labels(strip) == []
    lowest = max(row.mapTo(strip, row.rect().bottomLeft()).y() for row in rows)
    assert strip.height() - lowest < 80, "no blank space below the list"
    wanted = rows[0].row
    hand.click(rows[0].button)
    assert wanted.kind_id in {thing.kind_id for thing in desk.house().things}
    screen.possible.close()
