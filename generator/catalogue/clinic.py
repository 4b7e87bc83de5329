"""Describes what surrounds the exercises: the clinic, safety texts, studies, equipment, strains, glossary."""

from __future__ import annotations

from dataclasses import dataclass

from generator.catalogue.base import Record, Source, Text
from generator.catalogue.editorial import Publish, Weight
from generator.catalogue.terms import Electrode, Joint, Level, Movement, Normalisation, Paper, Part, Reach


@dataclass(frozen=True, kw_only=True)
class Telephone(Record):
    """Lines that a patient can call; hours in words."""

    clinic: str
    hours: Text
    out_of_hours: str
    emergency: str


@dataclass(frozen=True, kw_only=True)
class Limits(Record):
    """What is still reasonable in one day; more is a warning."""

    exercises_at_once: int = 6
    minutes_a_day: int = 30


@dataclass(frozen=True, kw_only=True)
class CodeWeight(Record):
    """What a project lets one code weigh, and why."""

    code: str
    weight: Weight
    reason: str


@dataclass(frozen=True, kw_only=True)
class Clinic(Record):
    """Who publishes: name, lines, languages (BCP 47, the source language first), paper, reach.

    demo: only true lifts the need for signed safety texts; then everything says so.
    base_address: where the site is served, or None. publish: whether drafts are published too.
    codes: what the project lets codes weigh.
    """

    name: Text
    about: Text
    telephone: Telephone
    languages: tuple[str, ...]
    paper: Paper
    reach: Reach
    base_address: str | None = None
    limits: Limits = Limits()
    demo: bool = False
    publish: Publish = Publish.DRAFTS_MARKED
    codes: tuple[CodeWeight, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Sign(Record):
    """A warning sign: what one notices, what it can mean, what to do, how fast."""

    id: str
    level: Level
    sign: Text
    meaning: Text
    act: Text
    source: Source


@dataclass(frozen=True, kw_only=True)
class Worse(Record):
    """What to do when it got worse, in three levels, each as short instructions."""

    today: tuple[Text, ...]
    clinic: tuple[Text, ...]
    emergency: tuple[Text, ...]


@dataclass(frozen=True, kw_only=True)
class HelperPage(Record):
    """What every helper should know: what to do, and what never to do."""

    does: tuple[Text, ...]
    must_not: tuple[Text, ...]


@dataclass(frozen=True, kw_only=True)
class Safety(Record):
    """Texts that keep people safe; audited in every finished page and sheet.

    deferral: the short note for every sheet and page. deferral_full: the same at length.
    demonstration: the line under ``demo: true``. start_only: stands before every phase from the second.
    stay: what holds until the patient is told to move on. working_area: fixed support and telephone.
    """

    deferral: Text
    deferral_full: Text
    demonstration: Text
    start_only: Text
    stay: Text
    working_area: Text
    pain_rule: Text
    signs: tuple[Sign, ...]
    worse: Worse
    fall: tuple[Text, ...]
    helper: HelperPage | None = None


@dataclass(frozen=True, kw_only=True)
class NotUsed(Record):
    """A value that a study gives and no exercise carries, with the reason, so that none is lost in silence.

    exercise: as the study's exercise is called here, in plain English; not translated.
    muscle: id in muscles.yml. mean: mean or median, in percent of the study's normalisation contraction.
    """

    exercise: str
    muscle: str
    mean: float
    reason: str


@dataclass(frozen=True, kw_only=True)
class Study(Record):
    """A publication with measurements, and how they were made.

    people: who was measured, in words. n: number of them, None where not seen.
    not_used: values that no exercise carries.
    """

    id: str
    authors: str
    year: int
    title: str
    journal: str
    volume: str = ""
    pages: str = ""
    doi: str | None = None
    people: str
    n: int | None = None
    electrode: Electrode
    normalisation: Normalisation
    part: Part
    remark: str = ""
    not_used: tuple[NotUsed, ...] = ()
    status: Source


@dataclass(frozen=True, kw_only=True)
class Action(Record):
    """What a muscle does at a joint; of several actions the one that matters after the operation."""

    joint: Joint
    movement: Movement


@dataclass(frozen=True, kw_only=True)
class Muscle(Record):
    """A muscle, or a segment of one (`part_of`). plain: where it is, in everyday words.

    action: what it does; with it the pull of gravity against the muscle can be modelled.
    """

    id: str
    name: Text
    plain: Text
    part_of: str | None = None
    action: Action | None = None


@dataclass(frozen=True, kw_only=True)
class Equipment(Record):
    """A thing the patient needs. check: what to look at before use."""

    id: str
    name: Text
    check: Text | None = None


@dataclass(frozen=True, kw_only=True)
class Strain(Record):
    """A load on the body that some people must avoid, and what to ask or watch."""

    id: str
    name: Text
    advice: Text


@dataclass(frozen=True, kw_only=True)
class Term(Record):
    """A glossary entry."""

    id: str
    term: Text
    meaning: Text
