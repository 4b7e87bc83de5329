"""Makes the page that shows which items of two reporting checklists a programme answers, and where."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from generator.catalogue.programme import Programme
from generator.catalogue.reporting import Checklist, ItemAnswer, Shown
from generator.website.addresses import (
    EXERCISES,
    GLOSSARY,
    WARNING_SIGNS,
    clinicians_page,
    phase_page,
    programme_page,
    reporting_page,
)
from generator.website.page import Page
from generator.website.values import SiteInput
from generator.wording.isolation import isolate
from generator.wording.reporting import answer_words
from generator.wording.terms import term

# Published; the lists' own words are not repeated here.
_SOURCES = {
    Checklist.CERT: (
        "Slade, Dionne, Underwood, Buchbinder 2016. Br J Sports Med 50(23):1428-1437.",
        "10.1136/bjsports-2016-096651",
    ),
    Checklist.PEMAT: ("Shoemaker, Wolf, Brach 2013. AHRQ Publication 14-0002-EF.", ""),
}


@dataclass(frozen=True)
class Row:
    """An item: number, what it asks, how far it is answered, the fact behind it, where it is shown."""

    number: str
    asks: str
    state: str
    answer: str
    said: str
    where: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class ListView:
    """One checklist with its source (and DOI, where it has one) and its items."""

    id: str
    name: str
    source: str
    doi: str
    rows: tuple[Row, ...]


def reporting_pages(site: SiteInput) -> tuple[Page, ...]:
    """Return the page of every programme whose checklists were filled."""
    return tuple(
        _page(site, programme, site.reports[programme.id])
        for programme in site.catalogue.programmes.values()
        if programme.id in site.reports
    )


def _page(site: SiteInput, programme: Programme, answers: tuple[ItemAnswer, ...]) -> Page:
    lists = tuple(_list(site, programme, which, answers) for which in Checklist)
    title = site.voice.gettext("{programme}: reporting checklists")
    return Page(
        path=reporting_page(programme.id),
        template="reporting.html",
        title=title.format(programme=programme.name),
        description=site.voice.gettext("What the programme tells, where, and what is open"),
        values={"programme": programme, "clinicians": clinicians_page(programme.id), "lists": lists},
        doses=None,
        required=tuple(row.said for one in lists for row in one.rows),
        found=False,
    )


def _list(
    site: SiteInput, programme: Programme, which: Checklist, answers: tuple[ItemAnswer, ...]
) -> ListView:
    voice, (source, doi) = site.voice, _SOURCES[which]
    rows = (
        Row(
            number=isolate(one.item.number),
            asks=voice.opening(term(voice, one.item)),
            state=one.answer.name.lower().replace("_", "-"),
            answer=term(voice, one.answer),
            said=answer_words(voice, one),
            where=tuple(_where(site, programme, one)),
        )
        for one in answers
        if one.item.checklist is which
    )
    return ListView(which.name.lower(), term(voice, which), source, doi, tuple(rows))


def _where(site: SiteInput, programme: Programme, one: ItemAnswer) -> Iterator[tuple[str, str]]:
    """Yield each place where the answer is shown, with the page to open, or an empty one for paper."""
    protocol = site.protocols.get(programme.id)
    pages = {
        Shown.PROGRAMME_PAGE: programme_page(programme.id),
        Shown.PHASE_PAGES: phase_page(programme.id, 1),
        Shown.EXERCISE_PAGES: EXERCISES,
        Shown.CLINICIANS_PAGE: clinicians_page(programme.id),
        Shown.WARNING_SIGNS: WARNING_SIGNS,
        Shown.GLOSSARY: GLOSSARY,
        Shown.PROTOCOL: protocol.path if protocol else "",
    }
    for shown in one.shown:
        yield site.voice.opening(term(site.voice, shown)), pages.get(shown, "")
