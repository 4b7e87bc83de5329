"""Finds on which single studies the place of an exercise in its phase hangs."""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.arranged import BandPosition, Hanging, Order, Placed
from generator.catalogue.programme import Programme
from generator.catalogue.values import Catalogue
from generator.progression.activity import activity_of, forms
from generator.progression.arrange import arrange_programme
from generator.progression.bands import Leave, leave


def hanging(catalogue: Catalogue, programme: Programme) -> tuple[Hanging, ...]:
    """Return each use that would stand otherwise to its band without one study, sorted by phase and place.

    Otherwise is: inside instead of above, within the margin instead of beyond it, not known instead of known,
    and so on. Everything is worked out again without the study: borrowed spreads and doubts included.
    """
    full = arrange_programme(catalogue, activity_of(catalogue), programme)
    found = [
        item
        for study in sorted(_studies(catalogue, programme))
        for item in _without(catalogue, programme, full, study)
    ]
    places = {(placed.phase, placed.exercise): placed.place for placed in full.places}
    return tuple(sorted(found, key=lambda one: (one.phase, places[one.phase, one.exercise], one.study)))


def _studies(catalogue: Catalogue, programme: Programme) -> set[str]:
    """Return the studies of the programme's muscles in any exercise: spreads and doubts are borrowed."""
    return {
        item.study
        for _, activity, _ in forms(catalogue)
        for item in activity
        if item.muscle in programme.muscles
    }


def _without(catalogue: Catalogue, programme: Programme, full: Order, study: str) -> Iterator[Hanging]:
    activity = activity_of(catalogue, frozenset({study}))
    others = arrange_programme(catalogue, activity, programme).places
    left = {(placed.phase, placed.exercise): placed for placed in others}
    for placed in full.places:
        other = left[placed.phase, placed.exercise]
        if _standing(programme, placed) != _standing(programme, other):
            mean = other.estimate.mean if other.estimate else None
            yield Hanging(study, placed.exercise, placed.phase, mean, other.above_by)


def _standing(programme: Programme, placed: Placed) -> tuple[BandPosition, Leave]:
    phase = programme.phase(placed.phase)
    use = next(use for use in phase.uses if use.use == placed.exercise)
    unknown = placed.band_position is BandPosition.UNKNOWN
    mean = placed.estimate.mean if placed.estimate and not unknown else None
    return placed.band_position, leave(mean, phase.band, programme.margin, use.accepts)
