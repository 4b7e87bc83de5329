"""Makes the page for whoever helps at home: what to do, what never to do, and where help is wanted."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from generator.catalogue.base import Text
from generator.catalogue.daily_life import DailyLife
from generator.catalogue.exercise import Exercise
from generator.catalogue.programme import Programme
from generator.catalogue.terms import Helper
from generator.website.addresses import HELPER, daily_life_page, exercise_page
from generator.website.page import Page
from generator.website.shared import untranslated
from generator.website.values import SiteInput
from generator.wording.phrases import list_of
from generator.wording.phrases import phase as phase_words
from generator.wording.terms import term


@dataclass(frozen=True)
class Task:
    """Where a second person is wanted: in which phases, how much, what they do and must not do."""

    name: Text
    page: str
    phases: str
    wanted: str
    does: Text | None
    must_not: Text | None


@dataclass(frozen=True)
class Tasks:
    """All tasks of a programme."""

    programme: Text
    exercises: tuple[Task, ...]
    daily_life: tuple[Task, ...]


def has_helper_page(site: SiteInput) -> bool:
    """Return whether anybody has something to say to a helper."""
    return site.catalogue.safety.helper is not None or any(
        one.exercises or one.daily_life for one in _all_tasks(site)
    )


def helper_pages(site: SiteInput) -> tuple[Page, ...]:
    """Return the page for the helper, or none where there is nothing to say."""
    if not has_helper_page(site):
        return ()
    safety, programmes = site.catalogue.safety, _all_tasks(site)
    advice = (*safety.helper.does, *safety.helper.must_not) if safety.helper else ()
    roles = (
        text
        for one in programmes
        for task in (*one.exercises, *one.daily_life)
        for text in (task.does, task.must_not)
        if text is not None
    )
    return (
        Page(
            path=HELPER,
            template="helper.html",
            title=site.voice.gettext("For your helper"),
            description=site.voice.gettext("What a helper does at home, and what a helper never does"),
            values={
                "safety": safety,
                "programmes": programmes,
                "untranslated": untranslated(safety.helper, safety.fall),
            },
            required=tuple(dict.fromkeys(map(str, (*advice, *roles, *safety.fall)))),
        ),
    )


def _all_tasks(site: SiteInput) -> tuple[Tasks, ...]:
    found = (_tasks(site, programme) for programme in site.catalogue.programmes.values())
    return tuple(one for one in found if one.exercises or one.daily_life)


def _tasks(site: SiteInput, programme: Programme) -> Tasks:
    exercises, items = site.catalogue.exercises, site.catalogue.daily_life
    used: dict[str, list[int]] = {}
    lived: dict[str, list[int]] = {}
    for phase in programme.phases:
        for use in phase.uses:
            used.setdefault(use.use, []).append(phase.number)
        for id_ in phase.daily_life:
            lived.setdefault(id_, []).append(phase.number)
    return Tasks(
        programme.name,
        tuple(_wanted(site, ((exercises[id_], exercise_page(id_), where) for id_, where in used.items()))),
        tuple(
            _wanted(
                site,
                ((items[id_], daily_life_page(id_), where) for id_, where in lived.items() if id_ in items),
            )
        ),
    )


def _wanted(site: SiteInput, found: Iterator[tuple[Exercise | DailyLife, str, list[int]]]) -> Iterator[Task]:
    voice = site.voice
    for one, page, phases in found:
        if one.helper is not Helper.NONE:
            yield Task(
                name=one.name,
                page=page,
                phases=list_of(voice, (phase_words(voice, number) for number in dict.fromkeys(phases))),
                wanted=voice.opening(term(voice, one.helper)),
                does=one.helper_role.does if one.helper_role else None,
                must_not=one.helper_role.must_not if one.helper_role else None,
            )
