"""Writes all pages of one language: the one door of this room for whoever builds the site."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import partial
from pathlib import Path

from generator.website.check import check_page
from generator.website.clinicians import clinicians_pages
from generator.website.daily_life import daily_life_pages
from generator.website.editors import editors_pages
from generator.website.environment import environment
from generator.website.exercise import exercise_pages
from generator.website.exercise_list import list_page
from generator.website.helper import helper_pages
from generator.website.home import home_page
from generator.website.page import Page, page_text, source_name, write_page
from generator.website.patient import patient_pages
from generator.website.phase import phase_pages
from generator.website.programme import programme_pages
from generator.website.reporting import reporting_pages
from generator.website.safety import warning_page
from generator.website.values import PageFact, SiteInput
from generator.website.words import about_page, glossary_page


def write_pages(site: SiteInput, folder: Path) -> tuple[PageFact, ...]:
    """Write the Markdown pages of one language under `folder` and return what the audit must find in each."""
    speaking = environment(site.voice, site.catalogue.source_language)
    pages = _reviewed_pages(site)
    for page in pages:
        write_page(page, speaking, folder)
    return tuple(page.fact for page in pages)


def pages_to_come(site: SiteInput) -> Mapping[str, Callable[[], str]]:
    """Return what makes the Markdown of each page, by the name of its file, for whoever needs one or two."""
    speaking = environment(site.voice, site.catalogue.source_language)
    return {source_name(page.path): partial(page_text, page, speaking) for page in _reviewed_pages(site)}


def _reviewed_pages(site: SiteInput) -> tuple[Page, ...]:
    return tuple(replace(page, reviewed=site.reviewed.get(page.path, "")) for page in all_pages(site))


def all_pages(site: SiteInput) -> tuple[Page, ...]:
    """Return every page of one language, not yet written."""
    return (
        home_page(site),
        *programme_pages(site),
        *phase_pages(site),
        list_page(site),
        *exercise_pages(site),
        *daily_life_pages(site),
        *helper_pages(site),
        warning_page(site),
        check_page(site),
        glossary_page(site),
        about_page(site),
        *clinicians_pages(site),
        *patient_pages(site),
        *reporting_pages(site),
        *editors_pages(site),
    )
