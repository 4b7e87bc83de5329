"""Gives one number for the activity of a muscle in an exercise, with what it rests on.

The number is the mean over studies weighted by people. Only whole-muscle means in %MVIC are taken; the
rest is set aside with its reason.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from generator.catalogue.arranged import Basis, Estimate, SetAside
from generator.catalogue.clinic import Study
from generator.catalogue.exercise import Measurement
from generator.catalogue.terms import Normalisation, Statistic


def estimate(
    measurements: Iterable[Measurement], muscle: str, studies: Mapping[str, Study]
) -> Estimate | None:
    """Return the estimate for `muscle` in %MVIC, or None where nothing can be taken: it is never 0."""
    taken: list[tuple[Measurement, int]] = []
    aside: list[SetAside] = []
    for item in measurements:
        if item.muscle != muscle:
            continue
        study = studies.get(item.study)
        people = item.n or (study.n if study else None)
        reason = _why_aside(item, study, people)
        if reason or people is None:
            aside.append(SetAside(item.study, item.mean, reason))
        else:
            taken.append((item, people))
    if not taken:
        return None
    people = sum(count for _, count in taken)
    recalled = any("mean" not in item.read for item, _ in taken)
    return Estimate(
        muscle=muscle,
        mean=sum(item.mean * count for item, count in taken) / people,
        k=len(taken),
        n=people,
        basis=Basis.PARTLY_RECALLED if recalled else Basis.MEASURED,
        studies=tuple(sorted(item.study for item, _ in taken)),
        set_aside=tuple(aside),
    )


def _why_aside(item: Measurement, study: Study | None, people: int | None) -> str:
    """Return why a measurement cannot be taken, or an empty text."""
    if study is None:
        return "the study could not be read"
    if (item.normalisation or study.normalisation) is not Normalisation.MVIC:
        return "percent of a reference contraction, not of MVIC"
    if item.statistic is Statistic.MEDIAN:
        return "a median, not a mean"
    if people is None:
        return "the number of people is not known"
    return ""
