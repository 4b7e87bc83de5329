"""Holds that nothing stands before what must be mastered first.

Prerequisites must not go round in a circle, must be part of the programme, and must not enter later than
what needs them. A clinician may waive one for a use, with role and reason, which are shown.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from generator.catalogue.exercise import Exercise
from generator.catalogue.programme import Phase, Programme, Use
from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule
from generator.progression.arrange import order_of_phase
from generator.progression.order import find_cycle
from generator.progression.weeks import delayed_entry_week, entry_week

CYCLE = Rule(
    "prerequisite-cycle",
    "Exercises wait for each other in a circle, so none of them could ever be the first.",
    "A prerequisite was entered the wrong way round.",
    "remove one of the prerequisites in the circle",
    safety=True,
)
LEFT_OUT = Rule(
    "prerequisite-left-out",
    "An exercise stands in a programme that leaves out what must be mastered before it.",
    "The prerequisite is not used in this programme, or was taken out.",
    "add a use of the prerequisite, or waive it under the use with role and reason",
    safety=True,
)
LATER = Rule(
    "prerequisite-later",
    "An exercise enters before what must be mastered first.",
    "The prerequisite is first used in a later phase or week.",
    "use the prerequisite earlier, use this exercise later, or waive it with role and reason",
    safety=True,
)
RULES = (CYCLE, LEFT_OUT, LATER)

Entry = tuple[int, int, int]


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each circle, each prerequisite left out and each that comes too late."""
    yield from _cycles(catalogue)
    for programme in catalogue.programmes.values():
        yield from _circles_of(catalogue, programme)
        entries = _first_entries(programme)
        for phase in programme.phases:
            for use in phase.uses:
                exercise = catalogue.exercises.get(use.use)
                if exercise is not None and entries[use.use] == _entry(phase, use):
                    yield from _of_use(programme, phase, use, exercise, entries)


def _cycles(catalogue: Catalogue) -> Iterator[Problem]:
    needs = {id_: exercise.requires for id_, exercise in catalogue.exercises.items()}
    while (cycle := find_cycle(needs)) is not None:
        first = catalogue.exercises[cycle[0]]
        message = "these exercises require each other: " + " -> ".join(cycle)
        yield CYCLE.at(first.at("requires", first.requires.index(cycle[1])), message)
        needs = {id_: first for id_, first in needs.items() if id_ not in cycle}


def _circles_of(catalogue: Catalogue, programme: Programme) -> Iterator[Problem]:
    """Yield circles that only a choice of exercises closes: what one could do instead is left out."""
    earlier: set[str] = set()
    for phase in programme.phases:
        used = {use.use for use in phase.uses if use.use in catalogue.exercises}
        try:
            order_of_phase(catalogue, used, earlier, str)
        except ValueError as error:
            cycle = error.args[0]
            for first, second in pairwise(cycle):
                exercise = catalogue.exercises[first]
                # A circle of plain prerequisites has been reported with the exercises.
                if second not in exercise.requires:
                    place = exercise.at("requires-one-of", exercise.requires_one_of.index(second))
                    where = f"in phase {phase.number} of '{programme.id}'"
                    yield CYCLE.at(place, f"{where} these wait for each other: " + " -> ".join(cycle))
                    break
        earlier |= used


def _entry(phase: Phase, use: Use) -> Entry:
    return (phase.number, entry_week(phase, use), delayed_entry_week(phase, use))


def _first_entries(programme: Programme) -> dict[str, Entry]:
    found: dict[str, Entry] = {}
    for phase in programme.phases:
        for use in phase.uses:
            found.setdefault(use.use, _entry(phase, use))
    return found


def _of_use(
    programme: Programme, phase: Phase, use: Use, exercise: Exercise, entries: dict[str, Entry]
) -> Iterator[Problem]:
    waived = {waiver.prerequisite for waiver in use.waives}
    mine = entries[use.use]
    where = f"in phase {phase.number} of '{programme.id}'"
    for needed in exercise.requires:
        if needed in waived:
            continue
        if needed not in entries:
            yield LEFT_OUT.at(use.at("use"), f"'{use.use}' {where} needs '{needed}', which is left out")
        elif _comes_later(entries[needed], mine):
            yield LATER.at(use.at("use"), f"'{use.use}' {where} needs '{needed}', which enters later")
    choice = exercise.requires_one_of
    if choice and not waived & set(choice):
        offered = [entries[needed] for needed in choice if needed in entries]
        listed = ", ".join(f"'{needed}'" for needed in choice)
        if not offered:
            yield LEFT_OUT.at(use.at("use"), f"'{use.use}' {where} needs one of {listed}; all are left out")
        elif all(_comes_later(entry, mine) for entry in offered):
            yield LATER.at(use.at("use"), f"'{use.use}' {where} needs one of {listed}; all enter later")


def _comes_later(needed: Entry, mine: Entry) -> bool:
    """Return whether the prerequisite enters later on either track."""
    return needed[0] > mine[0] or needed[1] > mine[1] or needed[2] > mine[2]
