"""Words an estimate for clinicians: number, interval, what it rests on, and a mark to draw.

A judgement has no number: what it comes to serves the order alone and must not be read as a measured one.
"""

from __future__ import annotations

from dataclasses import dataclass

from generator.catalogue.base import Text
from generator.catalogue.estimates import Estimate
from generator.catalogue.judgement import JudgedAs, Judgement
from generator.catalogue.programme import Band
from generator.website.values import SiteInput
from generator.wording.phrases import activity, list_of, number, parts_of, people, percent, row_of, studies
from generator.wording.terms import clinical_term, term
from generator.wording.voice import Voice

_TOP = 100.0


@dataclass(frozen=True)
class Mark:
    """An estimate on a line from 0 to 100 %MVIC, with the band of its phase behind it.

    low, high: the whisker's ends. beyond: whether it goes on past 100. judged: drawn hollow.
    """

    mean: float
    low: float
    high: float
    beyond: bool
    judged: bool
    band: tuple[float, float] | None


@dataclass(frozen=True)
class EstimateView:
    """One muscle's estimate in words; parts that do not apply are empty.

    judged_by: role and reason as typed.
    """

    muscle: Text
    value: str
    interval: str
    basis: str
    counts: str
    doubt: tuple[str, ...]
    caveats: tuple[str, ...]
    judged_by: str
    mark: Mark


def estimate_view(site: SiteInput, estimate: Estimate, band: Band | None = None) -> EstimateView:
    """Return an estimate in words, with the mark that is drawn beside them."""
    voice, judged = site.voice, estimate.judgement
    return EstimateView(
        muscle=site.catalogue.muscles[estimate.muscle].name,
        value="" if judged else activity(voice, estimate.mean),
        interval="" if judged else _interval(voice, estimate),
        basis=voice.opening(_judged(site, judged) if judged else term(voice, estimate.basis)),
        counts="" if judged else row_of(voice, (studies(voice, estimate.k), people(voice, estimate.n))),
        doubt=() if judged else _doubt(voice, estimate),
        caveats=tuple(_caveats(site, estimate)),
        judged_by=f"{judged.role}: {judged.reason}" if judged else "",
        mark=_mark(estimate, band),
    )


def form_name(site: SiteInput, form: str) -> str:
    """Return the name of an exercise, or of one of its variations (``exercise/variation``)."""
    id_, _, variation = form.partition("/")
    exercise = site.catalogue.exercises[id_]
    if not variation:
        return str(exercise.name)
    words = site.voice.gettext("{exercise}, “{form}”")
    return words.format(exercise=exercise.name, form=exercise.variations[variation].name)


def range_words(voice: Voice, low: float, high: float) -> str:
    """Return an interval in whole %MVIC; below 0 it goes down to nothing."""
    words = voice.pgettext("an interval", "{low} to {high}")
    return words.format(low=number(voice, max(low, 0.0), 0), high=number(voice, high, 0))


def _interval(voice: Voice, estimate: Estimate) -> str:
    if estimate.low is None or estimate.high is None:
        return ""
    return range_words(voice, estimate.low, estimate.high)


def _judged(site: SiteInput, judgement: Judgement) -> str:
    voice, names = site.voice, [form_name(site, one) for one in judgement.others]
    if judgement.kind is JudgedAs.LIKE:
        return voice.gettext("judged, not measured: like {exercise}").format(exercise=names[0])
    if judgement.kind is JudgedAs.BETWEEN:
        words = voice.gettext("judged, not measured: between {exercises}")
        return words.format(exercises=list_of(voice, names))
    return voice.gettext("judged, not measured: no load on this muscle")


def _doubt(voice: Voice, estimate: Estimate) -> tuple[str, ...]:
    found = []
    if estimate.k > 1 and estimate.i_squared is not None:
        found.append(f"I² {percent(voice, estimate.i_squared * 100)}")
    if estimate.prediction is not None:
        words = voice.gettext("A further study may find {interval}")
        found.append(words.format(interval=range_words(voice, *estimate.prediction)))
    if estimate.condition is not None:
        part = clinical_term(voice, estimate.condition.part)
        electrode = clinical_term(voice, estimate.condition.electrode)
        found.append(voice.opening(row_of(voice, (part, electrode))))
    return tuple(found)


def _caveats(site: SiteInput, estimate: Estimate) -> list[str]:
    found: dict[str, list[str]] = {}
    for one in estimate.caveats:
        study = site.catalogue.studies.get(one.study)
        named = found.setdefault(site.voice.opening(term(site.voice, one.kind)), [])
        if study is not None:
            named.append(f"{study.authors} {study.year}")
    words = site.voice.gettext("{caveat} ({studies})")
    return [
        words.format(caveat=caveat, studies=parts_of(site.voice, named)) if named else caveat
        for caveat, named in found.items()
    ]


def _mark(estimate: Estimate, band: Band | None) -> Mark:
    low = estimate.mean if estimate.low is None else estimate.low
    high = estimate.mean if estimate.high is None else estimate.high
    return Mark(
        mean=min(max(estimate.mean, 0.0), _TOP),
        low=min(max(low, 0.0), _TOP),
        high=min(max(high, 0.0), _TOP),
        beyond=high > _TOP,
        judged=estimate.judgement is not None,
        band=(band.above, min(band.up_to, _TOP)) if band else None,
    )
