"""Says why an exercise stands where it stands, the strongest reason first."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from generator.catalogue.arranged import Comparison, Reason, ReasonKind
from generator.catalogue.estimates import Estimate
from generator.catalogue.programme import Phase
from generator.progression.bands import Leave
from generator.progression.worked import BY_ACTIVITY, Worked


@dataclass(frozen=True)
class Standing:
    """What surrounds a place.

    entry: week from which the use is allowed. index: how many places come before it in its phase. places: the
    same for every exercise of the phase, by id. previous: the use in the place before. level_from: first
    exercise of its level.
    """

    phase: Phase
    entry: int
    index: int
    places: Mapping[str, int]
    previous: Worked | None
    comparison: Comparison | None
    level_from: str
    leave: Leave


def reasons(item: Worked, standing: Standing) -> tuple[Reason, ...]:
    """Return the reasons for a place: entry, prerequisites, activity or demand, neighbours, band."""
    found = item.ordering
    return (
        *_waiting(item, standing),
        *(_by_activity(item, found, standing) if found else _without_number(item)),
        *(_neighbour(standing.comparison) if standing.comparison else ()),
        *(_band(item, found, standing) if found else ()),
    )


def _waiting(item: Worked, standing: Standing) -> Iterator[Reason]:
    if standing.entry > standing.phase.week:
        yield Reason(ReasonKind.ENTRY, number=float(standing.entry))
    places = standing.places
    needed = {*item.exercise.requires, *item.exercise.requires_one_of} & places.keys()
    for other in sorted(needed, key=places.__getitem__):
        if places[other] < standing.index:
            yield Reason(ReasonKind.PREREQUISITE, other)


def _without_number(item: Worked) -> Iterator[Reason]:
    by_activity = item.exercise.role in BY_ACTIVITY
    yield Reason(ReasonKind.NOT_MEASURED if by_activity else ReasonKind.ROLE)
    yield Reason(ReasonKind.DEMAND)


def _by_activity(item: Worked, found: Estimate, standing: Standing) -> Iterator[Reason]:
    if found.judgement is None:
        yield Reason(ReasonKind.ACTIVITY, number=found.mean, muscle=found.muscle)
    else:
        # What a judgement comes to orders, but is no percentage to be shown as a measured one.
        yield from (
            Reason(ReasonKind.JUDGED, other, muscle=found.muscle)
            for other in found.judgement.others or (None,)
        )
    if standing.level_from != item.exercise.id:
        yield Reason(ReasonKind.ABOUT_AS_HARD, standing.level_from)
    previous = standing.previous
    if previous is None or previous.ordering is None or previous.ordering.mean != found.mean:
        return
    second = item.estimates[1] if len(item.estimates) > 1 else None
    yield Reason(
        ReasonKind.TIE,
        previous.exercise.id,
        number=second.mean if second else None,
        muscle=second.muscle if second else None,
    )


def _neighbour(comparison: Comparison) -> Iterator[Reason]:
    """People who did both outrank the pooled chance, which is then not given at all."""
    if comparison.studies:
        harder, both = float(len(comparison.harder)), len(comparison.studies)
        yield Reason(ReasonKind.SAME_PEOPLE, comparison.before, harder, both, comparison.muscle)
    elif comparison.chance is not None and comparison.by_activity:
        yield Reason(ReasonKind.CHANCE, comparison.before, comparison.chance, muscle=comparison.muscle)
    if comparison.people is not None:
        people = float(comparison.people)
        yield Reason(ReasonKind.NEXT_STUDY, comparison.before, people, muscle=comparison.muscle)


def _band(item: Worked, found: Estimate, standing: Standing) -> Iterator[Reason]:
    band = standing.phase.band
    if standing.leave is Leave.LATE:
        yield Reason(ReasonKind.LATE, number=found.mean - band.up_to)
    elif standing.leave is Leave.ACCEPTED and item.use.accepts is not None:
        yield Reason(ReasonKind.ACCEPTED, number=item.use.accepts.up_to)
    elif found.mean <= band.up_to and found.high is not None and found.high > band.up_to:
        yield Reason(ReasonKind.UPPER_LIMIT, number=found.high)
