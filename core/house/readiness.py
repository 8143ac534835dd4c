"""Questions before the first plan: who should ask a professional before starting, and how light to begin.

The logic follows the pre-participation algorithm of the American College of Sports Medicine (Riebe et al. 2015, Med Sci
Sports Exerc 47:2473-9): three inputs (active now, known heart, metabolic or kidney disease, signs or symptoms). Cell by
cell it is given here from memory, on the careful side. It sends people to a professional; it does not diagnose.
"""

from __future__ import annotations

from dataclasses import dataclass

QUESTIONS: tuple[tuple[str, str], ...] = (
    ("symptoms", "Chest pain or pressure, faintness, or unusual breathlessness, at rest or with effort, lately?"),
    ("disease", "A known heart, blood vessel, kidney or metabolic condition, such as diabetes?"),
    ("other", "Pregnant, or recovering from an operation or injury, or told by a professional to hold back?"),
    ("inactive", "Less than half an hour of moderate movement on three days a week over the last three months?"),
)
"""Keys and words; a yes to each is what counts."""
STOP_SIGNS = (
    "Stop and get help for chest, neck, jaw or arm pain or pressure, faintness, breathlessness that stops you talking, "
    "a pounding or irregular heartbeat, sudden weakness or a severe headache. Stop for any sharp or new pain."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Readiness:
    """What follows from the answers: whether to ask first, and the sentence to show."""

    ask_first: bool
    sentence: str


def readiness(yes: frozenset[str]) -> Readiness:
    """The advice for the questions answered with yes; `ValueError` for a key that is no question."""
    unknown = yes - {key for key, _ in QUESTIONS}
    if unknown:
        raise ValueError(f"no question is called {min(unknown)}")
    if "symptoms" in yes:
        return Readiness(ask_first=True, sentence="See a doctor about these signs before you train. Plan after that.")
    if yes & {"disease", "other"}:
        return Readiness(
            ask_first=True,
            sentence="Ask your doctor or another licensed professional first. Their word comes before any plan.",
        )
    if "inactive" in yes:
        sentence = "Start light: keep the first two weeks easy, whatever the numbers say."
        return Readiness(ask_first=False, sentence=sentence)
    return Readiness(ask_first=False, sentence="Nothing here speaks against starting. Begin light all the same.")
