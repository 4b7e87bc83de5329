"""Works out what a clinicians' protocol prints beside its chart: phases, milestones, exercises, sources."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from generator.booklets.edition_lines import clinic_line, edition_line
from generator.booklets.protocol_chart import Chart, chart_of
from generator.booklets.protocol_exercises import (
    Estimated,
    ExerciseGroup,
    estimated,
    exercise_groups,
    weeks_of,
)
from generator.booklets.protocol_sources import Cited, cited_rules, cited_studies
from generator.booklets.protocol_values import ProtocolJob
from generator.catalogue.base import Text
from generator.catalogue.programme import Milestone, Phase
from generator.wording.phrases import list_of, number, pain
from generator.wording.terms import clinical_term, term


@dataclass(frozen=True)
class Cell:
    """What holds in one phase or, where neighbours say the same, in several (`span`)."""

    words: str
    span: int


@dataclass(frozen=True)
class Fact:
    """One row of the table of phases."""

    name: str
    cells: tuple[Cell, ...]


@dataclass(frozen=True)
class Gate:
    """A milestone and who tests it, in words."""

    milestone: Milestone
    tester: str


@dataclass(frozen=True)
class Protocol:
    """All that the template prints, in one language.

    phases: heads of the table of phases; gates: milestones of each. reasons: why a start may be delayed.
    """

    job: ProtocolJob
    title: str
    chart: Chart
    aim: str
    phases: tuple[str, ...]
    facts: tuple[Fact, ...]
    gates: tuple[tuple[Gate, ...], ...]
    exercises: tuple[ExerciseGroup, ...]
    estimated: Estimated
    reasons: tuple[Text, ...]
    rules: tuple[Cited, ...]
    studies: tuple[Cited, ...]
    clinic_line: str
    edition_line: str


def protocol_view(job: ProtocolJob, chart_mm: float) -> Protocol:
    """Return what the template prints; the weeks of the chart take `chart_mm` millimetres."""
    voice, clinic = job.voice, job.catalogue.clinic
    chart = chart_of(job, chart_mm)
    return Protocol(
        job=job,
        title=voice.gettext("{programme}: protocol for clinicians").format(programme=job.stages.name),
        chart=chart,
        aim=_aim(job),
        phases=tuple(f"{number(voice, phase.number)} {phase.name}" for phase in job.stages.phases),
        facts=tuple(_facts(job)),
        gates=tuple(_gates(job, phase) for phase in job.stages.phases),
        exercises=exercise_groups(job),
        estimated=estimated(job),
        reasons=job.stages.delay_reasons,
        rules=cited_rules(job, chart),
        studies=cited_studies(job),
        clinic_line=clinic_line(voice, clinic.telephone.clinic),
        edition_line=edition_line(voice, job.edition, job.draft),
    )


def _aim(job: ProtocolJob) -> str:
    muscles = (str(job.catalogue.muscles[id_].name) for id_ in job.stages.muscles)
    words = job.voice.gettext("This programme {aim}: {muscles}.")
    return words.format(aim=term(job.voice, job.stages.aim), muscles=list_of(job.voice, muscles))


def _facts(job: ProtocolJob) -> Iterator[Fact]:
    voice = job.voice
    rows: tuple[tuple[str, Callable[[Phase], str]], ...] = (
        (voice.gettext("Weeks"), lambda phase: _weeks(job, phase)),
        (voice.gettext("Weight-bearing"), lambda phase: str(phase.weight_bearing)),
        (voice.gettext("Walking aid"), lambda phase: str(phase.walking_aid)),
        (voice.gettext("Brace"), lambda phase: str(phase.brace or voice.gettext("not stated"))),
        (voice.gettext("Highest demand"), lambda phase: voice.opening(clinical_term(voice, phase.demand))),
        (voice.gettext("Activity band (%MVIC)"), lambda phase: _band(job, phase)),
        (voice.gettext("Pain limit, operated site"), lambda phase: _pain(job, phase)),
        (voice.gettext("Rule for the next dose step"), lambda phase: str(phase.going_up)),
    )
    for name, said in rows:
        yield Fact(name, tuple(_merged(said(phase) for phase in job.stages.phases)))


def _merged(words: Iterable[str]) -> Iterator[Cell]:
    """Yield one cell for neighbours that say the same."""
    span, last = 0, ""
    for one in words:
        if span and one != last:
            yield Cell(last, span)
            span = 0
        span, last = span + 1, one
    if span:
        yield Cell(last, span)


def _weeks(job: ProtocolJob, phase: Phase) -> str:
    return job.voice.opening(weeks_of(job, phase))


def _band(job: ProtocolJob, phase: Phase) -> str:
    words = job.voice.gettext("above {low}, up to and including {high}")
    low, high = number(job.voice, phase.band.above), number(job.voice, phase.band.up_to)
    return words.format(low=low, high=high)


def _pain(job: ProtocolJob, phase: Phase) -> str:
    voice, limit = job.voice, phase.pain
    words = voice.gettext("during {during}, after {after}, next morning {next_morning}. Set by: {role}.")
    return voice.opening(
        words.format(
            during=pain(voice, limit.during),
            after=pain(voice, limit.after),
            next_morning=pain(voice, limit.next_morning),
            role=limit.set_by,
        )
    )


def _gates(job: ProtocolJob, phase: Phase) -> tuple[Gate, ...]:
    return tuple(Gate(one, clinical_term(job.voice, one.tester)) for one in phase.milestones)
