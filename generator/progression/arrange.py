"""Puts activity, order, bands and weeks together: each programme's exercises in their computed places."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Set
from dataclasses import replace
from types import MappingProxyType
from typing import Any

from generator.catalogue.arranged import Estimate, Order, Placed, Reason, ReasonKind
from generator.catalogue.exercise import Exercise
from generator.catalogue.programme import Phase, Programme, Use
from generator.catalogue.terms import Role
from generator.catalogue.values import Catalogue
from generator.progression.activity import estimate
from generator.progression.bands import position
from generator.progression.order import levels, linear_extension
from generator.progression.weeks import entry_week, windows

BY_ACTIVITY = frozenset({Role.WAKING, Role.STRENGTH})
# Warm-up first; free balance work before the stance leg is tired (common practice, no source).
_ROLES = (Role.CIRCULATION, Role.MOVEMENT, Role.WALKING, Role.BALANCE)

Key = tuple[int, int, int, float, str]


def arrange(catalogue: Catalogue) -> Mapping[str, Order]:
    """Return every programme's order by its id; uses of exercises that could not be read are left out."""
    return MappingProxyType(
        {id_: _arrange_programme(catalogue, programme) for id_, programme in catalogue.programmes.items()}
    )


def most_active(catalogue: Catalogue, programme: Programme, exercise: Exercise) -> Estimate | None:
    """Return the estimate of the programme's most active muscle in the exercise."""
    found = (estimate(exercise.activity, muscle, catalogue.studies) for muscle in programme.muscles)
    return max((item for item in found if item), key=lambda item: item.mean, default=None)


def _arrange_programme(catalogue: Catalogue, programme: Programme) -> Order:
    places: list[Placed] = []
    seen: dict[str, int] = {}
    for phase in programme.phases:
        for placed in _arrange_phase(catalogue, programme, phase, frozenset(seen)):
            overall = seen.setdefault(placed.exercise, len(seen) + 1)
            places.append(replace(placed, overall=overall))
    return Order(programme.id, windows(programme), tuple(places))


def order_of_phase(
    catalogue: Catalogue, exercises: Iterable[str], earlier: Set[str], key: Callable[[str], Any]
) -> list[str]:
    """Return the exercises of a phase in the smallest order by `key` that their prerequisites allow.

    earlier: exercises of the phases before, which no longer have to be waited for; one of several
    prerequisites is enough. Raises ValueError with the cycle where exercises wait for each other.
    """
    items = list(exercises)
    read = {id_: catalogue.exercises[id_] for id_ in items}
    return linear_extension(
        items,
        needs={id_: exercise.requires for id_, exercise in read.items()},
        key=key,
        one_of={
            id_: exercise.requires_one_of
            for id_, exercise in read.items()
            if not earlier & set(exercise.requires_one_of)
        },
    )


def _arrange_phase(
    catalogue: Catalogue, programme: Programme, phase: Phase, earlier: Set[str]
) -> list[Placed]:
    uses = {use.use: use for use in phase.uses if use.use in catalogue.exercises}
    found = {id_: most_active(catalogue, programme, catalogue.exercises[id_]) for id_ in uses}
    keys = {id_: _key(phase, uses[id_], catalogue.exercises[id_], found[id_]) for id_ in uses}
    order = order_of_phase(catalogue, uses, earlier, keys.__getitem__)
    means = [_ordering_mean(catalogue.exercises[id_], found[id_]) for id_ in order]
    return [
        _place(catalogue, phase, order, index, found, keys, level)
        for index, level in enumerate(levels(means, programme.level_span))
    ]


def _ordering_mean(exercise: Exercise, found: Estimate | None) -> float | None:
    return found.mean if found and exercise.role in BY_ACTIVITY else None


def _key(phase: Phase, use: Use, exercise: Exercise, found: Estimate | None) -> Key:
    """Return what orders a use: entry, role, then activity where it orders, else demand; id at the last."""
    group = len(_ROLES) if exercise.role in BY_ACTIVITY else _ROLES.index(exercise.role)
    mean = _ordering_mean(exercise, found)
    demand = exercise.demand.rank if mean is None else 0
    return (entry_week(phase, use), group, demand, -1.0 if mean is None else mean, exercise.id)


def _place(
    catalogue: Catalogue,
    phase: Phase,
    order: list[str],
    index: int,
    found: Mapping[str, Estimate | None],
    keys: Mapping[str, Key],
    level: int | None,
) -> Placed:
    id_ = order[index]
    exercise = catalogue.exercises[id_]
    mean = _ordering_mean(exercise, found[id_])
    band_position, above_by = position(mean, phase.band)
    return Placed(
        exercise=id_,
        phase=phase.number,
        place=index + 1,
        overall=0,
        level=level,
        estimate=found[id_],
        band_position=band_position,
        above_by=above_by,
        reasons=_reasons(exercise, keys, order[:index], mean, phase),
    )


def _reasons(
    exercise: Exercise, keys: Mapping[str, Key], before: list[str], mean: float | None, phase: Phase
) -> tuple[Reason, ...]:
    """Say why the exercise stands where it stands, the strongest reason first."""
    reasons: list[Reason] = []
    key = keys[exercise.id]
    if key[0] > phase.week:
        reasons.append(Reason(ReasonKind.ENTRY, number=float(key[0])))
    needed = {*exercise.requires, *exercise.requires_one_of}
    reasons += [Reason(ReasonKind.PREREQUISITE, other) for other in before if other in needed]
    if mean is not None:
        reasons.append(Reason(ReasonKind.ACTIVITY, number=mean))
    elif exercise.role in BY_ACTIVITY:
        reasons += [Reason(ReasonKind.NOT_MEASURED), Reason(ReasonKind.DEMAND)]
    else:
        reasons += [Reason(ReasonKind.ROLE), Reason(ReasonKind.DEMAND)]
    return tuple(reasons)
