"""Works out what a booklet says besides its exercises: the way, the phase, warnings, milestones, sources."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, fields, is_dataclass
from typing import Any

from generator.booklets.columns import Halves, halves, lines
from generator.booklets.edition_lines import clinic_line, edition_line, recorded_line
from generator.booklets.exercise_sheet import ExerciseSheet, exercise_sheets
from generator.booklets.formats import SHEET
from generator.booklets.life_view import (
    Anchors,
    HelperSheet,
    LifeItem,
    anchors_view,
    helper_view,
    life_items,
)
from generator.booklets.qr import Code, check_code
from generator.booklets.ruled import NOTE_LINE_MM, Ruled, growing_lines, growth, note_lines
from generator.booklets.safety_view import Pain, SignGroup, WorseLevel, pain_view, sign_groups, worse_levels
from generator.booklets.session_view import SessionSheet, session_view
from generator.booklets.source_view import SourceLine, source_lines, study_lines
from generator.booklets.values import BookletJob, Fit, Fits
from generator.catalogue.base import Text
from generator.catalogue.clinic import Equipment, Term
from generator.catalogue.in_force import in_force
from generator.catalogue.programme import Milestone, Restriction
from generator.catalogue.terms import Joint
from generator.wording.phrases import number
from generator.wording.terms import term
from generator.wording.weeks import until_week, week, weeks


@dataclass(frozen=True)
class Stage:
    """One phase on the way: its number, name and weeks, and whether the booklet is for it."""

    number: str
    name: Text
    weeks: str
    here: bool


@dataclass(frozen=True)
class Forbidden:
    """What must not be done yet, until the same time; `until` is empty for the whole phase."""

    until: str
    words: tuple[Text, ...]


@dataclass(frozen=True)
class Fact:
    """One thing about the phase: a heading and what is said, as a list where it is one."""

    heading: str
    words: tuple[Text, ...]


@dataclass(frozen=True)
class Needed:
    """A thing that the phase needs; `optional` where only an easier or harder form needs it."""

    thing: Equipment
    optional: bool


@dataclass(frozen=True)
class Tested:
    """A milestone and who tests it, in words."""

    milestone: Milestone
    tester: str


@dataclass(frozen=True)
class Booklet:
    """All that the templates print, in one language."""

    job: BookletJob
    fits: Fits
    title: str
    where: str
    way: tuple[Stage, ...]
    facts: Halves[Fact]
    forbidden: Halves[Forbidden]
    equipment: Halves[Needed]
    pain: Pain
    signs: tuple[SignGroup, ...]
    worse: tuple[WorseLevel, ...]
    exercises: tuple[ExerciseSheet, ...]
    session: SessionSheet | None
    life: tuple[LifeItem, ...]
    helper: HelperSheet | None
    anchors: Anchors | None
    milestones: tuple[Tested, ...]
    terms: tuple[Term, ...]
    studies: tuple[SourceLine, ...]
    rules: tuple[SourceLine, ...]
    clinic_line: str
    edition_line: str
    recorded_line: str
    code: Code | None

    @property
    def bar_width(self) -> float:
        """Return the width of one bar of the way, in percent of the line; gaps of one percent part them."""
        return round((100 - (len(self.way) - 1)) / len(self.way) - 0.05, 2)

    def fit(self, key: str) -> Fit:
        """Return how a section sits on paper."""
        return self.fits.get(key, Fit())

    @property
    def drawn(self) -> bool:
        """Return whether any exercise of the booklet has a picture."""
        return any(sheet.pictures for sheet in self.exercises)

    @property
    def ring(self) -> str:
        """Return what the ring in the pictures means; empty for a joint that is never ringed."""
        voice, joint = self.job.voice, self.job.stages.joint
        if joint is Joint.HIP:
            ring = voice.gettext("In the pictures, a ring marks the operated hip.")
        elif joint is Joint.KNEE:
            ring = voice.gettext("In the pictures, a ring marks the operated knee.")
        else:
            return ""
        if self.job.patient and self.job.patient.pictured:
            return ring
        return " ".join((ring, voice.gettext("Your side may be the other one.")))

    @property
    def now(self) -> tuple[ExerciseSheet, ...]:
        """Return the exercises that begin with the phase."""
        return tuple(sheet for sheet in self.exercises if not sheet.entry.later)

    @property
    def later(self) -> tuple[ExerciseSheet, ...]:
        """Return the exercises to add only when one is told."""
        return tuple(sheet for sheet in self.exercises if sheet.entry.later)

    def notes(self, key: str) -> Ruled:
        """Return the lines for notes that end a section."""
        return note_lines(self.fits.get(key, Fit()))

    @property
    def narrow(self) -> bool:
        """Return whether everything stands in one column."""
        return self.job.format.narrow

    @property
    def alone(self) -> bool:
        """Return whether nothing but the sheet of a session is printed."""
        return self.job.kind == SHEET

    @property
    def page_of_lines(self) -> Ruled:
        """Return the lines of a sheet with nothing else on it."""
        return Ruled(self.job.format.note_lines, NOTE_LINE_MM)

    def lines(self, key: str, least: int) -> Ruled:
        """Return the lines to write on that fit into the space left, `least` of which are always there."""
        return growing_lines(self.fits.get(key, Fit()), least)

    def taller(self, key: str, rows: int, most: float) -> float:
        """Return by how many millimetres each of `rows` rows may grow, at most by `most`."""
        return growth(self.fits.get(key, Fit()), rows, most)


def booklet_view(job: BookletJob, fits: Fits) -> Booklet:
    """Return what the templates print for one job, given how its sections sit on paper."""
    voice, clinic = job.voice, job.catalogue.clinic
    exercises = exercise_sheets(job, fits)
    return Booklet(
        job=job,
        fits=fits,
        title=_title(job),
        where=_where(job),
        way=_way(job),
        facts=_facts(job),
        forbidden=_forbidden(job),
        equipment=_equipment(job),
        pain=pain_view(job),
        signs=sign_groups(job),
        worse=worse_levels(job),
        exercises=exercises,
        session=session_view(job, exercises),
        life=life_items(job),
        helper=helper_view(job, exercises),
        anchors=anchors_view(job, exercises),
        milestones=tuple(Tested(one, term(voice, one.tester)) for one in job.stage.milestones),
        terms=_terms(job, exercises),
        studies=study_lines(job),
        rules=source_lines(job),
        clinic_line=clinic_line(voice, clinic.telephone.clinic),
        edition_line=edition_line(voice, job.edition, job.draft),
        recorded_line=recorded_line(job),
        code=check_code(job),
    )


def _title(job: BookletJob) -> str:
    words = job.voice.gettext("{programme}, phase {number}: {name}")
    stage = job.stage
    return words.format(programme=job.stages.name, number=number(job.voice, stage.number), name=stage.name)


def _where(job: BookletJob) -> str:
    words = job.voice.gettext("Phase {number} of {total}: {name}")
    stage, total = job.stage, len(job.stages.phases)
    counted = {"number": number(job.voice, stage.number), "total": number(job.voice, total)}
    return words.format(name=stage.name, **counted)


def _way(job: BookletJob) -> tuple[Stage, ...]:
    windows = {window.phase: weeks(job.voice, window) for window in job.order.windows}
    return tuple(
        Stage(
            number=number(job.voice, phase.number),
            name=phase.name,
            weeks=windows[phase.number],
            here=phase.number == job.phase,
        )
        for phase in job.stages.phases
    )


def _facts(job: BookletJob) -> Halves[Fact]:
    stage, voice = job.stage, job.voice
    told = [
        Fact(voice.gettext("What this phase is for"), stage.goals),
        Fact(voice.gettext("Weight on your operated leg"), (stage.weight_bearing,)),
        Fact(voice.gettext("Walking aid"), (stage.walking_aid,)),
    ]
    if stage.brace:
        told.append(Fact(voice.gettext("Brace"), (stage.brace,)))
    return halves(told, lambda fact: 1.5 + lines(fact.words))


def _equipment(job: BookletJob) -> Halves[Needed]:
    needed = [Needed(job.catalogue.equipment[one.id], one.optional) for one in job.things]
    return halves(needed, lambda one: lines([f"{one.thing.name}. {one.thing.check or ''}"]))


def _forbidden(job: BookletJob) -> Halves[Forbidden]:
    """Return what is forbidden in groups that end together: the soonest first, the phase's own list last."""
    rules = sorted(
        in_force(job.stages, job.stage), key=lambda rule: (rule.until.week, rule.until.delayed_week)
    )
    groups: dict[str, list[Text]] = {}
    for rule in rules:
        groups.setdefault(job.voice.opening(_until(job, rule)), []).append(rule.words)
    groups.setdefault(job.voice.gettext("In this whole phase"), []).extend(job.stage.avoid)
    listed = [Forbidden(until, tuple(words)) for until, words in groups.items() if words]
    return halves(listed, lambda group: lines((group.until, *group.words)))


