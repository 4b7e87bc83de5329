"""Words the evidence for clinicians: each place, each measurement with its study, what each form changes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from generator.catalogue.arranged import Placed
from generator.catalogue.base import Text
from generator.catalogue.clinic import Study
from generator.catalogue.estimates import Estimate, SetAside
from generator.catalogue.exercise import Exercise, Measurement
from generator.catalogue.programme import Programme
from generator.catalogue.terms import Part
from generator.website.estimates import EstimateView, estimate_view
from generator.website.reasons import reason_sentences
from generator.website.values import SiteInput
from generator.wording.phrases import list_of, number, parts_of
from generator.wording.terms import clinical_term, term
from generator.wording.voice import Voice


@dataclass(frozen=True)
class PlaceRow:
    """Why an exercise has its place: estimates, where it stands to the band, and reasons as sentences.

    form: the variation used, or None. anchor: where its measurements stand on the page, or "".
    first: of the most active muscle. not_measured: names of muscles.
    """

    exercise: Exercise
    form: Text | None
    anchor: str
    place: str
    first: EstimateView | None
    others: tuple[EstimateView, ...]
    not_measured: str
    band: str
    accepted: str
    reasons: tuple[str, ...]


@dataclass(frozen=True)
class MeasuredRow:
    """One published value: what was measured, where it is printed, and what became of it.

    where: table or page. how, load: how it was measured. recalled: which numbers come from memory.
    used: whether it is in an estimate, or why not. caveats: what to know of it there.
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
    caveats: tuple[str, ...]


@dataclass(frozen=True)
class Evidence:
    """The measurements of one exercise, or of one of its forms (`form` is then its name), and their pools."""

    exercise: Exercise
    form: Text | None
    anchor: str
    pools: tuple[EstimateView, ...]
    rows: tuple[MeasuredRow, ...]


def place_row(site: SiteInput, programme: Programme, placed: Placed) -> PlaceRow:
    """Return why an exercise stands where it stands."""
    voice, phase = site.voice, programme.phase(placed.phase)
    exercise = site.catalogue.exercises[placed.exercise]
    use = next(one for one in phase.uses if one.use == placed.exercise)
    position = voice.opening(term(voice, placed.band_position))
    if placed.above_by:
        words = voice.gettext("{position}, by {points} points")
        position = words.format(position=position, points=number(voice, placed.above_by, 1))
    muscles = (str(site.catalogue.muscles[muscle].name) for muscle in placed.not_measured)
    leave = placed.accepted
    return PlaceRow(
        exercise=exercise,
        form=exercise.variations[use.variation].name if use.variation else None,
        anchor=_anchor_of(exercise, use.variation),
        place=number(voice, placed.place),
        first=estimate_view(site, placed.estimate, phase.band) if placed.estimate else None,
        others=tuple(estimate_view(site, one, phase.band) for one in placed.others),
        not_measured=list_of(voice, muscles),
        band=position,
        accepted=f"{leave.role}: {leave.reason}" if leave else "",
        reasons=reason_sentences(site, placed),
    )


def evidence_of(site: SiteInput, programme: Programme) -> tuple[Evidence, ...]:
    """Return the measurements of every exercise of a programme, in the order of introduction."""
    order = sorted(site.orders[programme.id].places, key=lambda one: one.overall)
    return tuple(
        evidence
        for id_ in dict.fromkeys(placed.exercise for placed in order)
        for evidence in _of_exercise(site, programme, site.catalogue.exercises[id_])
    )


def _anchor_of(exercise: Exercise, variation: str | None) -> str:
    """Return where the measurements of the form used stand, else those of its exercise; "" without any."""
    if variation and exercise.variations[variation].activity:
        return _anchor(f"{exercise.id}/{variation}")
    return _anchor(exercise.id) if exercise.activity else ""


def _anchor(form: str) -> str:
    return "evidence-" + form.replace("/", "-form-")


def _of_exercise(site: SiteInput, programme: Programme, exercise: Exercise) -> Iterator[Evidence]:
    forms: list[tuple[str, Text | None, tuple[Measurement, ...]]]
    forms = [(exercise.id, None, exercise.activity)]
    forms += [(f"{exercise.id}/{one.id}", one.name, one.activity) for one in exercise.variations.values()]
    for form, name, activity in forms:
        if activity:
            pools = (site.estimates.get((form, muscle)) for muscle in programme.muscles)
            yield Evidence(
                exercise,
                name,
                _anchor(form),
                tuple(estimate_view(site, one) for one in pools if one is not None),
                tuple(_row(site, form, item) for item in activity),
            )


def _row(site: SiteInput, form: str, item: Measurement) -> MeasuredRow:
    voice, study = site.voice, site.catalogue.studies[item.study]
    measured = item.n or study.n
    whole = site.catalogue.muscles[item.muscle].part_of or item.muscle
    estimate = site.estimates.get((form, whole))
    aside = _aside(site.set_aside.get((form, whole), ()), item)
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
        used=_used(voice, estimate, aside),
        caveats=() if aside else _caveats(voice, estimate, item.study),
    )


def _aside(listed: tuple[SetAside, ...], item: Measurement) -> SetAside | None:
    found = (one for one in listed if (one.study, one.mean) == (item.study, item.mean))
    return next((one for one in found if one.muscle in ("", item.muscle)), None)


def _used(voice: Voice, estimate: Estimate | None, aside: SetAside | None) -> str:
    if aside is not None:
        words = voice.gettext("Set aside: {reasons}")
        return words.format(reasons=parts_of(voice, (term(voice, kind) for kind in aside.kinds)))
    return voice.gettext("In the estimate") if estimate is not None else voice.gettext("Not for the order")


def _caveats(voice: Voice, estimate: Estimate | None, study: str) -> tuple[str, ...]:
    kinds = (one.kind for one in estimate.caveats if one.study == study) if estimate else ()
    return tuple(voice.opening(term(voice, kind)) for kind in dict.fromkeys(kinds))


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
