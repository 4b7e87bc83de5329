"""Notes what was written and reaches nobody: an exercise in no phase, a study that no value comes from."""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule, Severity

NO_PHASE = Rule(
    "in-no-phase",
    "No phase of any programme has this exercise or this item of daily life, so no booklet shows it.",
    "It is new and not yet named in a phase, its last use was taken out, or it is kept for later.",
    "name it in a phase of a programme, or delete its file; nothing need be done where it is kept on purpose",
    severity=Severity.NOTE,
)
NOT_CITED = Rule(
    "study-not-cited",
    "No exercise carries a value of this study.",
    "It is kept for reading, its values were not typed yet, or what carried them was deleted.",
    "type its values under 'activity' of the exercises or under 'not-used' of the study, or delete the study",
    severity=Severity.NOTE,
)
RULES = (NO_PHASE, NOT_CITED)


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each exercise, item of daily life and study that nothing leads to."""
    reached = _reached(catalogue)
    phases = [phase for programme in catalogue.programmes.values() for phase in programme.phases]
    spoken_of = {id_ for phase in phases for id_ in phase.daily_life}
    for exercise in catalogue.exercises.values():
        if exercise.id not in reached:
            yield NO_PHASE.at(exercise.at("name"), f"no phase has the exercise '{exercise.id}'")
    for item in catalogue.daily_life.values():
        if item.id not in spoken_of:
            yield NO_PHASE.at(item.at("name"), f"no phase has the item of daily life '{item.id}'")
    cited = set(_cited(catalogue))
    for id_, study in catalogue.studies.items():
        if id_ not in cited and not study.not_used:
            yield NOT_CITED.at(study.place, f"nothing carries a value of '{id_}'")


def _reached(catalogue: Catalogue) -> set[str]:
    """Return the ids of exercises that a phase has, or that stand in for one which is reached."""
    reached: set[str] = set()
    waiting = [
        id_
        for programme in catalogue.programmes.values()
        for phase in programme.phases
        for use in phase.uses
        for id_ in (use.use, use.replaced_by)
    ]
    while waiting:
        id_ = waiting.pop()
        if id_ is not None and id_ not in reached:
            reached.add(id_)
            exercise = catalogue.exercises.get(id_)
            waiting.append(exercise.alternative if exercise is not None else None)
    return reached


def _cited(catalogue: Catalogue) -> Iterator[str]:
    """Yield the id of each study that a value of an exercise or variation comes from."""
    for exercise in catalogue.exercises.values():
        yield from (measurement.study for measurement in exercise.activity)
        for variation in exercise.variations.values():
            yield from (measurement.study for measurement in variation.activity)
