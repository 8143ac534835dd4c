"""Dates in words, in English whatever the system's language."""

from __future__ import annotations

import datetime

MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)


def day_words(day: datetime.date) -> str:
    """“4 May 2026”."""
    return f"{day.day}\u00a0{MONTHS[day.month - 1]}\u00a0{day.year}"


def week_words(monday: datetime.date) -> str:
    """“4 to 10 May”, “29 June to 5 July”."""
    sunday = monday + datetime.timedelta(days=6)
    first = f"{monday.day}" if monday.month == sunday.month else f"{monday.day}\u00a0{MONTHS[monday.month - 1]}"
    return f"{first} to {sunday.day}\u00a0{MONTHS[sunday.month - 1]}"
