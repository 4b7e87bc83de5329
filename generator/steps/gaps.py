"""Leaves out paper that would have holes in its language: a sheet cannot switch languages and say so."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from generator.catalogue.base import Text, TextState
from generator.catalogue.programme import Phase, Programme
from generator.problems import Problem, Rule, Severity
from generator.steps.languages import Spoken, texts_of

BOOKLET_WITHHELD = Rule(
    "booklet-withheld",
    "A booklet is left out of what is published.",
    "A text in it is not translated, or was reworded after it was translated.",
    "translate what is missing; the pages are published meanwhile and say what is not translated",
    severity=Severity.WARNING,
    safety=True,
)
RULES = (BOOKLET_WITHHELD,)

_HOLES = (TextState.MISSING, TextState.OUTDATED)


def first_hole(spoken: Spoken, programme: Programme, phase: Phase) -> Text | None:
    """Return a text of a phase's booklet that has no valid translation; None where the booklet is whole."""
    catalogue = spoken.catalogue
    exercises = [catalogue.exercises[use.use] for use in phase.uses]
    life = [catalogue.daily_life[item] for item in phase.daily_life]
    around = (programme.name, programme.operation, programme.restrictions)
    said = (phase, exercises, life, around, catalogue.safety, catalogue.clinic)
    return _first(said, tuple(catalogue.equipment.values()), tuple(catalogue.glossary.values()))


def hole_in_protocol(spoken: Spoken, programme: Programme) -> Text | None:
    """Return the same of a programme's protocol."""
    names = [spoken.catalogue.exercises[use.use].name for phase in programme.phases for use in phase.uses]
    return _first(programme, names, spoken.catalogue.safety, tuple(spoken.catalogue.muscles.values()))


def withheld_paper(spoken: Sequence[Spoken]) -> tuple[tuple[str, Problem], ...]:
    """Return the name of each booklet and protocol that is left out, with the finding that says why."""
    return tuple(found for one in spoken for found in _withheld_in(one))


def _withheld_in(spoken: Spoken) -> Iterator[tuple[str, Problem]]:
    for programme in spoken.catalogue.programmes.values():
        parts = [
            (f"phase {phase.number}", first_hole(spoken, programme, phase)) for phase in programme.phases
        ]
        for part, hole in (*parts, ("protocol", hole_in_protocol(spoken, programme))):
            if hole is not None:
                name = f"{programme.id} {part} in '{spoken.voice.code}'"
                state = "outdated" if hole.state is TextState.OUTDATED else "not translated"
                message = f"{name} is left out: {hole.source!r} is {state}"
                remedy = f"translate what is missing, beginning with: translate export {spoken.voice.code}"
                yield name, BOOKLET_WITHHELD.at(hole.place, message, remedy)


def _first(*values: Any) -> Text | None:
    return next((text for text in texts_of(values) if text.source and text.state in _HOLES), None)
