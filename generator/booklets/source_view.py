"""Names where a booklet's order and rules come from, and says plainly what was invented."""

from __future__ import annotations

from dataclasses import dataclass

from generator.booklets.values import BookletJob
from generator.catalogue.base import Source, Text
from generator.catalogue.clinic import Study
from generator.catalogue.in_force import in_force
from generator.wording.terms import term


@dataclass(frozen=True)
class SourceLine:
    """One source: what rests on it (may be empty), the citation as written, how sure it is in words."""

    about: Text | str
    citation: str
    status: str


def study_lines(job: BookletJob) -> tuple[SourceLine, ...]:
    """Return the studies behind the order of this phase, each once, in the order of authors and years."""
    places = job.order.of_phase(job.phase)
    ids = {study for placed in places if placed.estimate for study in placed.estimate.studies}
    studies = sorted((job.catalogue.studies[one] for one in ids), key=lambda one: (one.authors, one.year))
    return tuple(SourceLine("", _citation(one), term(job.voice, one.status.status)) for one in studies)


def source_lines(job: BookletJob) -> tuple[SourceLine, ...]:
    """Return the sources of the phase's weeks and pain limit and of every restriction that it prints."""
    voice, stage = job.voice, job.stage
    pain = voice.gettext("Pain limit, set by: {role}").format(role=stage.pain.set_by)
    named: list[tuple[Text | str, Source]] = [
        (voice.gettext("Weeks of this phase"), stage.week_source),
        (pain, stage.pain.source),
    ]
    named += [(rule.words, rule.source) for rule in in_force(job.stages, job.stage)]
    return tuple(SourceLine(about, one.text, term(voice, one.status)) for about, one in named)


def _citation(study: Study) -> str:
    where = " ".join(part for part in (study.journal, study.volume) if part)
    if study.pages:
        where = f"{where}:{study.pages}"
    return f"{study.authors} {study.year}. {where}."
