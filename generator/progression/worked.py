"""Gathers what a use asks of a programme's muscles: estimates, what nobody measured, what was set aside."""

from __future__ import annotations

from dataclasses import dataclass

from generator.catalogue.arranged import Estimate, SetAside
from generator.catalogue.dose import DoseStep
from generator.catalogue.exercise import Exercise, Measurement, Variation
from generator.catalogue.programme import Programme, Use
from generator.catalogue.terms import OutsideLoad, Role
from generator.progression.activity import Activity, form_id, most_active, with_step

BY_ACTIVITY = frozenset({Role.WAKING, Role.STRENGTH})


@dataclass(frozen=True)
class Worked:
    """An exercise as used in a phase.

    estimates: of the programme's muscles, the most active first. ordering: the one that orders it, or None
    where activity does not order or is not known.
    """

    exercise: Exercise
    use: Use
    estimates: tuple[Estimate, ...]
    ordering: Estimate | None
    not_measured: tuple[str, ...]
    set_aside: tuple[SetAside, ...]

    @property
    def variation(self) -> Variation | None:
        """Return the variation used, or None for the exercise itself."""
        return self.exercise.variations.get(self.use.variation or "")

    @property
    def measured(self) -> tuple[Measurement, ...]:
        """Return what was measured of the form used."""
        return (self.variation or self.exercise).activity


def worked(activity: Activity, programme: Programme, exercise: Exercise, use: Use) -> Worked:
    """Return what a use asks of the programme's muscles, before any load is added.

    An easier form that nobody measured or judged is taken as its exercise: doubt never widens permission.
    """
    variation = exercise.variations.get(use.variation or "")
    found = {
        muscle: activity.in_form(exercise, variation, muscle) or activity.of(exercise.id, muscle)
        for muscle in programme.muscles
    }
    form = form_id(exercise, variation)
    estimates = most_active(found.values())
    return Worked(
        exercise=exercise,
        use=use,
        estimates=estimates,
        ordering=estimates[0] if estimates and exercise.role in BY_ACTIVITY else None,
        not_measured=tuple(muscle for muscle, estimate in found.items() if estimate is None),
        set_aside=tuple(
            aside for muscle in programme.muscles for aside in activity.set_aside.get((form, muscle), ())
        ),
    )


def hardest_step(activity: Activity, use: Worked) -> tuple[Estimate | None, int | None]:
    """Return the highest estimate of a use with the loads of its dose steps, and the step it comes from.

    The step is its position from 0, or None where no added load makes the use harder than it is without.
    """
    best: Estimate | None = use.estimates[0] if use.estimates else None
    which: int | None = None
    muscles = [*(one.muscle for one in use.estimates), *use.not_measured]
    for position, step in enumerate(use.use.dose_steps):
        for load in _loads(step):
            for muscle in muscles:
                loaded = with_step(best, activity.added.get((use.exercise.id, muscle, load)))
                if loaded is not None and (best is None or loaded.mean > best.mean):
                    best, which = loaded, position
    return best, which


def _loads(step: DoseStep) -> tuple[OutsideLoad, ...]:
    band = (OutsideLoad.BAND,) if step.load.band is not None else ()
    return (*band, *((OutsideLoad.WEIGHT,) if step.load.kilograms else ()))


def on_offer(
    activity: Activity, programme: Programme, exercise: Exercise, variation: Variation
) -> Estimate | None:
    """Return the estimate of the programme's most active muscle in a variation; None where not known."""
    found = most_active(activity.in_form(exercise, variation, muscle) for muscle in programme.muscles)
    return found[0] if found else None
