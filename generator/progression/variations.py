"""Says by how many points each variation works each muscle harder or easier than its exercise.

People who did both are asked first; without them two pools are compared only where load aside they are alike.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from generator.catalogue.estimates import Estimate, VariationEffect
from generator.catalogue.exercise import Exercise, Variation
from generator.catalogue.values import Catalogue
from generator.progression.activity import Activity, activity_of, form_id
from generator.progression.compare import same_people


def variation_effects(
    catalogue: Catalogue, activity: Activity | None = None
) -> Mapping[str, tuple[VariationEffect, ...]]:
    """Return, by exercise, what each of its variations does to each whole muscle that is known of either."""
    known = activity or activity_of(catalogue)
    return MappingProxyType(
        {
            id_: tuple(
                effect
                for variation in exercise.variations.values()
                for effect in _effects(catalogue, known, exercise, variation)
            )
            for id_, exercise in catalogue.exercises.items()
        }
    )


def segments(catalogue: Catalogue, muscle: str) -> frozenset[str]:
    """Return a whole muscle's id with those of its segments."""
    return frozenset({muscle, *(one.id for one in catalogue.muscles.values() if one.part_of == muscle)})


def _effects(
    catalogue: Catalogue, known: Activity, exercise: Exercise, variation: Variation
) -> Iterator[VariationEffect]:
    form = form_id(exercise, variation)
    for muscle in sorted(one.id for one in catalogue.muscles.values() if one.part_of is None):
        own, plain = known.of(form, muscle), known.of(exercise.id, muscle)
        if own is None and plain is None:
            continue
        points, within = _points(catalogue, exercise, variation, muscle, own, plain)
        yield VariationEffect(form, muscle, own, points, within)


def _points(
    catalogue: Catalogue,
    exercise: Exercise,
    variation: Variation,
    muscle: str,
    own: Estimate | None,
    plain: Estimate | None,
) -> tuple[float | None, tuple[str, ...]]:
    parts = segments(catalogue, muscle)
    found = same_people(exercise.activity, variation.activity, parts, catalogue.studies)
    if found:
        return sum(found.values()) / len(found), tuple(found)
    if own is None or plain is None or own.condition is None or plain.condition is None:
        return None, ()
    alike = (own.condition.electrode, own.condition.part) == (plain.condition.electrode, plain.condition.part)
    return (own.mean - plain.mean if alike else None), ()