def _until(job: BookletJob, rule: Restriction) -> str:
    until, voice = rule.until, job.voice
    if until.release is not None:
        return voice.gettext("Until this has happened: {release}").format(release=until.release)
    if until.delayed_week == until.week:
        return until_week(voice, until.week)
    words = voice.gettext("{weeks} (delayed start: {delayed})")
    return words.format(weeks=until_week(voice, until.week), delayed=week(voice, until.delayed_week))


def _terms(job: BookletJob, exercises: tuple[ExerciseSheet, ...]) -> tuple[Term, ...]:
    """Return the glossary entries whose term stands in a text of this booklet, as the editor wrote it.

    Other languages bend their words, and every language has the same entries.
    """
    spoken = [
        job.stage,
        job.catalogue.safety,
        *in_force(job.stages, job.stage),
        *(one.exercise for one in exercises),
        *(job.catalogue.daily_life[id_] for id_ in job.stage.daily_life),
    ]
    words = " ".join(text.source for text in _texts(spoken)).casefold()
    found = (entry for entry in job.catalogue.glossary.values() if entry.term.source.casefold() in words)
    return tuple(found)


def _texts(value: Any) -> Iterator[Text]:
    if isinstance(value, Text):
        yield value
    elif isinstance(value, list | tuple):
        for item in value:
            yield from _texts(item)
    elif isinstance(value, dict):
        yield from _texts(list(value.values()))
    elif is_dataclass(value):
        yield from _texts([getattr(value, one.name) for one in fields(value) if one.compare])
