"""Works out what to do instead when it got worse: one step back, within what the phase allows."""

from __future__ import annotations

from collections.abc import Mapping, Set

from generator.catalogue.arranged import StepBack
from generator.catalogue.dose import DoseStep
from generator.catalogue.exercise import Exercise
from generator.catalogue.programme import Phase, Programme, Use
from generator.catalogue.restricted import in_force_at_entry, is_forbidden, work_of
from generator.catalogue.terms import Change
from generator.catalogue.values import Catalogue


def step_back(
    catalogue: Catalogue, programme: Programme, phase: Phase, use: Use, step: int, withheld: Set[str]
) -> StepBack:
    """Return what takes the place of dose step `step` (from 0) of a use after it got worse.

    withheld: the variations that the phase forbids, as ``exercise/variation``. Paused is what must be
    mastered after this exercise, and the exercise itself where nothing easier is left. Raises IndexError for
    a step that the use does not have, KeyError for an exercise that could not be read.
    """
    if not 0 <= step < len(use.dose_steps):
        raise IndexError(step)
    exercise = catalogue.exercises[use.use]
    previous = _previous(programme, phase, use, step, exercise)
    easier = _easier(programme, phase, use, exercise, withheld)
    builds_on = _builds_on(catalogue, phase, use.use)
    itself = () if previous or easier else (use.use,)
    return StepBack(use.use, step, previous, easier, (*itself, *builds_on))


def steps_back(
    catalogue: Catalogue, programme: Programme, phase: Phase, withheld: Set[str]
) -> Mapping[tuple[str, int], StepBack]:
    """Return the step back for every exercise and dose step (from 0) of a phase."""
    return {
        (use.use, step): step_back(catalogue, programme, phase, use, step, withheld)
        for use in phase.uses
        if use.use in catalogue.exercises
        for step in range(len(use.dose_steps))
    }


def _previous(programme: Programme, phase: Phase, use: Use, step: int, exercise: Exercise) -> DoseStep | None:
    """Return the nearest earlier step whose load the restrictions allow on the day of entry."""
    rules = in_force_at_entry(programme, phase, use)
    variation = exercise.variations.get(use.variation or "")
    for earlier in reversed(use.dose_steps[:step]):
        work = work_of(exercise, variation, (earlier.load,))
        # A use that waits for a release was allowed by a person; going back in it needs no second release.
        binding = tuple(rule for rule in rules if use.when is None or rule.until.release is None)
        if not is_forbidden(work, binding, both_sides=programme.both_sides):
            return earlier
    return None


def _easier(
    programme: Programme, phase: Phase, use: Use, exercise: Exercise, withheld: Set[str]
) -> tuple[str, ...]:
    chosen = exercise.variations.get(use.variation or "")
    if chosen is not None and chosen.is_ is Change.EASIER:
        # Which of two easier forms is the easier one, the content does not say.
        return ()
    found = []
    if chosen is not None:
        rules = in_force_at_entry(programme, phase, use)
        work = work_of(exercise)
        if work.demand.rank <= phase.demand.rank and not is_forbidden(
            work, rules, both_sides=programme.both_sides
        ):
            found.append(exercise.id)
    found += [
        f"{exercise.id}/{variation.id}"
        for variation in exercise.variations.values()
        if variation.is_ is Change.EASIER and f"{exercise.id}/{variation.id}" not in withheld
    ]
    return tuple(found)


def _builds_on(catalogue: Catalogue, phase: Phase, exercise: str) -> tuple[str, ...]:
    """Return the exercises of the phase that need this one first, directly or through others of the phase."""
    paused = {exercise}
    waiting = [use.use for use in phase.uses if use.use in catalogue.exercises]
    grown = True
    while grown:
        grown = False
        for id_ in waiting:
            other = catalogue.exercises[id_]
            choice = set(other.requires_one_of)
            if id_ not in paused and (paused & set(other.requires) or (choice and choice <= paused)):
                paused.add(id_)
                grown = True
    return tuple(id_ for id_ in waiting if id_ in paused and id_ != exercise)
