"""Words the exercises of a protocol: role, demand, weeks, dose steps, and what is known of activity."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from generator.booklets.protocol_values import ProtocolJob
from generator.catalogue.arranged import BandPosition, Estimate, Placed
from generator.catalogue.base import Text
from generator.catalogue.dose import DoseKind, Load
from generator.catalogue.programme import Phase, Use
from generator.catalogue.restricted import Track, entry
from generator.wording.doses import dose, hold_seconds
from generator.wording.isolation import NO_BREAK, isolate
from generator.wording.phrases import bare_number, list_of, load, number, row_of
from generator.wording.terms import clinical_term
from generator.wording.weeks import delayed_weeks, weeks

_IN_SETS = (DoseKind.REPETITIONS, DoseKind.HOLDS)


@dataclass(frozen=True)
class ExerciseRow:
    """One use in its place; words that do not apply are empty.

    weeks: entry on the usual and, where it differs, the delayed track. steps: dose steps, the easiest first.
    hold: seconds, of each step where they differ. often: times a day, days a week, rest days between.
    estimate: with its interval, in %MVIC. studies: number of studies and people. muscle: only where rows
    differ in it.
    """

    number: str
    name: Text
    form: Text | None
    role: str
    demand: str
    weeks: str
    when: Text | None
    steps: tuple[str, ...]
    hold: str
    often: str
    estimate: str
    studies: str
    basis: str
    band: str
    muscle: str


@dataclass(frozen=True)
class ExerciseGroup:
    """The exercises of a phase in the order of introduction."""

    title: str
    rows: tuple[ExerciseRow, ...]


@dataclass(frozen=True)
class Estimated:
    """Whose activity the estimates are of, in one sentence, and whether each row must say it for itself."""

    words: str
    by_row: bool


def estimated(job: ProtocolJob) -> Estimated:
    """Return what holds for all estimates of a programme, so that no row need repeat it."""
    found = [placed.estimate for placed in job.order.places if placed.estimate]
    muscles = dict.fromkeys(one.muscle for one in found)
    every = (one for placed in job.order.places for one in (placed.estimate, *placed.others) if one)
    measured = {one.muscle for one in every if one.k}
    never = [id_ for id_ in job.stages.muscles if id_ not in measured]
    parts = []
    if len(muscles) == 1:
        words = job.voice.gettext("All estimates: {muscle}.")
        parts.append(words.format(muscle=_muscles(job, muscles)))
    if never:
        words = job.voice.gettext("Measured in none of these exercises: {muscles}.")
        parts.append(words.format(muscles=_muscles(job, never)))
    return Estimated(" ".join(parts), by_row=len(muscles) > 1)


def _muscles(job: ProtocolJob, ids: Iterable[str]) -> str:
    return list_of(job.voice, (str(job.catalogue.muscles[id_].name) for id_ in ids))


def exercise_groups(job: ProtocolJob) -> tuple[ExerciseGroup, ...]:
    """Return the exercises of every phase."""
    voice, by_row = job.voice, estimated(job).by_row
    words = voice.gettext("Phase {number}: {name} ({weeks})")
    return tuple(
        ExerciseGroup(
            words.format(
                number=number(voice, phase.number),
                name=phase.name,
                weeks=weeks_of(job, phase),
            ),
            tuple(_row(job, phase, placed, by_row) for placed in job.order.of_phase(phase.number)),
        )
        for phase in job.stages.phases
    )


def weeks_of(job: ProtocolJob, phase: Phase) -> str:
    """Return when a phase runs, on the delayed track too where that differs."""
    window = job.order.windows[phase.number - 1]
    usual, delayed = weeks(job.voice, window), delayed_weeks(job.voice, window)
    if usual == delayed:
        return usual
    return job.voice.gettext("{weeks}; delayed: {delayed}").format(weeks=usual, delayed=delayed)


def _row(job: ProtocolJob, phase: Phase, placed: Placed, by_row: bool) -> ExerciseRow:
    voice, exercise, found = job.voice, job.catalogue.exercises[placed.exercise], placed.estimate
    use = next(one for one in phase.uses if one.use == placed.exercise)
    variation = exercise.variations.get(use.variation or "")
    demand = (variation.demand if variation else None) or exercise.demand
    return ExerciseRow(
        number=number(voice, placed.place),
        name=exercise.name,
        form=variation.name if variation else None,
        role=voice.opening(clinical_term(voice, exercise.role)),
        demand=clinical_term(voice, demand),
        weeks=_weeks(job, phase, use),
        when=use.when,
        steps=_steps(job, use),
        hold=_hold(job, use),
        often=_often(job, use),
        estimate=_estimate(job, found) if found else "",
        studies=_slashed(job, found.k, found.n) if found and found.k else "",
        basis=clinical_term(voice, found.basis) if found else "",
        band=_band(job, placed) if found else "",
        muscle=_muscles(job, [found.muscle]) if found and by_row else "",
    )


def _weeks(job: ProtocolJob, phase: Phase, use: Use) -> str:
    usual, delayed = entry(phase, use, Track.USUAL), entry(phase, use, Track.DELAYED)
    if usual == delayed:
        return number(job.voice, usual)
    words = job.voice.gettext("{week} ({delayed})")
    return words.format(week=number(job.voice, usual), delayed=number(job.voice, delayed))


def _steps(job: ProtocolJob, use: Use) -> tuple[str, ...]:
    """Return the dose steps; a load stands before the first step that has it, a unit after the last."""
    voice, permitted = job.voice, job.catalogue.exercises[use.use].dose
    said: list[str] = []
    before = Load()
    for step in use.dose_steps:
        words = dose(voice, step, permitted).big
        if step.load != before:
            loaded = load(voice, step.load) or voice.gettext("without a load")
            words = voice.gettext("{load}: {dose}").format(load=loaded, dose=words)
        said.append(words)
        before = step.load
    last = use.dose_steps[-1]
    if last.kind not in _IN_SETS:
        said[-1] = f"{said[-1]} {dose(voice, last, permitted).unit}"
    return tuple(said)


def _hold(job: ProtocolJob, use: Use) -> str:
    """Return the seconds of each hold, once where all steps agree."""
    permitted = job.catalogue.exercises[use.use].dose
    if permitted.kind not in _IN_SETS:
        return ""
    holds = [hold_seconds(step, permitted) or 0 for step in use.dose_steps]
    listed = holds[:1] if len(set(holds)) == 1 else holds
    return row_of(job.voice, (number(job.voice, held) for held in listed)) if any(holds) else ""


def _often(job: ProtocolJob, use: Use) -> str:
    return _slashed(job, use.times_a_day, use.days_a_week, use.rest_days)


def _slashed(job: ProtocolJob, *numbers: int) -> str:
    """Return numbers as one unit that never turns round: ``1 / 3 / 1``."""
    return isolate(f"{NO_BREAK}/{NO_BREAK}".join(bare_number(job.voice, one) for one in numbers))


def _estimate(job: ProtocolJob, found: Estimate) -> str:
    """Return the number with its 95 % interval; what was computed below 0 is "down to nothing".

    A judgement serves the order; printed as a number it would look measured, so it has none.
    """
    if found.judgement is not None:
        return ""
    mean = bare_number(job.voice, found.mean, 0)
    if found.low is None or found.high is None:
        return isolate(mean)
    low, high = (bare_number(job.voice, value, 0) for value in (max(0.0, found.low), found.high))
    if found.low == found.high:
        return isolate(mean)
    return isolate(f"{mean}{NO_BREAK}({low}–{high})")


def _band(job: ProtocolJob, placed: Placed) -> str:
    voice = job.voice
    if placed.band_position is BandPosition.UNKNOWN:
        return ""
    position = clinical_term(voice, placed.band_position)
    if placed.above_by:
        words = voice.gettext("{position} by {points}")
        position = words.format(position=position, points=number(voice, placed.above_by, 1))
    if placed.accepted is not None:
        words = voice.gettext("{position}; accepted by {role}: {reason}")
        return words.format(position=position, role=placed.accepted.role, reason=placed.accepted.reason)
    return position
