"""Compares an exercise with its neighbour: first by people who did both, only then by pooled numbers.

Two pools differ in people, electrodes and laboratories; a study that measured both exercises in the same
people differs in none of these. Where there is one, it outranks the chance worked out from the pools.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence, Set
from dataclasses import dataclass
from math import ceil, sqrt
from statistics import NormalDist

from generator.catalogue.clinic import Study
from generator.catalogue.estimates import Comparison, Estimate
from generator.catalogue.exercise import Measurement
from generator.catalogue.terms import Normalisation, Part, Statistic
from generator.progression.alike import counted_part

# Usual choices of a clinical study: 5 % two-sided, 80 % power (Altman 1991, recalled from memory).
POWER = 0.8
_SETTLED = 0.975
_MOST_PEOPLE = 500
_NORMAL = NormalDist()

Way = tuple[str, Statistic, Part, Normalisation]


@dataclass(frozen=True)
class Side:
    """One exercise of a comparison: its id, what was measured of it, its estimate for the muscle."""

    exercise: str
    measured: Sequence[Measurement]
    estimate: Estimate


def same_people(
    first: Iterable[Measurement],
    second: Iterable[Measurement],
    muscles: Set[str],
    studies: Mapping[str, Study],
) -> dict[str, float]:
    """Return, by study that measured both, by how many points the second is harder, on average.

    Only numbers got in the same way count: muscle or segment, mean or median, mean or peak of the repetition
    (told apart as for pooling), contraction of reference.
    Medians, segments and percentages of another reference may not be pooled, but compare well within a study.
    """
    before = _by_way(first, muscles, studies)
    after = _by_way(second, muscles, studies)
    found = {}
    for study in sorted(before.keys() & after.keys()):
        shared = before[study].keys() & after[study].keys()
        if shared:
            points = [after[study][way] - before[study][way] for way in sorted(shared, key=str)]
            found[study] = sum(points) / len(points)
    return found


def _by_way(
    items: Iterable[Measurement], muscles: Set[str], studies: Mapping[str, Study]
) -> dict[str, dict[Way, float]]:
    found: dict[str, dict[Way, float]] = {}
    for item in items:
        study = studies.get(item.study)
        if study is not None and item.muscle in muscles:
            normalisation = item.normalisation or study.normalisation
            way = (item.muscle, item.statistic, counted_part(item, study), normalisation)
            ways = found.setdefault(item.study, {})
            ways[way] = max(item.mean, ways.get(way, item.mean))
    return found


def compared(
    first: Side,
    second: Side,
    muscles: Set[str],
    studies: Mapping[str, Study],
    spread: float | None,
    by_activity: bool = True,
) -> Comparison:
    """Return how the second exercise compares with the first, which stands before it.

    muscles: the second estimate's muscle and its segments. spread: the muscle's coefficient of variation.
    """
    points = same_people(first.measured, second.measured, muscles, studies)
    harder = tuple(study for study, difference in points.items() if difference > 0)
    easier = tuple(study for study, difference in points.items() if difference < 0)
    chance = chance_harder(first.estimate, second.estimate)
    settled = len(points) > 1 and max(len(harder), len(easier)) > len(points) / 2
    if not points and chance is not None:
        settled = not 1 - _SETTLED < chance < _SETTLED
    open_ = by_activity and not settled and chance is not None
    people = people_needed(first.estimate, second.estimate, spread) if open_ else None
    return Comparison(
        before=first.exercise,
        muscle=second.estimate.muscle,
        studies=tuple(points),
        harder=harder,
        easier=easier,
        chance=chance,
        people=people,
        by_activity=by_activity,
    )


def chance_harder(first: Estimate, second: Estimate) -> float | None:
    """Return the probability that the second works its muscle harder, or None where one is no measurement.

    Both means are taken as normal, with the doubt between studies in each (0.5: the toss of a coin).
    """
    if first.se is None or second.se is None:
        return None
    between = (first.borrowed or 0.0) + (second.borrowed or 0.0)
    doubt = sqrt(first.se**2 + second.se**2 + between)
    return _NORMAL.cdf((second.mean - first.mean) / doubt)


def people_needed(first: Estimate, second: Estimate, spread: float | None) -> int | None:
    """Return how many people a study of both exercises must have to tell them apart, or None.

    n = (z(0.975) + z(power))² · (SD₁² + SD₂²) / difference², with SDs from the muscle's coefficient of
    variation and no correlation between the two exercises, which asks for more people rather than fewer.
    """
    difference = second.mean - first.mean
    if spread is None or difference == 0:
        return None
    z = _NORMAL.inv_cdf(0.975) + _NORMAL.inv_cdf(POWER)
    variance = spread**2 * (first.mean**2 + second.mean**2)
    needed = ceil(z**2 * variance / difference**2)
    return max(needed, 2) if needed <= _MOST_PEOPLE else None
