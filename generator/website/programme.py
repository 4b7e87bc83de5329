"""Makes the page of a programme: what was done, its phases along the weeks, and what to avoid when."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from generator.catalogue.arranged import Window
from generator.catalogue.programme import Programme
from generator.catalogue.surgery import EARLIEST, MOST_DAYS_AHEAD
from generator.website.addresses import HELPER, clinicians_page, exercise_page, phase_page, programme_page
from generator.website.allowed import patient_table
from generator.website.daily_life import doors_of_programme
from generator.website.helper import has_helper_page
from generator.website.home import phase_doors
from generator.website.page import Page
from generator.website.shared import ends_of, entry_weeks, untranslated
from generator.website.values import SiteInput
from generator.wording.phrases import number
from generator.wording.phrases import phase as phase_words
from generator.wording.voice import Voice
from generator.wording.weeks import delayed_weeks, weeks

# Weeks that one part of the picture's scale stands for, and how long an open last phase is drawn at least.
SCALE = 4
_OPEN_WEEKS = 6


@dataclass(frozen=True)
class Span:
    """A bar in the picture of the phases: from and to in weeks, and the same in words."""

    start: int
    end: int
    text: str


@dataclass(frozen=True)
class Row:
    """A phase in the picture: its name, its page, its weeks on both tracks (None: the same)."""

    name: str
    page: str
    usual: Span
    delayed: Span | None


@dataclass(frozen=True)
class Timeline:
    """The picture of the phases along the weeks. axis: the numbers below it, one for each part."""

    rows: tuple[Row, ...]
    total: int
    axis: tuple[str, ...]


@dataclass(frozen=True)
class Start:
    """What has a first possible day: a phase, or an exercise within it that enters later; both its weeks."""

    name: str
    page: str
    week: int
    delayed_week: int
    within: bool


def programme_pages(site: SiteInput) -> tuple[Page, ...]:
    """Return the page of every programme."""
    return tuple(_page(site, programme) for programme in site.catalogue.programmes.values())


def _page(site: SiteInput, programme: Programme) -> Page:
    restrictions = ends_of(site.voice, programme)
    return Page(
        path=programme_page(programme.id),
        template="programme.html",
        title=str(programme.name),
        description=str(programme.summary),
        values={
            "programme": programme,
            "safety": site.catalogue.safety,
            "timeline": timeline(site, programme),
            "phases": phase_doors(site, programme),
            "starts": tuple(_starts(site, programme)),
            "earliest": EARLIEST,
            "most_days_ahead": MOST_DAYS_AHEAD,
            "restrictions": restrictions,
            "allowed": patient_table(site, programme),
            "daily_life": doors_of_programme(site, programme),
            "helper": HELPER if has_helper_page(site) else "",
            "clinicians": clinicians_page(programme.id),
            "untranslated": untranslated(programme.name, programme.operation, programme.restrictions),
        },
        required=(
            str(programme.operation),
            *(str(rule.words) for group in restrictions for rule in group.rules),
        ),
        script="dates",
    )


def _starts(site: SiteInput, programme: Programme) -> Iterator[Start]:
    """Yield the phases in order, each followed by its exercises that enter later."""
    for phase in programme.phases:
        name = site.voice.gettext("{phase}: {name}").format(
            phase=phase_words(site.voice, phase.number), name=phase.name
        )
        page = phase_page(programme.id, phase.number)
        yield Start(name, page, phase.week, phase.delayed_week, within=False)
        late = ((*entry_weeks(phase, use), use.use) for use in phase.uses)
        for week, delayed_week, exercise in sorted(late):
            if (week, delayed_week) != (phase.week, phase.delayed_week):
                named = str(site.catalogue.exercises[exercise].name)
                yield Start(named, exercise_page(exercise), week, delayed_week, within=True)


def timeline(site: SiteInput, programme: Programme) -> Timeline:
    """Return the picture of a programme's phases on both tracks."""
    voice, windows = site.voice, site.orders[programme.id].windows
    last = max(max(window.start, window.delayed_start) for window in windows)
    total = -(-(last + _OPEN_WEEKS) // SCALE) * SCALE
    return Timeline(
        rows=tuple(_row(voice, programme, window, total) for window in windows),
        total=total,
        axis=tuple(number(voice, week) for week in range(0, total, SCALE)),
    )


def _row(voice: Voice, programme: Programme, window: Window, total: int) -> Row:
    usual = Span(window.start, window.end or total, weeks(voice, window))
    delayed = Span(window.delayed_start, window.delayed_end or total, delayed_weeks(voice, window))
    name = f"{number(voice, window.phase)} {programme.phase(window.phase).name}"
    same = (window.start, window.end) == (window.delayed_start, window.delayed_end)
    return Row(name, phase_page(programme.id, window.phase), usual, None if same else delayed)
