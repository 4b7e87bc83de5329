"""Puts one session on one sheet for the fridge: in which order, how much, where, how long, and why so.

The order of introduction, which numbers the exercises, is explained on the sheet of the phase.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby

from generator.booklets.exercise_sheet import ExerciseSheet
from generator.booklets.pictures import Picture
from generator.booklets.values import BookletJob
from generator.catalogue.arranged import SessionReasonKind
from generator.wording.phrases import about_minutes, minutes_a_day, number
from generator.wording.terms import term


@dataclass(frozen=True)
class SessionRow:
    """One exercise in the session: when it is done, its number, how often; a note on what replaces it."""

    facts: str
    sheet: ExerciseSheet
    picture: Picture | None
    note: str


@dataclass(frozen=True)
class Station:
    """What is done in one position before the next change."""

    heading: str
    rows: tuple[SessionRow, ...]


@dataclass(frozen=True)
class SessionSheet:
    """A whole session. takes: how long. why: its order, in sentences. passing: what goes on all day."""

    stations: tuple[Station, ...]
    takes: tuple[str, ...]
    why: tuple[str, ...]
    passing: tuple[ExerciseSheet, ...]
    stop: str

    @property
    def rows(self) -> int:
        """Return how many exercises there are."""
        return sum(len(station.rows) for station in self.stations)

    @property
    def required(self) -> tuple[str, ...]:
        """Return what the audit must find on the sheet: every exercise with its dose, and the stop rule."""
        rows = [row for station in self.stations for row in station.rows]
        told = [text for row in rows for text in (str(row.sheet.name), row.sheet.dose.big)]
        return tuple(dict.fromkeys((*told, *(str(one.name) for one in self.passing), self.stop)))


def session_view(job: BookletJob, exercises: tuple[ExerciseSheet, ...]) -> SessionSheet | None:
    """Return all exercises of the phase in the order of a session; None for a phase without exercises."""
    sheets = {one.exercise.id: one for one in exercises}
    passing = tuple(sheets[id_] for id_ in job.day.in_passing)
    if not exercises:
        return None
    return SessionSheet(
        stations=_stations(job, sheets),
        takes=_takes(job),
        why=_why(job),
        passing=passing,
        stop=exercises[0].stop,
    )


def _stations(job: BookletJob, sheets: dict[str, ExerciseSheet]) -> tuple[Station, ...]:
    voice = job.voice
    return tuple(
        Station(voice.opening(term(voice, surface)), tuple(_row(job, sheets[one.exercise]) for one in group))
        for surface, group in groupby(job.turns, key=lambda one: one.surface)
    )


def _row(job: BookletJob, sheet: ExerciseSheet) -> SessionRow:
    voice, entry = job.voice, sheet.entry
    numbered = voice.gettext("Exercise {number}")
    states = voice.pgettext("when it is done", "Now"), voice.pgettext("when it is done", "Later")
    return SessionRow(
        facts=" · ".join(
            (states[entry.later], numbered.format(number=number(voice, sheet.place)), sheet.frequency)
        ),
        sheet=sheet,
        picture=sheet.pictures.last if sheet.pictures else None,
        note=entry.makes_way,
    )


def _takes(job: BookletJob) -> tuple[str, ...]:
    voice, day = job.voice, job.day
    if not day.sessions:
        return ()
    said = voice.gettext("A session with all of it and with the last doses takes {minutes}.")
    whole = said.format(minutes=about_minutes(voice, day.sessions[0].minutes))
    if len(day.sessions) == 1:
        return (whole,)
    return (whole, voice.opening(minutes_a_day(voice, day.minutes)) + ".")


def _why(job: BookletJob) -> tuple[str, ...]:
    """Return the sentences that explain the order, each only where it is true of this session."""
    kinds = {reason.kind for one in job.turns for reason in one.reasons}
    voice = job.voice
    said = [voice.gettext("In a session, go down this sheet: it keeps changes of position few.")]
    if SessionReasonKind.WARM_UP in kinds:
        said.append(voice.gettext("What warms you up comes first."))
    if SessionReasonKind.FRESH_LEG in kinds:
        said.append(voice.gettext("Balance comes before work that tires your leg."))
    if any(use.times_a_day > 1 for use in job.stage.uses):
        said.append(voice.gettext("Do an exercise again on the same day only where it says so."))
    return tuple(said)
