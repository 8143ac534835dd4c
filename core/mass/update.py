"""Linear update of a prediction by scale readings, keeping every error apart.

The prediction's inputs are independent errors in units of their own standard uncertainty. A reading moves them by the
gain of least variance (the inverse-variance mean, generalised to several inputs). What stays wrong afterwards is a
linear mix of the original errors and the scale's, so the budget after weighing is the GUM's sum of squares again.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

Vector = list[float]


class Belief:
    """Inputs 0..n-1 as offsets from their first values, with what each original error still contributes.

    `left[i][j]` is how much of original error j remains in input i; `noise[k]` how much of reading k's own scatter
    entered each input. A working value inside one computation, never stored.
    """

    def __init__(self, size: int) -> None:
        self.shift: Vector = [0.0] * size
        self.left: list[Vector] = [[1.0 if i == j else 0.0 for j in range(size)] for i in range(size)]
        self.noise: list[Vector] = []

    def of(self, weights: Sequence[float]) -> float:
        """Shift of the weighted sum of inputs."""
        return math.fsum(weight * shift for weight, shift in zip(weights, self.shift, strict=True))

    def parts(self, weights: Sequence[float]) -> tuple[Vector, Vector]:
        """Standard uncertainties of the weighted sum from each original error and from each reading (signed)."""
        # Few inputs bear on one sum: those without weight are left out of every loop.
        bearing = [(at, weight) for at, weight in enumerate(weights) if weight]
        originals = [0.0] * len(self.shift)
        for at, weight in bearing:
            originals = [part + weight * left for part, left in zip(originals, self.left[at], strict=True)]
        readings = [sum([weight * noise[at] for at, weight in bearing]) for noise in self.noise]
        return originals, readings

    def variance(self, weights: Sequence[float]) -> float:
        """Variance of the weighted sum of inputs."""
        originals, readings = self.parts(weights)
        return sum([part * part for part in (*originals, *readings)])

    def observe(self, weights: Sequence[float], gap: float, u: float) -> float:
        """Take in that the weighted sum lies `gap` above its first value, read with scatter `u`.

        Returns how surprising that was: the distance from what was expected, in standard uncertainties.
        """
        originals, readings = self.parts(weights)
        spread = sum(part * part for part in originals) + sum(part * part for part in readings) + u * u
        surprise = gap - self.of(weights)
        gain = [self._with(i, originals, readings) / spread for i in range(len(self.shift))]
        for i, share in enumerate(gain):
            self.shift[i] += share * surprise
            self.left[i] = [own - share * part for own, part in zip(self.left[i], originals, strict=True)]
            for noise, part in zip(self.noise, readings, strict=True):
                noise[i] -= share * part
        self.noise.append([-share * u for share in gain])
        return abs(surprise) / math.sqrt(spread)

    def _with(self, i: int, originals: Vector, readings: Vector) -> float:
        """Covariance of input `i` with the weighted sum these parts describe."""
        own = sum(left * part for left, part in zip(self.left[i], originals, strict=True))
        return own + sum(noise[i] * part for noise, part in zip(self.noise, readings, strict=True))
