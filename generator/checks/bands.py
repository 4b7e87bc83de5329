"""Holds that measured activity fits the phase: doubt never widens permission.

Above the band by at most the programme's margin: late in the phase, marked. Further above: an error where
the programme protects its muscles.
"""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.exercise import Exercise
from generator.catalogue.programme import Phase, Programme, Use
from generator.catalogue.terms import MuscleAim
from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule, Severity
from generator.progression.arrange import most_active
from generator.progression.bands import position
from generator.progression.withheld import variation_estimate

UPSIDE_DOWN = Rule(
    "band-upside-down",
    "An activity band ends below its start.",
    "The two numbers were swapped.",
    "put the lower number under 'above' and the higher under 'up-to'",
    safety=True,
)
ABOVE = Rule(
    "above-band",
    "An exercise works a protected muscle harder than the phase allows.",
    "Its measured activity is above the band by more than the programme's margin.",
    "use the exercise in a later phase, or use an easier one",
    safety=True,
)
LATE = Rule(
    "late-in-phase",
    "An exercise works a protected muscle slightly harder than the phase's band.",
    "Its measured activity is above the band, within the programme's margin.",
    "nothing need be done: it stands late in the phase and is marked",
    severity=Severity.NOTE,
)
RULES = (UPSIDE_DOWN, ABOVE, LATE)


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each band upside down and each use above its band."""
    for programme in catalogue.programmes.values():
        for phase in programme.phases:
            if phase.band.up_to <= phase.band.above:
                message = f"the band of phase {phase.number} ends at or below its start"
                yield UPSIDE_DOWN.at(phase.band.place, message)
                continue
            for use in phase.uses:
                exercise = catalogue.exercises.get(use.use)
                if exercise is not None and programme.aim is MuscleAim.PROTECTS:
                    yield from _of_use(catalogue, programme, phase, use, exercise)


def _of_use(
    catalogue: Catalogue, programme: Programme, phase: Phase, use: Use, exercise: Exercise
) -> Iterator[Problem]:
    variation = exercise.variations.get(use.variation or "")
    own = variation_estimate(catalogue, programme, exercise, variation) if variation else None
    # A form that nobody has measured is judged by its exercise: doubt never widens permission.
    found = own or most_active(catalogue, programme, exercise)
    _, above_by = position(found.mean if found else None, phase.band)
    if found is None or above_by <= 0:
        return
    message = (
        f"'{use.use}' has {found.mean:.1f} %MVIC in {found.muscle}, "
        f"{above_by:.1f} above the band of phase {phase.number}"
    )
    yield (ABOVE if above_by > programme.margin else LATE).at(use.at("use"), message)
