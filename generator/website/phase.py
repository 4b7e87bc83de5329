"""Makes the page of a phase: when to start, what is restricted, the session in order, what must work next."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from generator.catalogue.base import Text
from generator.catalogue.clinic import Equipment
from generator.catalogue.exercise import Exercise
from generator.catalogue.programme import Milestone, Phase, Programme
from generator.catalogue.terms import Surface
from generator.website.addresses import HELPER, phase_page, programme_page
from generator.website.daily_life import doors_of_phase
from generator.website.heights import heights_of
from generator.website.helper import has_helper_page
from generator.website.page import Page
from generator.website.phase_items import Item, gone_in, items_of
from generator.website.session import day_view
from generator.website.session_cards import session_groups
from generator.website.shared import forbidden_in, untranslated
from generator.website.step_back import doses_of
from generator.website.values import BookletFact, PaperKind, PhaseKey, SiteInput
from generator.wording.isolation import isolate, plain
from generator.wording.phrases import file_size, list_of, number, pages, pain
from generator.wording.phrases import phase as phase_words
from generator.wording.terms import term
from generator.wording.voice import Voice
from generator.wording.weeks import both_tracks, weeks


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
class Needed:
    """A thing that must be at hand, for which exercises, and whether only another form of them needs it."""

    thing: Equipment
    exercises: str
    optional: bool


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
    items = items_of(site, programme, phase)
    forbidden = forbidden_in(voice, programme, phase)
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
            "milestones": tuple(tested(voice, phase)),
            "pain": pain_view(voice, phase),
            "booklet": booklet,
            "booklet_detail": booklet_detail(voice, booklet),
            "kinds": _kinds(site, (programme.id, phase.number)),
            "before": programme.phase(phase.number - 1) if phase.number > 1 else None,
            "after": programme.phase(phase.number + 1) if phase.number < last else None,
            "untranslated": untranslated(phase, tuple(_shown(item.exercise) for item in items)),
            "page_of": lambda other: phase_page(programme.id, other.number),
            **_doing(site, programme, phase, items),
        },
        doses=tuple(dict.fromkeys(_doses(site, programme, phase))),
        required=_required(site, phase, items, tuple(r.words for group in forbidden for r in group.rules)),
        previous=phase_page(programme.id, phase.number - 1) if phase.number > 1 else "",
        next=phase_page(programme.id, phase.number + 1) if phase.number < last else "",
        script="session",
    )


def _doing(site: SiteInput, programme: Programme, phase: Phase, items: tuple[Item, ...]) -> dict[str, Any]:
    """Return what the page says about exercises and the rest of the day."""
    groups = session_groups(site, programme, phase, items)
    return {
        "groups": groups,
        "learned": items,
        "gone": gone_in(site, programme, phase),
        "day": day_view(site, programme, phase),
        "backs": tuple(card.back for group in groups for card in group.cards if card.back is not None),
        "standing": any(Surface.STANDING in item.exercise.surface for item in items),
        "things": _things(site, programme, phase),
        "heights": heights_of(site, [item.exercise for item in items]),
        "daily_life": doors_of_phase(site, phase),
        "helper": HELPER if has_helper_page(site) else "",
    }


def _doses(site: SiteInput, programme: Programme, phase: Phase) -> Iterator[str]:
    for use in phase.uses:
        yield from doses_of(site, use, site.exercise_in(programme.id, phase.number, use.use))


def _required(
    site: SiteInput, phase: Phase, items: tuple[Item, ...], rules: tuple[Text, ...]
) -> tuple[str, ...]:
    safety = site.catalogue.safety
    gate = (safety.start_only, safety.stay) if phase.number > 1 else (safety.stay,)
    aims = tuple(text for one in phase.milestones for text in (one.goal, one.test, one.passed))
    told = (*gate, *rules, *phase.avoid, phase.weight_bearing, phase.walking_aid, phase.going_up, *aims)
    return (
        *(str(text) for text in (*told, *safety.worse.today)),
        *(str(item.exercise.name) for item in items),
        *(item.later for item in items if item.later),
        *(item.stop for item in items if item.stop),
    )


def _shown(exercise: Exercise) -> tuple[object, ...]:
    """Return what the page shows of an exercise."""
    return (exercise.name, exercise.set_up, exercise.start, exercise.steps, exercise.cautions)


def tested(voice: Voice, phase: Phase) -> Iterator[Tested]:
    """Yield the milestones of a phase with who tests them."""
    for one in phase.milestones:
        yield Tested(one, voice.opening(term(voice, one.tester)))


def _things(site: SiteInput, programme: Programme, phase: Phase) -> tuple[Needed, ...]:
    known = site.catalogue
    return tuple(
        Needed(
            known.equipment[thing.id],
            list_of(site.voice, (str(known.exercises[one].name) for one in thing.exercises)),
            thing.optional,
        )
        for thing in site.things.get((programme.id, phase.number), ())
    )


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


def _kinds(site: SiteInput, key: PhaseKey) -> tuple[tuple[str, str, str], ...]:
    """Return path, name and size of the other forms of a phase's booklet; all have one edition."""
    voice = site.voice
    names = {
        PaperKind.SHEET: voice.gettext("One sheet for the fridge door"),
        PaperKind.LARGE: voice.gettext("Large print"),
        PaperKind.POCKET: voice.gettext("Small pages, for a telephone or for reading aloud"),
        PaperKind.FOLD: voice.gettext("To fold: print on both sides, turn over the short edge, staple"),
    }
    return tuple((fact.path, names[kind], size_words(voice, fact)) for kind, fact in site.kinds.get(key, ()))


def booklet_detail(voice: Voice, booklet: BookletFact | None) -> str:
    """Return pages, size and edition of a file to load, so that nobody loads a large one by surprise."""
    if booklet is None:
        return ""
    words = voice.gettext("PDF, {pages}, {size}, edition {code}")
    parts = {"pages": pages(voice, booklet.pages), "size": file_size(voice, booklet.size)}
    return words.format(**parts, code=isolate(plain(booklet.edition)))


def size_words(voice: Voice, booklet: BookletFact) -> str:
    """Return pages and size of a file to load."""
    words = voice.gettext("PDF, {pages}, {size}")
    return words.format(pages=pages(voice, booklet.pages), size=file_size(voice, booklet.size))
