"""Words the evidence for clinicians: each measurement with its study, each place with its reasons."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from generator.catalogue.arranged import Estimate, Placed, Reason, ReasonKind
from generator.catalogue.base import Text
from generator.catalogue.clinic import Study
from generator.catalogue.exercise import Exercise, Measurement
from generator.catalogue.programme import Programme
from generator.catalogue.terms import Part
from generator.website.values import SiteInput
from generator.wording.phrases import activity, list_of, number, people, studies
from generator.wording.terms import clinical_term, term
from generator.wording.voice import Voice
from generator.wording.weeks import not_before_week

_TOP = 100.0


@dataclass(frozen=True)
class Mark:
    """An estimate on a line from 0 to 100 %MVIC, with the band of its phase behind it."""

    mean: float
    low: float
    high: float


@dataclass(frozen=True)
class PlaceRow:
    """Why an exercise has its place: estimate, where it stands to the band, and reasons as sentences."""

    exercise: Exercise
    place: str
    estimate: str
    people: str
    studies: str
    basis: str
    band: str
    mark: Mark | None
    muscle: Text | None
    reasons: tuple[str, ...]


@dataclass(frozen=True)
class MeasuredRow:
    """One published value: what was measured, where it is printed, and what became of it.

    where: table or page. how, load: how it was measured. recalled: which numbers come from memory.
    used: whether it is in the estimate. aside: why not, in the source language.
    """

    muscle: Text
    mean: str
    sd: str
    people: str
    study: Study
    where: str
    how: str
    load: str
    recalled: str
    used: str
    aside: str


@dataclass(frozen=True)
class Evidence:
    """The measurements of one exercise, or of one of its forms (`form` is then its name)."""

    exercise: Exercise
    form: Text | None
    rows: tuple[MeasuredRow, ...]


def place_row(site: SiteInput, programme: Programme, placed: Placed) -> PlaceRow:
    """Return why an exercise stands where it stands."""
    voice, estimate = site.voice, placed.estimate
    band = programme.phase(placed.phase).band
    position = voice.opening(term(voice, placed.band_position))
    if placed.above_by:
        words = voice.gettext("{position}, by {points} points")
        position = words.format(position=position, points=number(voice, placed.above_by, 1))
    return PlaceRow(
        exercise=site.catalogue.exercises[placed.exercise],
        place=number(voice, placed.place),
        estimate=activity(voice, estimate.mean) if estimate else "",
        people=people(voice, estimate.n) if estimate else "",
        studies=studies(voice, estimate.k) if estimate else "",
        basis=voice.opening(term(voice, estimate.basis)) if estimate else "",
        band=position,
        mark=Mark(min(estimate.mean, _TOP), band.above, min(band.up_to, _TOP)) if estimate else None,
        muscle=site.catalogue.muscles[estimate.muscle].name if estimate else None,
        reasons=tuple(_reason(site, placed, reason) for reason in placed.reasons),
    )


def _reason(site: SiteInput, placed: Placed, reason: Reason) -> str:
    voice, exercise = site.voice, site.catalogue.exercises[placed.exercise]
    if reason.kind is ReasonKind.ROLE:
        return voice.gettext("Role: {role}.").format(role=clinical_term(voice, exercise.role))
    if reason.kind is ReasonKind.DEMAND:
        return voice.gettext("Demand: {demand}.").format(demand=clinical_term(voice, exercise.demand))
    if reason.kind is ReasonKind.ACTIVITY and reason.number is not None:
        words = voice.gettext("Ordered by activity: {activity}.")
        return words.format(activity=activity(voice, reason.number))
    if reason.kind is ReasonKind.PREREQUISITE and reason.other is not None:
        words = voice.gettext("After {exercise}, which must go well first.")
        return words.format(exercise=site.catalogue.exercises[reason.other].name)
    if reason.kind is ReasonKind.ENTRY and reason.number is not None:
        return voice.opening(not_before_week(voice, round(reason.number))) + "."
    return voice.opening(term(voice, reason.kind)) + "."


def evidence_of(site: SiteInput, programme: Programme) -> tuple[Evidence, ...]:
    """Return the measurements of every exercise of a programme, in the order of introduction."""
    order = sorted(site.orders[programme.id].places, key=lambda one: one.overall)
    first = {placed.exercise: placed for placed in reversed(order)}
    return tuple(
        evidence
        for id_ in dict.fromkeys(placed.exercise for placed in order)
        for evidence in _of_exercise(site, site.catalogue.exercises[id_], first[id_].estimate)
    )


def _of_exercise(site: SiteInput, exercise: Exercise, estimate: Estimate | None) -> Iterator[Evidence]:
    if exercise.activity:
        yield Evidence(exercise, None, tuple(_row(site, one, estimate) for one in exercise.activity))
    for variation in exercise.variations.values():
        if variation.activity:
            yield Evidence(exercise, variation.name, tuple(_row(site, m, None) for m in variation.activity))


def _row(site: SiteInput, item: Measurement, estimate: Estimate | None) -> MeasuredRow:
    voice, study = site.voice, site.catalogue.studies[item.study]
    measured = item.n or study.n
    aside = _aside(item, estimate)
    counted = estimate is not None and estimate.muscle == item.muscle and not aside
    used = voice.gettext("In the estimate") if counted else ""
    return MeasuredRow(
        muscle=site.catalogue.muscles[item.muscle].name,
        mean=number(voice, item.mean, 1),
        sd=number(voice, item.sd, 1) if item.sd is not None else "",
        people=number(voice, measured) if measured else "",
        study=study,
        where=item.at_place,
        how=_how(voice, item, study),
        load=item.load,
        recalled=_recalled(voice, item),
        used=voice.gettext("Set aside:") if aside else used,
        aside=aside,
    )


def _aside(item: Measurement, estimate: Estimate | None) -> str:
    if estimate is None or estimate.muscle != item.muscle:
        return ""
    found = (one.reason for one in estimate.set_aside if (one.study, one.mean) == (item.study, item.mean))
    return next(found, "")


def _how(voice: Voice, item: Measurement, study: Study) -> str:
    statistic, part = clinical_term(voice, item.statistic), item.part or study.part
    electrode = clinical_term(voice, item.electrode or study.electrode)
    if part is Part.UNKNOWN:
        words = voice.gettext("{statistic}, part of the repetition not stated, {electrode}")
        return voice.opening(words.format(statistic=statistic, electrode=electrode))
    if part is Part.MEAN:
        words = voice.gettext("{statistic} over the repetition, {electrode}")
        return voice.opening(words.format(statistic=statistic, electrode=electrode))
    words = voice.gettext("{statistic} of the {part}, {electrode}")
    part_words = clinical_term(voice, part)
    return voice.opening(words.format(statistic=statistic, part=part_words, electrode=electrode))


def _recalled(voice: Voice, item: Measurement) -> str:
    names = {"mean": clinical_term(voice, item.statistic)}
    if item.sd is not None:
        names["sd"] = voice.gettext("standard deviation")
    if item.n is not None:
        names["n"] = voice.gettext("number of people")
    return voice.opening(list_of(voice, (name for key, name in names.items() if key not in item.read)))
