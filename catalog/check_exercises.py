"""Rules that hold over all exercises together, each fault a sentence: names, links, demands, doses, sentences, sources.

What one entry must look like by itself is the schema's business; here entries are compared with the trade's own sense
(common practice, no source) and with each other.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator

from catalog.coverage import BANDS, STRENGTH_PATTERNS, coverage, needs_common_things_only
from core.exercise.model import GYM_USES, LOAD_USES, Basis, Demand, DoseKind, Exercise, Pattern, Posture, Use
from core.house.own import OWN_PREFIX

LONGEST_SENTENCE = 90
LONGEST_CAUTION = 160
FEWEST_AT_HOME = 8
SANE_DOSE: dict[DoseKind, tuple[float, float]] = {
    DoseKind.REPS: (1, 60),
    DoseKind.TIME: (5, 4 * 3600),
    DoseKind.DISTANCE: (3, 20_000),
}
"""The least and the most a usual dose may be: repetitions, seconds, metres."""
LONGEST_REP_S = 60.0
OVERHEAD_PATTERNS = (Pattern.PUSH_OVERHEAD, Pattern.PULL_OVERHEAD, Pattern.GROUND_TO_OVERHEAD)
_ENDS_INSIDE = re.compile(r"[.!?] +[A-Z]")


def find_exercise_errors(exercises: Iterable[Exercise], source_ids: frozenset[str]) -> Iterator[str]:
    """One sentence per rule broken, in the order of the entries; cross-entry rules after them."""
    entries = tuple(exercises)
    by_id = {exercise.id: exercise for exercise in entries}
    for exercise in entries:
        for find in _RULES:
            yield from (f"{exercise.id}: {what}" for what in find(exercise))
        yield from (f"{exercise.id}: {what}" for what in _unknown_sources(exercise, source_ids))
        yield from (f"{exercise.id}: {what}" for what in _broken_links(exercise, by_id))
    yield from _shared_names(entries)
    yield from _circles(by_id)
    yield from _unconnected(by_id)
    yield from _thin_patterns(entries)
    yield from _without_staples(entries)


# --- one entry against the trade's sense ------------------------------------------------------------------------------


def _patterns(exercise: Exercise) -> Iterator[str]:
    full = [pattern for pattern, weight in exercise.patterns if weight == 1.0]
    if len(full) > 1:
        yield f"{' and '.join(full)} both weigh 1.0; only the main pattern may"
    for _, weight in (*exercise.patterns, *exercise.muscles):
        if not 0 < weight <= 1:
            yield f"a weight of {weight:g} is not above 0 and at most 1"
    if exercise.muscles and max(weight for _, weight in exercise.muscles) < 1.0:
        yield "no muscle weighs 1.0; the prime mover must"


def _staple(exercise: Exercise) -> Iterator[str]:
    if exercise.staple and exercise.needs_gym:
        yield "a movement that needs a gym is no staple"


def _floor(exercise: Exercise) -> Iterator[str]:
    if exercise.posture is not Posture.FLOOR or _asks_for(exercise, Use.FLAT_BENCH):
        return
    if Demand.FLOOR_TRANSFER not in exercise.demands:
        yield "it is done on the floor but does not demand floor_transfer"
    if exercise.floor_m2 < 1 and not _asks_for(exercise, Use.FLOOR):
        yield "it is done on the floor but asks for less than 1 m² of it"


def _landing(exercise: Exercise) -> Iterator[str]:
    lands = Demand.IMPACT in exercise.demands
    if lands and not exercise.impact:
        yield "it demands impact but has impact 0"
    if exercise.impact >= 2 and not lands:
        yield f"it has impact {exercise.impact} but does not demand impact"
    if exercise.impact >= 2 and not exercise.noise:
        yield f"it has impact {exercise.impact} but noise 0"


def _overhead(exercise: Exercise) -> Iterator[str]:
    load_above = _asks_for(exercise, Use.OVERHEAD)
    hands_above = exercise.reach_over_head and exercise.main_pattern in OVERHEAD_PATTERNS
    if (hands_above or load_above) and Demand.OVERHEAD_REACH not in exercise.demands:
        yield "it works overhead but does not demand overhead_reach"
    if load_above and not exercise.reach_over_head:
        yield "it holds a load overhead but reach_over_head is false"


def _dose(exercise: Exercise) -> Iterator[str]:
    low, high = exercise.typical
    least, most = SANE_DOSE[exercise.dose]
    if not least <= low <= high <= most:
        yield f"a usual dose of {low:g} to {high:g} is not sane for {exercise.dose} ({least:g} to {most:g})"
    if exercise.dose is DoseKind.REPS and exercise.rep_s > LONGEST_REP_S:
        yield f"a repetition of {exercise.rep_s:g} s is too long; count time instead"
    if exercise.dose is not DoseKind.REPS and exercise.rep_s != 1:
        yield f"rep_s must be 1 where {exercise.dose} is counted"


def _shares(exercise: Exercise) -> Iterator[str]:
    body = exercise.body
    for share in (body.share, *(share for _, share in body.by_height)):
        if not 0 <= share <= 1:
            yield f"a body share of {share:g} is not from 0 to 1"
    if body.basis is Basis.PUBLISHED and not body.source_ids:
        yield "a published share names no source"
    if not (0 < exercise.load_share <= 1 and 0 < exercise.side_share <= 1):
        yield "load_share and side_share must be above 0 and at most 1"


def _needs(exercise: Exercise) -> Iterator[str]:
    for need in exercise.needs:
        gym = [use in GYM_USES for use in need.uses]
        if any(gym) and not all(gym):
            yield f"the need {'/'.join(need.uses)} mixes gym and home uses"
        if need.optional and need.uses[0] in GYM_USES:
            yield f"the gym need {'/'.join(need.uses)} must not be optional"
    if sum(need.uses[0] in LOAD_USES for need in exercise.needs) > 1:
        yield "it has more than one load need; only the first would be found"


def _sentences(exercise: Exercise) -> Iterator[str]:
    if exercise.id.startswith(OWN_PREFIX):
        return  # what a person writes for themselves is theirs to word
    if not 2 <= len(exercise.cues) <= 4:
        yield f"it has {len(exercise.cues)} cues, not 2 to 4"
    if not 1 <= len(exercise.faults) <= 2:
        yield f"it has {len(exercise.faults)} faults, not 1 or 2"
    for text in (*exercise.cues, *exercise.faults):
        yield from _one_sentence(text, LONGEST_SENTENCE)
    for text in exercise.cautions:
        if not text.endswith(".") or len(text) > LONGEST_CAUTION or "!" in text:
            yield f"the caution “{text}” must end with a full stop and have at most {LONGEST_CAUTION} characters"


def _one_sentence(text: str, longest: int) -> Iterator[str]:
    if not text.endswith(".") or _ENDS_INSIDE.search(text) or "!" in text:
        yield f"“{text}” must be one sentence that ends with a full stop"
    if len(text) > longest:
        yield f"“{text}” has {len(text)} characters, not at most {longest}"


_RULES: tuple[Callable[[Exercise], Iterator[str]], ...] = (
    _patterns,
    _staple,
    _floor,
    _landing,
    _overhead,
    _dose,
    _shares,
    _needs,
    _sentences,
)


def _asks_for(exercise: Exercise, use: Use) -> bool:
    return any(use in need.uses and not need.optional for need in exercise.needs)


# --- entries against each other ---------------------------------------------------------------------------------------


def _unknown_sources(exercise: Exercise, source_ids: frozenset[str]) -> Iterator[str]:
    for source_id in (*exercise.body.source_ids, *exercise.source_ids):
        if source_id not in source_ids:
            yield f"the source {source_id} is not listed"


def _broken_links(exercise: Exercise, by_id: dict[str, Exercise]) -> Iterator[str]:
    for neighbour_id in exercise.easier:
        other = by_id.get(neighbour_id)
        if other is None:
            yield f"the easier neighbour {neighbour_id} does not exist"
        elif exercise.id not in other.harder:
            yield f"{neighbour_id} is named as easier but does not name it as harder"
    for neighbour_id in exercise.harder:
        other = by_id.get(neighbour_id)
        if other is None:
            yield f"the harder neighbour {neighbour_id} does not exist"
        elif exercise.id not in other.easier:
            yield f"{neighbour_id} is named as harder but does not name it as easier"
        elif other.level < exercise.level and not other.needs_gym:
            yield f"{neighbour_id} is named as harder but is level {other.level}, below level {exercise.level}"
        elif other.level > exercise.level + 1 and not (other.needs_gym or exercise.needs_gym):
            yield f"{neighbour_id} is named as harder but is level {other.level}, too far above level {exercise.level}"


def _shared_names(entries: Iterable[Exercise]) -> Iterator[str]:
    """Ids, names and aliases: each belongs to one exercise, whatever its letter case."""
    owners: dict[str, list[str]] = defaultdict(list)
    ids: dict[str, int] = defaultdict(int)
    for exercise in entries:
        ids[exercise.id] += 1
        for word in (exercise.name, *exercise.aliases):
            owners[word.casefold()].append(exercise.id)
    yield from (f"{one}: the id is used {count} times" for one, count in ids.items() if count > 1)
    for word, who in owners.items():
        if len(who) > 1:
            yield f"{who[0]}: the name or alias “{word}” also belongs to {', '.join(who[1:])}"


def _circles(by_id: dict[str, Exercise]) -> Iterator[str]:
    """A way along `harder` that comes back to where it began, named once by its smallest id."""
    for start in sorted(by_id):
        reached = _reached(start, by_id)
        if start in reached and start == min(other for other in reached if start in _reached(other, by_id)):
            yield f"{start}: following harder neighbours leads back to it"


def _reached(start: str, by_id: dict[str, Exercise]) -> set[str]:
    """Every id that following `harder` from `start` leads to; `start` itself only by a circle."""
    found: set[str] = set()
    ahead = list(by_id[start].harder)
    while ahead:
        here = ahead.pop()
        if here in by_id and here not in found:
            found.add(here)
            ahead.extend(by_id[here].harder)
    return found


def _unconnected(by_id: dict[str, Exercise]) -> Iterator[str]:
    """In each strength pattern some way must lead from level 1 or 2 to level 4 or 5 that home gear allows."""
    for pattern in STRENGTH_PATTERNS:
        members = [one for one in by_id.values() if one.main_pattern is pattern and not one.needs_gym]
        hard = {one.id for one in members if one.level >= 4}
        easy = [one.id for one in members if one.level <= 2]
        if members and not any(hard & _reached(start, by_id) for start in easy):
            yield f"{pattern}: no way along harder neighbours leads from level 1 or 2 to level 4 or 5"


def _thin_patterns(entries: tuple[Exercise, ...]) -> Iterator[str]:
    for row in coverage(entries).patterns:
        if row.pattern in STRENGTH_PATTERNS and row.entries:
            if row.common_only < FEWEST_AT_HOME:
                yield f"{row.pattern}: {row.common_only} entries with common things only, not {FEWEST_AT_HOME}"
            for band, count in row.bands.items():
                if not count:
                    yield f"{row.pattern}: no entry at level {band} needs only common things"


def _without_staples(entries: tuple[Exercise, ...]) -> Iterator[str]:
    """A strength pattern with entries at a level has a staple there that needs only common things."""
    for pattern in STRENGTH_PATTERNS:
        own = [one for one in entries if one.main_pattern is pattern and needs_common_things_only(one)]
        for band, levels in BANDS.items():
            there = [one for one in own if one.level in levels]
            if there and not any(one.staple for one in there):
                yield f"{pattern}: no staple at level {band} needs only common things"
