"""Decides which measurements may be pooled with which, and which of the pools stands for the exercise.

Alike is: the whole muscle, percent of MVIC, the same condition of load, the same part of the repetition, the
same kind of electrode. An unknown part counts as mean. A value over a hold is an average over time as well
and counts as mean; both are marked. Spreads that a study does not print are made after the Cochrane Handbook
for Systematic Reviews of Interventions, section 6.5.2 (SD from an interquartile range: its width / 1.35; a
missing SD borrowed from other measurements; recalled from memory).
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from statistics import median
from typing import NamedTuple

from generator.catalogue.base import SourceStatus
from generator.catalogue.clinic import Study
from generator.catalogue.estimates import Aside, Caveat, CaveatKind, Condition, SetAside
from generator.catalogue.exercise import Measurement
from generator.catalogue.terms import Electrode, Normalisation, Part, Statistic
from generator.progression.pooling import Effect

IQR_IN_SDS = 1.35
_MARKED = {Part.UNKNOWN: CaveatKind.PART_UNKNOWN, Part.HOLD: CaveatKind.HOLD}


class Value(NamedTuple):
    """A measurement that can be pooled; recalled: whether any of its numbers was not read in the source."""

    item: Measurement
    effect: Effect
    people: int
    condition: Condition
    caveats: tuple[Caveat, ...]
    recalled: bool


def spread_of(items: Iterable[tuple[Measurement, Study]]) -> float | None:
    """Return the median coefficient of variation (SD / mean) of measurements of one muscle, or None."""
    found = [
        sd / item.mean
        for item, study in items
        if (sd := _own_sd(item)) is not None
        and sd > 0
        and item.mean > 0
        and _normalisation(item, study) is Normalisation.MVIC
    ]
    return median(found) if found else None


def value_of(item: Measurement, study: Study, spread: float | None) -> Value | Aside:
    """Return the measurement as it enters a pool, or why it can enter none.

    spread: coefficient of variation of the muscle, from which a missing SD is made; None where not known.
    """
    people = item.n or study.n
    sd, how = _sd(item, spread)
    if _normalisation(item, study) is not Normalisation.MVIC:
        return Aside.REFERENCE
    if item.statistic is Statistic.MEDIAN and item.iqr is None:
        return Aside.MEDIAN
    if people is None:
        return Aside.NO_PEOPLE
    if people < 2:
        return Aside.ONE_PERSON
    if sd is None:
        return Aside.NO_SD
    if sd <= 0:
        return Aside.NO_SPREAD
    part = item.part or study.part
    kinds = [kind for kind in (_MARKED.get(part), how) if kind is not None]
    if item.statistic is Statistic.MEDIAN:
        kinds.append(CaveatKind.FROM_MEDIAN)
    electrode = item.electrode or study.electrode
    condition = Condition(item.load, electrode, counted_part(item, study), item.added_load)
    caveats = tuple(Caveat(kind, item.study) for kind in kinds)
    return Value(item, Effect(item.mean, sd**2 / people), people, condition, caveats, _recalled(item, study))


def counted_part(item: Measurement, study: Study) -> Part:
    """Return the part of the repetition that a value counts as: its mean or its peak."""
    return Part.PEAK if (item.part or study.part) is Part.PEAK else Part.MEAN


def _normalisation(item: Measurement, study: Study) -> Normalisation:
    return item.normalisation or study.normalisation


def _own_sd(item: Measurement) -> float | None:
    if item.iqr is not None:
        return item.iqr / IQR_IN_SDS
    return item.sd if item.statistic is Statistic.MEAN else None


def _sd(item: Measurement, spread: float | None) -> tuple[float | None, CaveatKind | None]:
    """Return the SD and how it was come by: printed, from the interquartile range, or borrowed."""
    if item.statistic is Statistic.MEAN and item.sd is not None:
        return item.sd, None
    if item.iqr is not None:
        return item.iqr / IQR_IN_SDS, CaveatKind.SD_FROM_IQR
    return (None if spread is None else spread * item.mean), CaveatKind.SD_IMPUTED


def _recalled(item: Measurement, study: Study) -> bool:
    """Return whether any number that enters the pool was not read in its source."""
    read = item.read
    if "mean" not in read or (item.sd is not None and "sd" not in read):
        return True
    return "n" not in read if item.n is not None else study.status.status is SourceStatus.RECALLED


def chosen(values: Iterable[Value]) -> tuple[tuple[Value, ...], tuple[SetAside, ...]]:
    """Return the pool that stands for the exercise, in the order of studies, and what is set aside for it.

    Among the groups of alike values one is taken: without added load before with, surface electrodes before
    fine wire (most studies and the published bands use them), means before peaks, then most people, then most
    studies, then the load's words. A study enters once, with its highest value: its people are the same.
    """
    groups: dict[Condition, list[Value]] = {}
    for value in sorted(values, key=lambda one: (one.item.study, -one.item.mean, one.item.at_place)):
        groups.setdefault(value.condition, []).append(value)
    if not groups:
        return (), ()
    main = min(groups, key=lambda one: _rank(one, groups[one])) if len(groups) > 1 else next(iter(groups))
    pooled = {value.item.study: value for value in reversed(groups[main])}
    taken = tuple(value for value in groups[main] if pooled[value.item.study] is value)
    aside = [
        set_aside(value.item, *_differences(main, condition))
        for condition, group in groups.items()
        for value in group
        if condition is not main or pooled[value.item.study] is not value
    ]
    return taken, tuple(aside)


def _rank(condition: Condition, group: list[Value]) -> tuple[bool, bool, bool, int, int, str]:
    people = {value.item.study: value.people for value in group}
    return (
        condition.added is not None,
        condition.electrode is not Electrode.SURFACE,
        condition.part is not Part.MEAN,
        -sum(people.values()),
        -len(people),
        condition.load,
    )


def _differences(main: Condition, other: Condition) -> tuple[Aside, ...]:
    found = []
    if (main.load, main.added) != (other.load, other.added):
        found.append(Aside.OTHER_LOAD)
    if main.electrode is not other.electrode:
        found.append(Aside.OTHER_ELECTRODE)
    if main.part is not other.part:
        found.append(Aside.OTHER_PART)
    return tuple(found) or (Aside.SAME_PEOPLE,)


def set_aside(item: Measurement, *kinds: Aside) -> SetAside:
    """Return the measurement as set aside for these reasons."""
    return SetAside(item.study, item.mean, kinds, item.muscle)


def by_whole_muscle(
    items: Iterable[Measurement], whole: Mapping[str, str]
) -> Mapping[str, tuple[Measurement, ...]]:
    """Return the measurements by the whole muscle that each belongs to; `whole` names that of a segment."""
    found: dict[str, list[Measurement]] = {}
    for item in items:
        found.setdefault(whole.get(item.muscle, item.muscle), []).append(item)
    return {muscle: tuple(measured) for muscle, measured in found.items()}
