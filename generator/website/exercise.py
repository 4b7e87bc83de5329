"""Makes the page of an exercise: first for whom and when, then dose, dangers, steps and limits."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from generator.catalogue.arranged import Placed
from generator.catalogue.base import Text
from generator.catalogue.exercise import Exercise, Variation
from generator.catalogue.in_force import withheld_variations
from generator.catalogue.programme import Phase, Programme, Use
from generator.catalogue.terms import Change, Helper, Then
from generator.website.addresses import exercise_page, phase_page, programme_page
from generator.website.page import Page
from generator.website.phase_items import often
from generator.website.sequence import neighbours
from generator.website.shared import (
    Forbidden,
    Warned,
    entry_words,
    forbidden_in,
    untranslated,
    warned,
)
from generator.website.values import SiteInput
from generator.wording.doses import DosePhrase, dose
from generator.wording.phrases import list_of, number, pain, place_of
from generator.wording.phrases import phase as phase_words
from generator.wording.terms import term
from generator.wording.weeks import both_tracks


@dataclass(frozen=True)
class Stay:
    """What the page says about one phase that the exercise belongs to.

    where: number and name of the phase. later: when it may begin, where later than the phase. gated: whether
    the phase itself must be opened by the physiotherapist. ladder: all dose steps, large form with load.
    limit: the pain limit, and the same for a list.
    """

    programme: Programme
    programme_page: str
    phase: Phase
    page: str
    where: str
    short: str
    when: str
    later: str
    condition: Text | None
    gated: bool
    place: str
    compared: str
    forbidden: tuple[Forbidden, ...]
    exercise: Exercise
    variation: Variation | None
    dose: DosePhrase
    often: str
    ladder: tuple[str, ...]
    limit: str
    after: str
    note: Text | None


@dataclass(frozen=True)
class Doing:
    """How it is done in the phases that share the same words: a hold may last longer in a later phase."""

    phases: str
    exercise: Exercise
    cautions: tuple[Warned, ...]


@dataclass(frozen=True)
class Form:
    """An easier or harder form, with the phases that permit it and its own dangers."""

    variation: Variation
    phases: str
    things: str
    cautions: tuple[Warned, ...]


def exercise_pages(site: SiteInput) -> tuple[Page, ...]:
    """Return the page of every exercise."""
    around = neighbours(site)
    return tuple(_page(site, one, *around[id_]) for id_, one in site.catalogue.exercises.items())


def _page(site: SiteInput, exercise: Exercise, before: str | None, after: str | None) -> Page:
    known = site.catalogue.exercises
    stays = tuple(_stays(site, exercise.id))
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
            "doings": doings,
            "stop_points": _stop_points(site, stays),
            "facts": _facts(site, exercise),
            "things": tuple(site.catalogue.equipment[thing] for thing in exercise.equipment),
            "first": tuple((known[one].name, exercise_page(one)) for one in exercise.requires),
            "one_of": tuple((known[one].name, exercise_page(one)) for one in exercise.requires_one_of),
            "used": tuple(stay for stay in stays if stay.variation),
            "easier": _forms(site, exercise, stays, Change.EASIER),
            "harder": _forms(site, exercise, stays, Change.HARDER),
            "strains": tuple(site.catalogue.strains[strain] for strain in exercise.strains),
            "helper": exercise.helper_role if exercise.helper is not Helper.NONE else None,
            "untranslated": untranslated(exercise),
            "before": known[before] if before else None,
            "after": known[after] if after else None,
            "page_of": lambda other: exercise_page(other.id),
        },
        doses=tuple(dict.fromkeys(figure for stay in stays for figure in _figures(site, stay))),
        required=_required(stays, doings),
        previous=exercise_page(before) if before else "",
        next=exercise_page(after) if after else "",
    )


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


def _figures(site: SiteInput, stay: Stay) -> Iterator[str]:
    use = next(one for one in stay.phase.uses if one.use == stay.exercise.id)
    for step in use.dose_steps:
        yield dose(site.voice, step, stay.exercise.dose).big


def _stays(site: SiteInput, exercise: str) -> Iterator[Stay]:
    for programme, phase, use in site.catalogue.uses_of(exercise):
        places = site.orders[programme.id].of_phase(phase.number)
        placed = next(one for one in places if one.exercise == exercise)
        yield _stay(site, programme, phase, use, placed)


def _stay(site: SiteInput, programme: Programme, phase: Phase, use: Use, placed: Placed) -> Stay:
    voice, order = site.voice, site.orders[programme.id]
    exercise = site.exercise_in(programme.id, phase.number, use.use)
    phrases = [dose(voice, step, exercise.dose) for step in use.dose_steps]
    short = phase_words(voice, phase.number)
    several = len({one.id for one, _, _ in site.catalogue.uses_of(use.use)}) > 1
    where = voice.gettext("{phase}: {name}").format(phase=short, name=phase.name)
    return Stay(
        programme=programme,
        programme_page=programme_page(programme.id),
        phase=phase,
        page=phase_page(programme.id, phase.number),
        where=where,
        short=f"{programme.name}, {short}" if several else short,
        when=voice.opening(both_tracks(voice, order.windows[phase.number - 1])),
        later=voice.opening(entry_words(voice, phase, use)),
        condition=use.when,
        gated=phase.number > 1,
        place=place_of(voice, placed.place, len(order.of_phase(phase.number))),
        compared=_compared(site, programme, placed),
        forbidden=forbidden_in(voice, programme, phase),
        exercise=exercise,
        variation=exercise.variations[use.variation] if use.variation else None,
        dose=phrases[0],
        often=often(voice, use),
        ladder=tuple(f"{phrase.big} {phrase.load}".strip() for phrase in phrases),
        limit=pain(voice, phase.pain.during),
        after=_after(site, use),
        note=use.note,
    )


def _compared(site: SiteInput, programme: Programme, placed: Placed) -> str:
    """Return how hard it is beside the exercise before it; empty where activity does not order them."""
    if placed.place == 1 or placed.level is None:
        return ""
    earlier = site.orders[programme.id].of_phase(placed.phase)[placed.place - 2]
    if earlier.level is None:
        return ""
    alike = site.voice.gettext("about as hard as exercise {place}")
    words = alike if earlier.level == placed.level else site.voice.gettext("harder than exercise {place}")
    return words.format(place=number(site.voice, earlier.place))


def _after(site: SiteInput, use: Use) -> str:
    """Return what becomes of the exercise when the phase is over."""
    if use.then is Then.GOES_ON:
        return site.voice.gettext("It goes on in the next phase.")
    if use.then is Then.ENDS or use.replaced_by is None:
        return site.voice.gettext("It ends with this phase.")
    words = site.voice.gettext("After this phase it is replaced by: {exercise}")
    return words.format(exercise=site.catalogue.exercises[use.replaced_by].name)


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


def _forms(site: SiteInput, exercise: Exercise, stays: tuple[Stay, ...], change: Change) -> tuple[Form, ...]:
    """Return the easier or harder forms that a phase permits; a form that none permits is not named."""
    found = []
    for variation in exercise.variations.values():
        permitting = [stay for stay in stays if _permits(site, stay, variation)]
        if variation.is_ is not change or not permitting:
            continue
        everywhere = len(permitting) == len(stays)
        phases = "" if everywhere else list_of(site.voice, (stay.short for stay in permitting))
        things = list_of(site.voice, (str(site.catalogue.equipment[one].name) for one in variation.equipment))
        found.append(Form(variation, phases, things, warned(site.voice, variation.cautions)))
    return tuple(found)


def _permits(site: SiteInput, stay: Stay, variation: Variation) -> bool:
    if stay.variation is not None and stay.variation.id == variation.id:
        return False
    forbidden = withheld_variations(site.catalogue.exercises, stay.programme, stay.phase)
    withheld = forbidden | site.withheld.get((stay.programme.id, stay.phase.number), frozenset())
    return f"{stay.exercise.id}/{variation.id}" not in withheld
