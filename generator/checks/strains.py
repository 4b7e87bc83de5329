"""Holds that whoever must avoid a strain has something else to do, or is named to the clinician."""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.exercise import Exercise
from generator.catalogue.programme import Phase, Programme, Use
from generator.catalogue.restricted import in_force_at_entry, is_forbidden, work_of
from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule, Severity

UNSPARED = Rule(
    "strain-without-alternative",
    "An exercise strains something, and there is no alternative that spares it.",
    "No 'alternative' is named, or it strains the same.",
    "name an alternative that spares it, or let the clinician decide: such exercises are listed for them",
    severity=Severity.NOTE,
)
LATER = Rule(
    "alternative-not-at-hand",
    "The alternative of an exercise is not used in the programme by then.",
    "It enters in a later phase or not at all, so the patient has no dose for it.",
    "use the alternative in the same or an earlier phase, or name another one",
    severity=Severity.WARNING,
)
FORBIDDEN = Rule(
    "alternative-forbidden",
    "The alternative of an exercise is itself forbidden when the exercise enters.",
    "The restrictions were looked at for the exercise, not for what takes its place.",
    "name an alternative that the restrictions allow then",
    safety=True,
)
RULES = (UNSPARED, LATER, FORBIDDEN)


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each strain that nothing spares and each alternative that cannot be done."""
    for exercise in catalogue.exercises.values():
        left = unspared(catalogue, exercise)
        if left:
            message = f"'{exercise.id}' has no alternative that spares: {', '.join(left)}"
            yield UNSPARED.at(exercise.at("strains"), message)
    for programme in catalogue.programmes.values():
        by_then: set[str] = set()
        for phase in programme.phases:
            by_then |= {use.use for use in phase.uses}
            for use in phase.uses:
                exercise_used = catalogue.exercises.get(use.use)
                if exercise_used is not None and exercise_used.strains:
                    yield from _of_use(catalogue, programme, phase, use, exercise_used.alternative, by_then)


def unspared(catalogue: Catalogue, exercise: Exercise) -> tuple[str, ...]:
    """Return the strains (ids) of the exercise that its alternative does not spare; without one, all.

    An alternative that could not be read is reported by itself and spares whatever it may.
    """
    if exercise.alternative is None:
        return exercise.strains
    other = catalogue.exercises.get(exercise.alternative)
    return tuple(strain for strain in exercise.strains if other is not None and strain in other.strains)


def _of_use(
    catalogue: Catalogue, programme: Programme, phase: Phase, use: Use, instead: str | None, by_then: set[str]
) -> Iterator[Problem]:
    other = catalogue.exercises.get(instead or "")
    if other is None:
        return
    where = f"'{other.id}', which takes the place of '{use.use}' in phase {phase.number},"
    if other.id not in by_then:
        yield LATER.at(use.at("use"), f"{where} is not used in '{programme.id}' by then")
    rules = in_force_at_entry(programme, phase, use)
    if is_forbidden(work_of(other), rules, both_sides=programme.both_sides):
        yield FORBIDDEN.at(use.at("use"), f"{where} is forbidden then")
