"""Names what a protocol rests on: each rule with its source and how sure it is, and the studies."""

from __future__ import annotations

from dataclasses import dataclass

from generator.booklets.protocol_chart import Chart, ChartRow
from generator.booklets.protocol_values import ProtocolJob
from generator.catalogue.base import Source, Text
from generator.catalogue.clinic import Study
from generator.wording.phrases import list_of, number
from generator.wording.terms import clinical_term


@dataclass(frozen=True)
class Cited:
    """Something that rests on a source.

    mark: its number in the protocol, or empty. about: what is said to the patient, or what the source is
    for. lifted: the phase before which a restriction cannot end. citation: as typed. status: how sure it is,
    in words.
    """

    mark: str
    about: Text | str
    lifted: str
    citation: str
    status: str


def cited_rules(job: ProtocolJob, chart: Chart) -> tuple[Cited, ...]:
    """Return the restrictions as numbered in the chart, then weeks and pain limits, equal sources once."""
    found = [_restriction(job, row) for row in chart.rows]
    voice, phases = job.voice, job.stages.phases
    weeks = [(phase.number, phase.week_source) for phase in phases]
    found += _of_phases(job, voice.gettext("Weeks of phase {phases}"), weeks)
    pain = [(phase.number, phase.pain.source) for phase in phases]
    return (*found, *_of_phases(job, voice.gettext("Pain limit of phase {phases}"), pain))


def cited_studies(job: ProtocolJob) -> tuple[Cited, ...]:
    """Return the studies behind the estimates, in the order of authors and years."""
    estimates = [one for placed in job.order.places for one in (placed.estimate, *placed.others) if one]
    ids = {study for one in estimates for study in one.studies}
    found = sorted((job.catalogue.studies[id_] for id_ in ids), key=lambda one: (one.authors, one.year))
    return tuple(
        Cited(
            "",
            f"{study.authors} {study.year}.",
            "",
            _where(study),
            clinical_term(job.voice, study.status.status),
        )
        for study in found
    )


def _restriction(job: ProtocolJob, row: ChartRow) -> Cited:
    voice, rule = job.voice, row.rule
    lifted = ""
    if rule.until.phase is not None:
        words = voice.gettext("phase {number}")
        lifted = words.format(number=number(voice, rule.until.phase))
    return Cited(row.number, rule.words, lifted, rule.source.text, clinical_term(voice, rule.source.status))


def _of_phases(job: ProtocolJob, words: str, listed: list[tuple[int, Source]]) -> list[Cited]:
    """Return one entry for phases whose sources are the same."""
    grouped: dict[Source, list[int]] = {}
    for phase, source in listed:
        grouped.setdefault(source, []).append(phase)
    return [
        Cited(
            "",
            words.format(phases=list_of(job.voice, (number(job.voice, phase) for phase in phases))),
            "",
            source.text,
            clinical_term(job.voice, source.status),
        )
        for source, phases in grouped.items()
    ]


def _where(study: Study) -> str:
    where = " ".join(part for part in (study.journal, study.volume) if part)
    where += f":{study.pages}" if study.pages else ""
    return f"{where}. doi:{study.doi}" if study.doi else f"{where}."
