"""Puts the clinic's words and telephone lines around every page, and the pages into the menu."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

from generator.catalogue.values import Catalogue
from generator.website.addresses import (
    ABOUT,
    CHECK,
    EXERCISES,
    GLOSSARY,
    HOME,
    WARNING_SIGNS,
    clinicians_page,
    phase_page,
    programme_page,
)
from generator.website.assets import Assets
from generator.website.config import Entry, Frame, Line, Words, write_config
from generator.website.engine import SiteJob
from generator.website.values import SiteInput
from generator.wording.isolation import isolate, plain
from generator.wording.voice import Voice

# Patterns of pages that no menu lists: a menu of hundreds of exercises would be copied into every page.
OUTSIDE_MENU = (
    *("exercises/*", "daily-life/*", "helper.md", "editors/*"),
    *(f"clinicians/*-{part}.md" for part in ("reporting", "protocol", "order", "evidence", "patient-*")),
)


def write_settings(site: SiteInput, job: SiteJob, project: Path, assets: Assets) -> None:
    """Write the configuration that `job` names, for pages that `write_pages` has written."""
    write_config(job, project, frame_of(site), site.languages, menu_of(site), assets, OUTSIDE_MENU)


def frame_of(site: SiteInput) -> Frame:
    """Return what stands around every page of the language."""
    catalogue, voice = site.catalogue, site.voice
    clinic, safety = catalogue.clinic, catalogue.safety
    hours = voice.gettext("Clinic line: {hours}").format(hours=clinic.telephone.hours)
    closed = voice.gettext("At other times: {telephone}").format(
        telephone=isolate(clinic.telephone.out_of_hours)
    )
    return Frame(
        title=plain(str(clinic.name)),
        clinic=str(clinic.name),
        deferral=str(safety.deferral),
        demonstration=str(safety.demonstration) if clinic.demo else "",
        warning_label=voice.gettext("Warning signs"),
        warning_path=WARNING_SIGNS,
        telephones=(clinic_line(catalogue, voice),),
        words=_words(voice),
        small_print=(hours, closed),
        base=(clinic.base_address or "").rstrip("/"),
    )


def clinic_line(catalogue: Catalogue, voice: Voice) -> Line:
    """Return the line that patients call with questions."""
    return telephone_line(voice.gettext("Clinic line"), catalogue.clinic.telephone.clinic)


def emergency_line(catalogue: Catalogue, voice: Voice) -> Line:
    """Return the emergency number."""
    return telephone_line(voice.gettext("Emergency number"), catalogue.clinic.telephone.emergency)


def telephone_line(label: str, number: str) -> Line:
    """Return a line with its number also as a telephone dials it (RFC 3966: digits and a leading plus)."""
    digits = re.sub(r"[^0-9+]", "", number)
    return Line(label, number, digits)


def menu_of(site: SiteInput) -> tuple[Entry, ...]:
    """Return the menu; a programme's phases stand below its page.

    Several programmes, and several pages for clinicians, stand together under one entry that opens.
    """
    catalogue, voice = site.catalogue, site.voice
    programmes = tuple(
        Entry(
            plain(str(programme.name)),
            children=(
                _entry(str(programme.name), programme_page(programme.id)),
                *(_entry(str(p.name), phase_page(programme.id, p.number)) for p in programme.phases),
            ),
        )
        for programme in catalogue.programmes.values()
    )
    clinicians = tuple(
        _entry(str(programme.name), clinicians_page(programme.id))
        for programme in catalogue.programmes.values()
    )
    return (
        _entry(voice.gettext("Home"), HOME),
        *_together(voice.gettext("Programmes"), programmes),
        _entry(voice.gettext("All exercises"), EXERCISES),
        _entry(voice.gettext("Warning signs"), WARNING_SIGNS),
        _entry(voice.gettext("Check your booklet"), CHECK),
        _entry(voice.gettext("Words explained"), GLOSSARY),
        *_together(voice.gettext("For clinicians"), clinicians, name_one=True),
        _entry(voice.gettext("About these pages"), ABOUT),
    )


def _together(title: str, entries: tuple[Entry, ...], *, name_one: bool = False) -> tuple[Entry, ...]:
    """Return several entries as one group; a single one as it is, or under the title where `name_one`."""
    if len(entries) > 1:
        return (
            Entry(
                title, children=tuple(Entry(one.title, children=one.children or (one,)) for one in entries)
            ),
        )
    return tuple(replace(one, title=title) for one in entries) if name_one else entries


def _entry(title: str, page: str) -> Entry:
    return Entry(plain(title), page.replace(".html", ".md"))


def _words(voice: Voice) -> Words:
    return Words(
        skip=voice.gettext("Skip to the text"),
        menu=voice.gettext("Menu"),
        languages=voice.gettext("Languages"),
        safety=voice.gettext("Your safety"),
        search=voice.gettext("Search"),
        search_clear=voice.gettext("Clear"),
        search_results=voice.gettext("Search results"),
        search_start=voice.gettext("Type a word to search for"),
        search_none=voice.gettext("Nothing found"),
        search_one=voice.pgettext("search", "1 page found"),
        # Translators: keep the sign #, it stands for the number.
        search_other=voice.pgettext("search", "# pages found"),
        search_more_one=voice.pgettext("search", "1 more on this page"),
        # Translators: keep the sign #, it stands for the number.
        search_more_other=voice.pgettext("search", "# more on this page"),
        search_missing=voice.pgettext("search", "Not on this page"),
    )
