"""Writes the pages of one language of any small content, and reads them as a reader would."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from bs4 import BeautifulSoup, Tag

from generator.website.pages import write_pages
from generator.website.values import PageFact
from tests.website.small_site import CODES, site_inputs


class Written:
    """The pages of one language as they were written, by their path."""

    def __init__(self, folder: Path, facts: tuple[PageFact, ...]) -> None:
        self.folder = folder
        self.facts = {fact.path: fact for fact in facts}

    def source(self, path: str) -> str:
        """Return a page as its file holds it."""
        return (self.folder / path.replace(".html", ".md")).read_text("utf-8")

    def page(self, path: str) -> Tag:
        """Return the HTML of a page."""
        return BeautifulSoup(self.source(path).split("---\n", 2)[2], "html.parser")

    def words(self, path: str, within: str = "div.pb-page") -> str:
        """Return what is read on a page, or in one part of it."""
        found = self.page(path).select(within)
        return " ".join(" ".join(part.get_text(" ") for part in found).split())


def written(files: Mapping[str, str], folder: Path, code: str = "en") -> Written:
    """Return the pages of one language of any content."""
    codes = CODES if code != "en" else ("en",)
    one = next(site for site in site_inputs(files, codes) if site.voice.code == code)
    return Written(folder, write_pages(one, folder))
