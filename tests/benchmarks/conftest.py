"""Timing bounds that hold on any machine: ratios of two callables timed in turn, and plain limits in milliseconds.

Times are those of this process on the processor, all its threads together: what else runs here does not count.

Both fixtures print their figures at the end of the run. Run with `./run-tests --benchmarks`.
"""

from __future__ import annotations

import gc
from collections.abc import Callable
from statistics import median
from time import process_time
from typing import Protocol

import pytest

Work = Callable[[], object]
FIGURES = pytest.StashKey[list[str]]()


class Ratio(Protocol):
    """`ratio(work, baseline, bound=1.3)`: fail when work takes more than `bound` times as long; returns the ratio."""

    def __call__(self, work: Work, baseline: Work, *, bound: float, rounds: int = 15) -> float: ...


class Within(Protocol):
    """`within(work, bound_ms=16)`: fail when the median run takes longer; `before` runs untimed ahead of each run."""

    def __call__(self, work: Work, *, bound_ms: float, rounds: int = 15, before: Work | None = None) -> float: ...


def milliseconds(work: Work) -> float:
    """Time one call with the garbage collector held back, so that one call's rubbish is not charged to another."""
    gc.collect()
    gc.disable()
    try:
        began = process_time()
        work()
        return (process_time() - began) * 1000
    finally:
        gc.enable()


@pytest.fixture
def figures(request: pytest.FixtureRequest) -> Callable[[str], None]:
    """Keep a line for the summary at the end of the run."""
    lines = request.config.stash.setdefault(FIGURES, [])
    return lambda line: lines.append(f"{request.node.name}: {line}")


@pytest.fixture
def ratio(figures: Callable[[str], None]) -> Ratio:
    """Two callables timed in turn, so that a busy machine slows both; one untimed call of each comes first."""

    def measure(work: Work, baseline: Work, *, bound: float, rounds: int = 15) -> float:
        work()
        baseline()
        pairs = [(milliseconds(work), milliseconds(baseline)) for _ in range(rounds)]
        found = median(mine / theirs for mine, theirs in pairs)
        mine, theirs = (median(times) for times in zip(*pairs, strict=True))
        figures(f"{mine:.2f} ms against {theirs:.2f} ms, ratio {found:.2f}, bound {bound:.2f}")
        assert found <= bound
        return found

    return measure


@pytest.fixture
def within(figures: Callable[[str], None]) -> Within:
    """One callable against a limit; the first call counts too when `before` empties the caches it would fill."""

    def measure(work: Work, *, bound_ms: float, rounds: int = 15, before: Work | None = None) -> float:
        times = []
        for _ in range(rounds):
            if before is not None:
                before()
            times.append(milliseconds(work))
        found = median(times)
        figures(f"median {found:.2f} ms, slowest {max(times):.2f} ms, bound {bound_ms:g} ms")
        assert found <= bound_ms
        return found

    return measure


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter, config: pytest.Config) -> None:
    for line in config.stash.get(FIGURES, []):
        terminalreporter.write_line(line)
