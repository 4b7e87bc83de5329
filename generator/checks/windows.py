"""Holds that phases follow each other without gap or overlap, and that a delay never shortens.

A phase ends where the next begins, so only the starts are typed; they must rise on both tracks.
"""

from __future__ import annotations

from collections.abc import Iterator

from generator.catalogue.programme import Phase, Programme
from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule
from generator.progression.weeks import delayed_entry_week, entry_week, windows

ORDER = Rule(
    "phase-weeks",
    "A phase does not start after the one before it.",
    "Weeks were swapped, or a phase was moved in the file.",
    "correct the weeks, or put the phases in the order in which they happen",
    safety=True,
)
DELAY = Rule(
    "delay-shortens",
    "The delayed track is earlier or shorter than the usual one.",
    "A delayed week was left as it was when the usual one was changed.",
    "make the delayed week at least as late, and each delayed phase at least as long",
    safety=True,
)
ENTRY = Rule(
    "entry-outside-phase",
    "A use enters before its phase begins or when the phase is over.",
    "The week was typed for another phase.",
    "choose a week within the phase, or move the use to another phase",
    safety=True,
)
RULES = (ORDER, DELAY, ENTRY)


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each start, delay or entry that cannot be."""
    for programme in catalogue.programmes.values():
        yield from _starts(programme)
        for phase, window in zip(programme.phases, windows(programme), strict=True):
            yield from _entries(phase, window.end, window.delayed_end)


def _starts(programme: Programme) -> Iterator[Problem]:
    for before, phase in zip((None, *programme.phases[:-1]), programme.phases, strict=True):
        if before is None and phase.week != 0:
            yield ORDER.at(
                phase.at("week"), "the first phase must start in week 0, on the day of the operation"
            )
        if phase.delayed_week < phase.week:
            yield DELAY.at(phase.at("delayed-week"), f"{phase.delayed_week} is before week {phase.week}")
        if before is None:
            continue
        if phase.week <= before.week:
            message = f"phase {phase.number} starts in week {phase.week}, the one before in {before.week}"
            yield ORDER.at(phase.at("week"), message)
        if phase.delayed_week <= before.delayed_week:
            message = f"phase {phase.number} starts in week {phase.delayed_week} when delayed"
            yield ORDER.at(phase.at("delayed-week"), f"{message}, the one before in {before.delayed_week}")
        elif phase.week - before.week > phase.delayed_week - before.delayed_week and (
            phase.delayed_week >= phase.week
        ):
            message = f"phase {before.number} would be shorter when recovery is delayed"
            yield DELAY.at(phase.at("delayed-week"), message)


def _entries(phase: Phase, end: int | None, delayed_end: int | None) -> Iterator[Problem]:
    for use in phase.uses:
        usual, delayed = entry_week(phase, use), delayed_entry_week(phase, use)
        if usual < phase.week or (end is not None and usual >= end):
            yield ENTRY.at(
                use.at("week"), f"'{use.use}' enters in week {usual}, outside phase {phase.number}"
            )
        if delayed < phase.delayed_week or (delayed_end is not None and delayed >= delayed_end):
            message = f"'{use.use}' enters in week {delayed} when delayed, outside phase {phase.number}"
            yield ENTRY.at(use.at("delayed-week"), message)
        if delayed < usual:
            yield DELAY.at(
                use.at("delayed-week"), f"'{use.use}' would enter earlier when recovery is delayed"
            )
