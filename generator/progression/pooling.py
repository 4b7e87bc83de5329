"""Pools the results of several studies into one number with an honest interval.

Random effects after DerSimonian and Laird (1986, Controlled Clinical Trials 7:177-188); the interval for
three or more studies after Hartung and Knapp (2001, Statistics in Medicine 20:3875-3889); the prediction
interval after Higgins, Thompson and Spiegelhalter (2009, J R Stat Soc A 172:137-159).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt
from statistics import NormalDist

from scipy.special import stdtrit

CONFIDENCE = 0.95
_Z = NormalDist().inv_cdf(0.5 + CONFIDENCE / 2)


@dataclass(frozen=True)
class Effect:
    """One study's mean and the variance of that mean (SD² / n), in the unit and its square."""

    mean: float
    variance: float


@dataclass(frozen=True)
class Pool:
    """What several studies say together.

    mean, se: random-effects mean and its standard error, from the weights 1 / (v + tau²).
    fixed, fixed_se: the same with tau² = 0. q: Cochran's Q, k - 1 degrees of freedom.
    tau_squared: variance between studies, truncated at 0. i_squared: share of Q beyond chance, 0 to 1.
    """

    k: int
    mean: float
    se: float
    fixed: float
    fixed_se: float
    q: float
    tau_squared: float

    @property
    def i_squared(self) -> float:
        """Return I² = (Q - df) / Q, at least 0 (Higgins and Thompson 2002, Stat Med 21:1539-1558)."""
        return max(0.0, (self.q - (self.k - 1)) / self.q) if self.q > 0 else 0.0


def pool(effects: Sequence[Effect]) -> Pool:
    """Return the random-effects pool of one or more effects.

    Raises ValueError without effects, or where a variance is not above 0.
    """
    if not effects:
        raise ValueError("nothing to pool")
    if any(effect.variance <= 0 for effect in effects):
        raise ValueError("a variance must be above 0")
    if len(effects) == 1:
        mean, se = effects[0].mean, sqrt(effects[0].variance)
        return Pool(k=1, mean=mean, se=se, fixed=mean, fixed_se=se, q=0.0, tau_squared=0.0)
    weights = [1 / effect.variance for effect in effects]
    total = sum(weights)
    fixed = _mean(effects, weights)
    q = sum(weight * (effect.mean - fixed) ** 2 for weight, effect in zip(weights, effects, strict=True))
    c = total - sum(weight**2 for weight in weights) / total
    tau_squared = max(0.0, (q - (len(effects) - 1)) / c)
    widened = [1 / (effect.variance + tau_squared) for effect in effects]
    return Pool(
        k=len(effects),
        mean=_mean(effects, widened),
        se=1 / sqrt(sum(widened)),
        fixed=fixed,
        fixed_se=1 / sqrt(total),
        q=q,
        tau_squared=tau_squared,
    )


def hartung_knapp(effects: Sequence[Effect], pooled: Pool) -> tuple[float, float]:
    """Return the 95 % interval of the pooled mean, t-distributed with k - 1 degrees of freedom; k ≥ 2.

    Where the studies agree better than chance the interval would be narrower than the plain one, which
    three studies never justify; then the standard error of the pool is kept (Jackson et al. 2017,
    Stat Med 36:3923-3934, the variance correction that is never below 1).
    """
    weights = [1 / (effect.variance + pooled.tau_squared) for effect in effects]
    spread = sum(
        weight * (effect.mean - pooled.mean) ** 2 for weight, effect in zip(weights, effects, strict=True)
    )
    se = pooled.se * sqrt(max(1.0, spread / (pooled.k - 1)))
    return _interval(pooled.mean, se, _t(pooled.k - 1))


def prediction(pooled: Pool) -> tuple[float, float]:
    """Return the 95 % prediction interval for a further study, t with k - 2 degrees of freedom; k ≥ 3."""
    return _interval(pooled.mean, sqrt(pooled.tau_squared + pooled.se**2), _t(pooled.k - 2))


def widened(pooled: Pool, between: float) -> tuple[float, float]:
    """Return a 95 % interval for one or two studies, with a borrowed variance `between` studies added."""
    return _interval(pooled.mean, sqrt(pooled.se**2 + between), _Z)


def _mean(effects: Sequence[Effect], weights: Sequence[float]) -> float:
    total = sum(weights)
    return sum(weight * effect.mean for weight, effect in zip(weights, effects, strict=True)) / total


def _t(degrees: int) -> float:
    return float(stdtrit(degrees, 0.5 + CONFIDENCE / 2))


def _interval(mean: float, se: float, quantile: float) -> tuple[float, float]:
    return (mean - quantile * se, mean + quantile * se)
