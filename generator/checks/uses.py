"""Holds that each use says one thing only: an exercise once a phase, and what becomes of it afterwards."""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.programme import Phase, Use
from generator.catalogue.terms import Then
from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule
from generator.progression.weeks import entry_week

TWICE = Rule(
    "use-twice",
    "A phase uses the same exercise twice.",
    "A use was copied, or moved without deleting the old one.",
    "delete one of the two, or join their dose steps",
)
VARIATION = Rule(
    "unknown-variation",
    "A use names a variation that its exercise does not have.",
    "It is misspelt, or was renamed in the exercise.",
    "correct the name, or add the variation to the exercise",
)
REPLACED = Rule(
    "replacement",
    "A use says that it is replaced but not by what, or names a replacement although it is not replaced.",
    "Only one of the two lines was changed.",
    "write both 'then: replaced' and 'replaced-by', or neither",
)
ONWARDS = Rule(
    "goes-on-nowhere",
    "A use says that it goes on, or what replaces it, but the next phase does not have that exercise.",
    "The exercise was taken out of the next phase, or enters this one no later than what it replaces.",
    "add the use to the next phase, or change what becomes of this one",
)
WAIVER = Rule(
    "waiver-without-need",
    "A use waives something that its exercise does not require.",
    "The prerequisite was removed from the exercise, or the name is another's.",
    "delete the waiver, or name the prerequisite that is meant",
)
RULES = (TWICE, VARIATION, REPLACED, ONWARDS, WAIVER)


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each use that contradicts itself or its neighbours."""
    for programme in catalogue.programmes.values():
        for phase, following in zip(programme.phases, (*programme.phases[1:], None), strict=True):
            seen: set[str] = set()
            for use in phase.uses:
                if use.use in seen:
                    yield TWICE.at(use.at("use"), f"'{use.use}' stands twice in phase {phase.number}")
                seen.add(use.use)
                yield from _replacement(use, phase, following)
                yield from _against_exercise(catalogue, use)


def _replacement(use: Use, phase: Phase, following: Phase | None) -> Iterator[Problem]:
    if (use.then is Then.REPLACED) != (use.replaced_by is not None):
        yield REPLACED.at(use.at("then"), f"'{use.use}': 'then' and 'replaced-by' do not agree")
        return
    if _takes_over_within(use, phase):
        return
    onwards = {Then.GOES_ON: use.use, Then.REPLACED: use.replaced_by, Then.ENDS: None}[use.then]
    # The last phase has no end: what goes on there goes on with the patient.
    if onwards and following and onwards not in {later.use for later in following.uses}:
        message = f"'{onwards}' is not used in phase {following.number}"
        yield ONWARDS.at(use.at("then"), message)


def _takes_over_within(use: Use, phase: Phase) -> bool:
    """Return whether a later use of the same phase takes this one's place."""
    week = entry_week(phase, use)
    return any(later.use == use.replaced_by and entry_week(phase, later) > week for later in phase.uses)


def _against_exercise(catalogue: Catalogue, use: Use) -> Iterator[Problem]:
    exercise = catalogue.exercises.get(use.use)
    if exercise is None:
        return
    if use.variation is not None and use.variation not in exercise.variations:
        known = ", ".join(exercise.variations) or "none"
        message = f"'{use.use}' has no variation '{use.variation}' (it has: {known})"
        yield VARIATION.at(use.at("variation"), message)
    for position, waiver in enumerate(use.waives):
        if waiver.prerequisite not in (*exercise.requires, *exercise.requires_one_of):
            message = f"'{use.use}' does not require '{waiver.prerequisite}'"
            yield WAIVER.at(use.at("waives", position), message)
