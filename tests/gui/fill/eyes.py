"""What a person reads on the fill screen, with ordinary spaces."""

from __future__ import annotations

from gui.fill import FillScreen


def plain(text: str) -> str:
    """Without no-break spaces."""
    return text.replace("\u00a0", " ")


def mass(screen: FillScreen) -> str:
    """The mass in large figures."""
    return plain(screen.side.mass.text())


def kg(screen: FillScreen) -> float:
    """The number alone."""
    return float(mass(screen).split()[0])


def goal(screen: FillScreen) -> str:
    """The answer to a wanted mass."""
    return plain(screen.side.goal.text())


def verdict(screen: FillScreen) -> str:
    """What is said of a typed reading."""
    return plain(screen.side.weigh.form.verdict())


def readings(screen: FillScreen) -> tuple[str, ...]:
    """The weighings listed."""
    return tuple(plain(row) for row in screen.side.readings.rows())
