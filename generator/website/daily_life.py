"""Makes the pages of daily life: sleeping, stairs, the car, each with the phases it belongs to said first."""

from __future__ import annotations

from dataclasses import dataclass

from generator.catalogue.base import Text
from generator.catalogue.daily_life import DailyLife
from generator.catalogue.programme import Phase, Programme
from generator.catalogue.terms import Helper
from generator.website.addresses import daily_life_page
from generator.website.belongs import Belongs, belongs_to
from generator.website.figure_view import figure_of
from generator.website.page import Page
from generator.website.shared import untranslated, warned
from generator.website.values import SiteInput
from generator.wording.phrases import list_of
from generator.wording.phrases import phase as phase_words
from generator.wording.terms import term


@dataclass(frozen=True)
class Door:
    """A way to a page of daily life; phases: in which phases of a programme it holds, or empty."""

    name: Text
    purpose: Text
    page: str
    phases: str = ""


def daily_life_pages(site: SiteInput) -> tuple[Page, ...]:
    """Return the page of every thing of daily life."""
    return tuple(_page(site, item) for item in site.catalogue.daily_life.values())


def doors_of_phase(site: SiteInput, phase: Phase) -> tuple[Door, ...]:
    """Return the ways to the things of daily life that a phase speaks of."""
    known = site.catalogue.daily_life
    return tuple(_door(known[id_]) for id_ in phase.daily_life if id_ in known)


def doors_of_programme(site: SiteInput, programme: Programme) -> tuple[Door, ...]:
    """Return the ways to all things of daily life of a programme, each with its phases."""
    named = dict.fromkeys(id_ for phase in programme.phases for id_ in phase.daily_life)
    known = site.catalogue.daily_life
    return tuple(
        _door(known[id_], list_of(site.voice, (phase_words(site.voice, n) for n in _phases(programme, id_))))
        for id_ in named
        if id_ in known
    )


def _phases(programme: Programme, item: str) -> tuple[int, ...]:
    return tuple(phase.number for phase in programme.phases if item in phase.daily_life)


def _door(item: DailyLife, phases: str = "") -> Door:
    return Door(item.name, item.purpose, daily_life_page(item.id), phases)


def _page(site: SiteInput, item: DailyLife) -> Page:
    known = site.catalogue
    stays = belongs_to(site, item.id)
    cautions = warned(site.voice, item.cautions)
    return Page(
        path=daily_life_page(item.id),
        template="daily_life.html",
        title=str(item.name),
        description=str(item.purpose),
        values={
            "item": item,
            "figure": figure_of(site, item),
            "drawn": bool(site.figures),
            "stays": stays,
            "cautions": cautions,
            "facts": _facts(site, item),
            "things": tuple(known.equipment[thing] for thing in item.equipment),
            "strains": tuple(known.strains[strain] for strain in item.strains),
            "helper": item.helper_role if item.helper is not Helper.NONE else None,
            "untranslated": untranslated(item),
        },
        required=_required(item, stays),
    )


def _required(item: DailyLife, stays: tuple[Belongs, ...]) -> tuple[str, ...]:
    role = (item.helper_role.does, item.helper_role.must_not) if item.helper_role else ()
    dangers = (text for one in item.cautions for text in (one.hazard, one.consequence, one.avoid))
    rules = (rule.words for stay in stays for group in stay.forbidden for rule in group.rules)
    told = (*item.steps, *item.avoid, *role, *dangers, *rules)
    return tuple(dict.fromkeys((*(stay.where for stay in stays), *map(str, told))))


def _facts(site: SiteInput, item: DailyLife) -> tuple[dict[str, str], ...]:
    voice = site.voice
    return (
        {"label": voice.gettext("To hold on to"), "value": voice.opening(term(voice, item.support))},
        {"label": voice.gettext("Helper"), "value": voice.opening(term(voice, item.helper))},
    )
