"""Makes the page of an exercise: first for whom and when, then dose, dangers, steps and limits."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from generator.catalogue.exercise import Exercise
from generator.catalogue.terms import Change, Helper
from generator.website.addresses import exercise_page
from generator.website.exercise_forms import forms_of
from generator.website.figure_view import figure_of
from generator.website.page import Page
from generator.website.sequence import neighbours
from generator.website.shared import Warned, untranslated, warned
from generator.website.stays import Stay, figures_of, stays_of
from generator.website.values import SiteInput
from generator.wording.phrases import list_of
from generator.wording.terms import term


@dataclass(frozen=True)
class Doing:
    """How it is done in the phases that share the same words: a hold may last longer in a later phase."""

    phases: str
    exercise: Exercise
    cautions: tuple[Warned, ...]


def exercise_pages(site: SiteInput) -> tuple[Page, ...]:
    """Return the page of every exercise."""
    around = neighbours(site)
    return tuple(_page(site, one, *around[id_]) for id_, one in site.catalogue.exercises.items())


def _page(site: SiteInput, exercise: Exercise, before: str | None, after: str | None) -> Page:
    known = site.catalogue.exercises
    stays = tuple(stays_of(site, exercise.id))
    doings = _doings(site, exercise, stays)
    return Page(
        path=exercise_page(exercise.id),
        template="exercise.html",
        title=str(exercise.name),
        description=str(exercise.purpose),
        values={
            "exercise": exercise,
            "safety": site.catalogue.safety,
            "stays": stays,
            **_drawn(site, exercise),
            "doings": doings,
            "stop_points": _stop_points(site, stays),
            "facts": _facts(site, exercise),
            "things": tuple(site.catalogue.equipment[thing] for thing in exercise.equipment),
            "first": tuple((known[one].name, exercise_page(one)) for one in exercise.requires),
            "one_of": tuple((known[one].name, exercise_page(one)) for one in exercise.requires_one_of),
            "used": tuple(stay for stay in stays if stay.variation),
            "easier": forms_of(site, exercise, stays, Change.EASIER),
            "harder": forms_of(site, exercise, stays, Change.HARDER),
            "backs": tuple(stay for stay in stays if stay.back),
            "strains": tuple(site.catalogue.strains[strain] for strain in exercise.strains),
            "helper": exercise.helper_role if exercise.helper is not Helper.NONE else None,
            "untranslated": untranslated(exercise),
            "before": known[before] if before else None,
            "after": known[after] if after else None,
            "page_of": lambda other: exercise_page(other.id),
        },
        doses=tuple(dict.fromkeys(figure for stay in stays for figure in figures_of(site, stay))),
        required=_required(stays, doings),
        previous=exercise_page(before) if before else "",
        next=exercise_page(after) if after else "",
    )


def _drawn(site: SiteInput, exercise: Exercise) -> dict[str, Any]:
    """Return the pictures of the exercise and of its forms, and whether anything was drawn at all."""
    forms = ((one.id, figure_of(site, exercise, one)) for one in exercise.variations.values())
    return {
        "figure": figure_of(site, exercise),
        "form_figures": {id_: figure for id_, figure in forms if figure is not None},
        "drawn": bool(site.figures),
    }


def _required(stays: tuple[Stay, ...], doings: tuple[Doing, ...]) -> tuple[str, ...]:
    found: list[str] = []
    for stay in stays:
        found += [stay.where, stay.dose.spoken, *([stay.later] if stay.later else [])]
        found += [str(rule.words) for group in stay.forbidden for rule in group.rules]
    for doing in doings:
        found += [
            str(doing.exercise.start),
            *map(str, doing.exercise.steps),
            *map(str, doing.exercise.limits),
        ]
        for one in doing.cautions:
            found += [str(one.hazard), str(one.consequence), str(one.avoid)]
    return tuple(dict.fromkeys(found))


def _stop_points(site: SiteInput, stays: tuple[Stay, ...]) -> tuple[str, ...]:
    """Return when to stop: above the pain limit, named by phase only where the limits differ."""
    voice = site.voice
    limits = tuple(dict.fromkeys(stay.limit for stay in stays))
    goes_above = voice.gettext("Pain at the operated place goes above {limit}.")
    in_phase = voice.gettext("{phase}: pain at the operated place goes above {limit}.")
    if len(limits) == 1:
        points = [goes_above.format(limit=limits[0])]
    else:
        points = [in_phase.format(phase=stay.short, limit=stay.limit) for stay in stays]
    return (*points, voice.gettext("The pain is sharp or sudden."))


def _doings(site: SiteInput, exercise: Exercise, stays: tuple[Stay, ...]) -> tuple[Doing, ...]:
    """Return the ways of doing it, each once; phases are named only where they differ."""
    groups: list[tuple[list[Stay], Exercise, tuple[Warned, ...]]] = []
    for stay in stays:
        use = next(one for one in stay.phase.uses if one.use == exercise.id)
        own = stay.variation.cautions if stay.variation else ()
        cautions = warned(site.voice, (*exercise.cautions, *own, *use.cautions))
        for members, words, dangers in groups:
            if (words, dangers) == (stay.exercise, cautions):
                members.append(stay)
                break
        else:
            groups.append(([stay], stay.exercise, cautions))
    if not groups:
        return (Doing("", exercise, warned(site.voice, exercise.cautions)),)
    return tuple(
        Doing(
            list_of(site.voice, (stay.short for stay in members)) if len(groups) > 1 else "", words, dangers
        )
        for members, words, dangers in groups
    )


def _facts(site: SiteInput, exercise: Exercise) -> tuple[dict[str, str], ...]:
    voice = site.voice
    where = list_of(voice, (term(voice, surface) for surface in exercise.surface), "or")
    facts = [
        {"label": voice.gettext("Where"), "value": voice.opening(where)},
        {"label": voice.gettext("Position"), "value": voice.opening(term(voice, exercise.posture))},
        {"label": voice.gettext("To hold on to"), "value": voice.opening(term(voice, exercise.support))},
        {"label": voice.gettext("Helper"), "value": voice.opening(term(voice, exercise.helper))},
    ]
    if exercise.anchor:
        height = voice.opening(term(voice, exercise.anchor))
        facts.append({"label": voice.gettext("Height of the band"), "value": height})
    return tuple(facts)
