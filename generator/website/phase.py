"""Makes the page of a phase: when to start, what is restricted, the session in order, what must work next."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby

from generator.catalogue.arranged import Placed
from generator.catalogue.base import Text
from generator.catalogue.clinic import Equipment
from generator.catalogue.dose import DoseKind
from generator.catalogue.exercise import Exercise, Variation
from generator.catalogue.programme import Milestone, Phase, Programme, Use
from generator.catalogue.terms import Surface
from generator.website.addresses import exercise_page, phase_page, programme_page
from generator.website.page import Page
from generator.website.shared import entry_words, forbidden_in, untranslated
from generator.website.values import BookletFact, SiteInput
from generator.wording.doses import DosePhrase, dose
from generator.wording.isolation import isolate, plain
from generator.wording.phrases import file_size, frequency, number, pages, pain
from generator.wording.phrases import phase as phase_words
from generator.wording.terms import term
from generator.wording.voice import Voice
from generator.wording.weeks import both_tracks, weeks


@dataclass(frozen=True)
class Item:
    """An exercise in the session: place, name, page, first dose and how often.

    later: when it may begin, where that is later than the phase; conditions: what must be reached besides.
    """

    place: str
    exercise: Exercise
    variation: Variation | None
    page: str
    dose: DosePhrase
    often: str
    later: str
    condition: Text | None
    note: Text | None


@dataclass(frozen=True)
class Part:
    """A run of exercises that all begin with the phase, or all later."""

    later: bool
    items: tuple[Item, ...]


@dataclass(frozen=True)
class Pain:
    """The pain limit: the highest level that is all right while exercising, and the same in sentences."""

    limit: int
    summary: str
    lines: tuple[str, ...]


@dataclass(frozen=True)
class Tested:
    """A milestone and who tests it, in words."""

    milestone: Milestone
    tester: str


@dataclass(frozen=True)
class Step:
    """A phase on the ribbon at the head of the page."""

    number: str
    name: Text
    weeks: str
    page: str
    current: bool


def phase_pages(site: SiteInput) -> tuple[Page, ...]:
    """Return the page of every phase of every programme."""
    return tuple(
        _page(site, programme, phase)
        for programme in site.catalogue.programmes.values()
        for phase in programme.phases
    )


def _page(site: SiteInput, programme: Programme, phase: Phase) -> Page:
    voice, last = site.voice, len(programme.phases)
    items = tuple(_items(site, programme, phase))
    forbidden = forbidden_in(voice, programme, phase)
    milestones = tuple(Tested(one, voice.opening(term(voice, one.tester))) for one in phase.milestones)
    booklet = site.booklets.get((programme.id, phase.number))
    title = voice.gettext("{phase}: {name}").format(phase=phase_words(voice, phase.number), name=phase.name)
    return Page(
        path=phase_page(programme.id, phase.number),
        template="phase.html",
        title=title,
        description=str(phase.summary),
        values={
            "programme": programme,
            "programme_page": programme_page(programme.id),
            "phase": phase,
            "last": last,
            "when": _when(site, programme, phase),
            "safety": site.catalogue.safety,
            "ribbon": ribbon(site, programme, phase.number),
            "forbidden": forbidden,
            "parts_of_session": _parts(items),
            "standing": any(Surface.STANDING in item.exercise.surface for item in items),
            "equipment": _equipment(site, items),
            "milestones": milestones,
            "pain": pain_view(voice, phase),
            "booklet": booklet,
            "booklet_detail": _booklet_detail(voice, booklet),
            "before": programme.phase(phase.number - 1) if phase.number > 1 else None,
            "after": programme.phase(phase.number + 1) if phase.number < last else None,
            "untranslated": untranslated(phase, tuple(item.exercise.name for item in items)),
            "page_of": lambda other: phase_page(programme.id, other.number),
        },
        doses=tuple(dict.fromkeys(item.dose.big for item in items)),
        required=_required(site, phase, items, tuple(r.words for group in forbidden for r in group.rules)),
        previous=phase_page(programme.id, phase.number - 1) if phase.number > 1 else "",
        next=phase_page(programme.id, phase.number + 1) if phase.number < last else "",
    )


def _required(
    site: SiteInput, phase: Phase, items: tuple[Item, ...], rules: tuple[Text, ...]
) -> tuple[str, ...]:
    safety = site.catalogue.safety
    gate = (safety.start_only, safety.stay) if phase.number > 1 else (safety.stay,)
    aims = tuple(text for one in phase.milestones for text in (one.goal, one.test, one.passed))
    told = (*gate, *rules, *phase.avoid, phase.weight_bearing, phase.walking_aid, phase.going_up, *aims)
    return (
        *(str(text) for text in told),
        *(str(item.exercise.name) for item in items),
        *(item.later for item in items if item.later),
    )


def _items(site: SiteInput, programme: Programme, phase: Phase) -> Iterator[Item]:
    uses = {use.use: use for use in phase.uses}
    for placed in site.orders[programme.id].of_phase(phase.number):
        yield _item(site, programme, phase, uses[placed.exercise], placed)


def _item(site: SiteInput, programme: Programme, phase: Phase, use: Use, placed: Placed) -> Item:
    voice = site.voice
    exercise = site.exercise_in(programme.id, phase.number, use.use)
    return Item(
        place=number(voice, placed.place),
        exercise=exercise,
        variation=exercise.variations[use.variation] if use.variation else None,
        page=exercise_page(use.use),
        dose=dose(voice, use.dose_steps[0], exercise.dose),
        often=often(voice, use),
        later=voice.opening(entry_words(voice, phase, use)),
        condition=use.when,
        note=use.note,
    )


def often(voice: Voice, use: Use) -> str:
    """Return how often an exercise is done, with the days of rest."""
    hourly = use.dose_steps[0].kind is DoseKind.HOURLY
    return frequency(voice, use.times_a_day, use.days_a_week, use.rest_days, hourly=hourly)


def _parts(items: tuple[Item, ...]) -> tuple[Part, ...]:
    runs = groupby(items, key=lambda item: bool(item.later or item.condition))
    return tuple(Part(later, tuple(run)) for later, run in runs)


def ribbon(site: SiteInput, programme: Programme, here: int) -> tuple[Step, ...]:
    """Return the phases of a programme as steps of a way, one of them current (0: none)."""
    voice = site.voice
    windows = {window.phase: weeks(voice, window) for window in site.orders[programme.id].windows}
    return tuple(
        Step(
            number(voice, phase.number),
            phase.name,
            windows[phase.number],
            phase_page(programme.id, phase.number),
            phase.number == here,
        )
        for phase in programme.phases
    )


def pain_view(voice: Voice, phase: Phase) -> Pain:
    """Return the pain limit of a phase in words."""
    limit = phase.pain
    lines = (
        voice.gettext("During the exercises: at most {level}.").format(level=pain(voice, limit.during)),
        voice.gettext("Afterwards: at most {level}.").format(level=pain(voice, limit.after)),
        voice.gettext("The next morning: at most {level}.").format(level=pain(voice, limit.next_morning)),
    )
    summary = voice.gettext("Up to {level} is all right while you exercise. Above that: stop.")
    return Pain(limit.during, summary.format(level=pain(voice, limit.during)), lines)


def _when(site: SiteInput, programme: Programme, phase: Phase) -> str:
    windows = site.orders[programme.id].windows
    return site.voice.opening(both_tracks(site.voice, windows[phase.number - 1]))


def _equipment(site: SiteInput, items: tuple[Item, ...]) -> tuple[Equipment, ...]:
    needed = dict.fromkeys(
        thing
        for item in items
        for thing in (*item.exercise.equipment, *(item.variation.equipment if item.variation else ()))
    )
    return tuple(site.catalogue.equipment[thing] for thing in needed)


def _booklet_detail(voice: Voice, booklet: BookletFact | None) -> str:
    if booklet is None:
        return ""
    words = voice.gettext("PDF, {pages}, {size}, edition {code}")
    parts = {"pages": pages(voice, booklet.pages), "size": file_size(voice, booklet.size)}
    return words.format(**parts, code=isolate(plain(booklet.edition)))
