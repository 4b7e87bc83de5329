"""Puts activity, order, bands and weeks together: each programme's exercises in their computed places."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence, Set
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any

from generator.catalogue.arranged import Comparison, Order, Placed
from generator.catalogue.programme import Phase, Programme
from generator.catalogue.terms import Demand, Role
from generator.catalogue.values import Catalogue
from generator.progression.activity import Activity, activity_of
from generator.progression.bands import Leave, leave, position
from generator.progression.compare import Side, compared
from generator.progression.order import levels, linear_extension
from generator.progression.reasons import Standing, reasons
from generator.progression.variations import segments
from generator.progression.weeks import entry_week, windows
from generator.progression.withheld import withheld_by
from generator.progression.worked import BY_ACTIVITY, Worked, worked

# Warm-up first; free balance work before the stance leg is tired (common practice, no source).
_ROLES = (Role.CIRCULATION, Role.MOVEMENT, Role.WALKING, Role.BALANCE)
_NOT_KNOWN = float("inf")
_RANKS = {demand: demand.rank for demand in Demand}

# Entry week, role, whether activity is unknown, demand, most active muscle, second muscle, id.
Key = tuple[int, int, bool, int, float, float, str]
_GROUP = 3


def arrange(catalogue: Catalogue, without: Set[str] = frozenset()) -> Mapping[str, Order]:
    """Return every programme's order by its id; uses of exercises that could not be read are left out.

    without: studies (ids) that are left out as if never published, to see what hangs on them.
    """
    activity = activity_of(catalogue, without)
    return MappingProxyType(
        {
            id_: arrange_programme(catalogue, activity, programme)
            for id_, programme in catalogue.programmes.items()
        }
    )


def arrange_programme(catalogue: Catalogue, activity: Activity, programme: Programme) -> Order:
    """Return the order of one programme from what is known of every form."""
    places: list[Placed] = []
    seen: dict[str, int] = {}
    for phase in programme.phases:
        places += _Arranging(catalogue, activity, programme, phase).places(seen)
    withheld = withheld_by(catalogue, activity, programme)
    return Order(programme.id, windows(programme), tuple(places), withheld)


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


def key_of(phase: Phase, item: Worked) -> Key:
    """Return what orders a use: entry, role, then activity where it orders, else demand; id at the last.

    What orders by activity and has no number stands after what has one, by demand: it is never taken as 0.
    Equal numbers are told apart by the second most active muscle; where that is not known, it stands later.
    """
    exercise, found = item.exercise, item.ordering
    group = len(_ROLES) if exercise.role in BY_ACTIVITY else _ROLES.index(exercise.role)
    second = item.estimates[1].mean if len(item.estimates) > 1 else _NOT_KNOWN
    return (
        entry_week(phase, item.use),
        group,
        exercise.role in BY_ACTIVITY and found is None,
        _RANKS[exercise.demand] if found is None else 0,
        found.mean if found else 0.0,
        second if found else 0.0,
        exercise.id,
    )


@dataclass(frozen=True)
class _Arranging:
    """One phase while its places are worked out."""

    catalogue: Catalogue
    activity: Activity
    programme: Programme
    phase: Phase

    def places(self, seen: dict[str, int]) -> list[Placed]:
        """Return the places of the phase; `seen` numbers the exercises so far and takes the phase's."""
        earlier = frozenset(seen)
        exercises = self.catalogue.exercises
        uses = {use.use: use for use in self.phase.uses if use.use in exercises}
        items = {id_: worked(self.activity, self.programme, exercises[id_], use) for id_, use in uses.items()}
        keys = {id_: key_of(self.phase, item) for id_, item in items.items()}
        ids = order_of_phase(self.catalogue, uses, earlier, keys.__getitem__)
        ordered = [items[id_] for id_ in ids]
        means = [item.ordering.mean if item.ordering else None for item in ordered]
        grades = levels(means, self.programme.level_span)
        firsts = dict(zip(reversed(grades), reversed(ids), strict=True))
        spots = {id_: index for index, id_ in enumerate(ids)}
        return [
            self._place(
                item,
                seen.setdefault(item.exercise.id, len(seen) + 1),
                grade,
                Standing(
                    phase=self.phase,
                    entry=keys[item.exercise.id][0],
                    index=index,
                    places=spots,
                    previous=ordered[index - 1] if index else None,
                    comparison=self._comparison(ordered, keys, index),
                    level_from=firsts[grade],
                    leave=self._leave(item),
                ),
            )
            for index, (item, grade) in enumerate(zip(ordered, grades, strict=True))
        ]

    def _leave(self, item: Worked) -> Leave:
        mean = item.ordering.mean if item.ordering else None
        return leave(mean, self.phase.band, self.programme.margin, item.use.accepts)

    def _place(self, item: Worked, overall: int, grade: int | None, standing: Standing) -> Placed:
        found = item.ordering
        where, above_by = position(found.mean if found else None, self.phase.band)
        return Placed(
            exercise=item.exercise.id,
            phase=self.phase.number,
            place=standing.index + 1,
            overall=overall,
            level=grade,
            estimate=item.estimates[0] if item.estimates else None,
            band_position=where,
            above_by=above_by,
            reasons=reasons(item, standing),
            late=standing.leave is Leave.LATE,
            others=item.estimates[1:],
            not_measured=item.not_measured,
            set_aside=item.set_aside,
            comparison=standing.comparison,
            accepted=item.use.accepts if standing.leave is Leave.ACCEPTED else None,
        )

    def _comparison(
        self, ordered: Sequence[Worked], keys: Mapping[str, Key], index: int
    ) -> Comparison | None:
        if not index:
            return None
        first, second = ordered[index - 1], ordered[index]
        if first.ordering is None or second.ordering is None:
            return None
        muscle = second.ordering.muscle
        before = next((one for one in first.estimates if one.muscle == muscle), None)
        if before is None:
            return None
        waits = first.exercise.id in (*second.exercise.requires, *second.exercise.requires_one_of)
        grouped = keys[first.exercise.id][:_GROUP] == keys[second.exercise.id][:_GROUP]
        return compared(
            Side(first.exercise.id, first.measured, before),
            Side(second.exercise.id, second.measured, second.ordering),
            segments(self.catalogue, muscle),
            self.catalogue.studies,
            self.activity.spread.get(muscle),
            by_activity=grouped and not waits,
        )
