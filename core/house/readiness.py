"""Questions before the first plan: who should ask a professional before starting, and how hard to begin.

The logic is that of the pre-participation algorithm of the American College of Sports Medicine (Riebe et al. 2015, Med
Sci Sports Exerc 47:2473-9; abstract read, the cells from memory): three inputs count, being active now (planned
moderate movement for half an hour on three days a week over three months), known heart, metabolic or kidney disease,
and signs or symptoms. Risk factors are not counted. The questions are our own words. It sends people to a
professional; it does not diagnose. That rule sends about half of all adults over 40 to ask first (Whitfield 2017).
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

SYMPTOMS, DISEASE, OTHER, INACTIVE = "symptoms", "disease", "other", "inactive"
QUESTIONS: tuple[tuple[str, str], ...] = (
    (SYMPTOMS, "Chest pain or pressure, faintness, or unusual breathlessness, at rest or with effort, lately?"),
    (DISEASE, "A known heart, blood vessel, kidney or metabolic condition, such as diabetes?"),
    (OTHER, "Pregnant, or recovering from an operation or injury, or told by a professional to hold back?"),
    (INACTIVE, "Less than half an hour of moderate movement on three days a week over the last three months?"),
)
"""Keys and words; a yes to each is what counts."""
STOP_SIGNS = (
    "Stop and get help for chest, neck, jaw or arm pain or pressure, faintness, breathlessness that stops you talking, "
    "a pounding or irregular heartbeat, sudden weakness, trouble speaking or seeing, or a severe headache. If it does "
    "not pass within minutes, call the emergency number. Stop for any sharp or new pain."
)


class Intensity(StrEnum):
    """How hard training may be: nothing, easy to moderate (you can talk), or hard as well."""

    NONE = "none"
    MODERATE = "moderate"
    VIGOROUS = "vigorous"


@dataclass(frozen=True, slots=True, kw_only=True)
class Readiness:
    """What follows from the answers: whether to ask first, the sentence to show, and how hard is fine until then.

    `may_do` is what the answers leave open before anyone was asked; afterwards the professional's word counts.
    """

    ask_first: bool
    sentence: str
    may_do: Intensity


def readiness(yes: frozenset[str]) -> Readiness:
    """The advice for the questions answered with yes; `ValueError` for a key that is no question."""
    unknown = yes - {key for key, _ in QUESTIONS}
    if unknown:
        raise ValueError(f"no question is called {min(unknown)}")
    active = INACTIVE not in yes
    if SYMPTOMS in yes:
        return _with_symptoms(active)
    if OTHER in yes:
        sentence = "Ask your doctor, midwife or another licensed professional first. Their word comes before any plan."
        return Readiness(ask_first=True, sentence=sentence, may_do=Intensity.NONE)
    if DISEASE in yes:
        return _with_disease(active)
    return _without_either(active)


def _with_symptoms(active: bool) -> Readiness:
    first = "Stop training, and see" if active else "See"
    sentence = f"{first} a doctor about these signs before you go on. Plan after that."
    return Readiness(ask_first=True, sentence=sentence, may_do=Intensity.NONE)


def _with_disease(active: bool) -> Readiness:
    if active:
        sentence = (
            "You can go on at a pace at which you can talk. Ask your doctor before hard sets or intervals, unless you "
            "were cleared within the last 12 months and nothing changed. Their word comes before any plan."
        )
        return Readiness(ask_first=True, sentence=sentence, may_do=Intensity.MODERATE)
    sentence = (
        "Ask your doctor or another licensed professional first, then begin with light to moderate effort. Their word "
        "comes before any plan."
    )
    return Readiness(ask_first=True, sentence=sentence, may_do=Intensity.NONE)


def _without_either(active: bool) -> Readiness:
    if active:
        sentence = "Nothing here speaks against starting. Begin light all the same."
        return Readiness(ask_first=False, sentence=sentence, may_do=Intensity.VIGOROUS)
    sentence = "Start light: keep the first two weeks easy, whatever the numbers say, and raise the effort slowly."
    return Readiness(ask_first=False, sentence=sentence, may_do=Intensity.MODERATE)
