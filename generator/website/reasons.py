"""Says why an exercise has its place, each reason as a sentence for clinicians."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from generator.catalogue.arranged import Placed, Reason, ReasonKind
from generator.website.estimates import form_name
from generator.website.values import SiteInput
from generator.wording.phrases import activity, list_of, number, people, percent
from generator.wording.terms import clinical_term, term
from generator.wording.weeks import not_before_week

Sentence = Callable[[SiteInput, Placed, Reason], str]


def reason_sentences(site: SiteInput, placed: Placed) -> tuple[str, ...]:
    """Return the reasons for a place, the strongest first."""
    judged = placed.estimate is not None and placed.estimate.judgement is not None
    # What a judgement comes to is no percentage to be read as a measured one.
    kept = (one for one in placed.reasons if not (judged and one.kind is ReasonKind.ACTIVITY))
    said = (_sentence(site, placed, reason) for reason in kept)
    return tuple(dict.fromkeys(said))


def _sentence(site: SiteInput, placed: Placed, reason: Reason) -> str:
    say = _SENTENCES.get(reason.kind)
    return say(site, placed, reason) if say else site.voice.opening(term(site.voice, reason.kind)) + "."


def _role(site: SiteInput, placed: Placed, _: Reason) -> str:
    role = site.catalogue.exercises[placed.exercise].role
    return site.voice.gettext("Role: {role}.").format(role=clinical_term(site.voice, role))


def _demand(site: SiteInput, placed: Placed, _: Reason) -> str:
    demand = site.catalogue.exercises[placed.exercise].demand
    return site.voice.gettext("Demand: {demand}.").format(demand=clinical_term(site.voice, demand))


def _activity(site: SiteInput, _: Placed, reason: Reason) -> str:
    words = site.voice.gettext("Ordered by activity: {activity}.")
    return words.format(activity=activity(site.voice, reason.number or 0.0))


def _judged(site: SiteInput, placed: Placed, _: Reason) -> str:
    others = [one.other for one in placed.reasons if one.kind is ReasonKind.JUDGED and one.other]
    if not others:
        return site.voice.gettext("Judged to put no load on the muscle.")
    words = site.voice.gettext("Its activity was judged after that of: {exercises}.")
    return words.format(exercises=list_of(site.voice, (form_name(site, one) for one in others)))


def _prerequisite(site: SiteInput, _: Placed, reason: Reason) -> str:
    words = site.voice.gettext("After {exercise}, which must go well first.")
    return words.format(exercise=_other(site, reason))


def _entry(site: SiteInput, _: Placed, reason: Reason) -> str:
    return site.voice.opening(not_before_week(site.voice, round(reason.number or 0))) + "."


def _about_as_hard(site: SiteInput, _: Placed, reason: Reason) -> str:
    words = site.voice.gettext("On one level with {exercise}: about as hard.")
    return words.format(exercise=_other(site, reason))


def _tie(site: SiteInput, _: Placed, reason: Reason) -> str:
    if reason.muscle is None:
        words = site.voice.gettext("Equal to {exercise} by activity; then the id counts.")
        return words.format(exercise=_other(site, reason))
    words = site.voice.gettext("Equal to {exercise} by the most active muscle; then {muscle} counts.")
    muscle = site.catalogue.muscles[reason.muscle].name
    return words.format(exercise=_other(site, reason), muscle=muscle)


def _same_people(site: SiteInput, placed: Placed, reason: Reason) -> str:
    voice, found = site.voice, placed.comparison
    words = voice.ngettext(
        "Of {both} study of both in the same people, {harder} found this harder than {exercise}.",
        "Of {both} studies of both in the same people, {harder} found this harder than {exercise}.",
        reason.of or 0,
    )
    said = words.format(
        both=number(voice, reason.of or 0),
        harder=number(voice, round(reason.number or 0)),
        exercise=_other(site, reason),
    )
    if found is not None and found.contradicts:
        return f"{said} {voice.gettext('That speaks against this order.')}"
    return said


def _chance(site: SiteInput, _: Placed, reason: Reason) -> str:
    words = site.voice.gettext("By the pooled numbers: harder than {exercise} with a chance of {chance}.")
    return words.format(
        exercise=_other(site, reason), chance=percent(site.voice, (reason.number or 0.0) * 100)
    )


def _next_study(site: SiteInput, _: Placed, reason: Reason) -> str:
    words = site.voice.gettext("A study that measures both in the same people would settle it with {people}.")
    return words.format(people=people(site.voice, round(reason.number or 0)))


def _late(site: SiteInput, _: Placed, reason: Reason) -> str:
    words = site.voice.gettext(
        "Above the band by {points} points, within the programme's margin: late in the phase."
    )
    return words.format(points=number(site.voice, reason.number or 0.0, 1))


def _accepted(site: SiteInput, _: Placed, reason: Reason) -> str:
    words = site.voice.gettext("Above the band; a clinician accepts it up to {activity}.")
    return words.format(activity=activity(site.voice, reason.number or 0.0))


def _upper_limit(site: SiteInput, placed: Placed, reason: Reason) -> str:
    if placed.estimate is not None and placed.estimate.judgement is not None:
        return site.voice.gettext("What it was judged after may lie above the band.")
    words = site.voice.gettext("The upper end of its interval, {activity}, lies above the band.")
    return words.format(activity=activity(site.voice, reason.number or 0.0))


def _other(site: SiteInput, reason: Reason) -> str:
    return form_name(site, reason.other) if reason.other else ""


_SENTENCES: Mapping[ReasonKind, Sentence] = MappingProxyType(
    {
        ReasonKind.ROLE: _role,
        ReasonKind.DEMAND: _demand,
        ReasonKind.ACTIVITY: _activity,
        ReasonKind.JUDGED: _judged,
        ReasonKind.PREREQUISITE: _prerequisite,
        ReasonKind.ENTRY: _entry,
        ReasonKind.ABOUT_AS_HARD: _about_as_hard,
        ReasonKind.TIE: _tie,
        ReasonKind.SAME_PEOPLE: _same_people,
        ReasonKind.CHANCE: _chance,
        ReasonKind.NEXT_STUDY: _next_study,
        ReasonKind.LATE: _late,
        ReasonKind.ACCEPTED: _accepted,
        ReasonKind.UPPER_LIMIT: _upper_limit,
    }
)
