"""Hands documents to the layout library: only our own files, no clock, complaints kept, nothing parsed twice.

A style sheet is parsed once in each process with the fonts it names; booklets of a kind and language share
it. What the library makes of a sheet is full of cycles, so collecting garbage while it grows costs a fifth
of the time and finds nothing: it waits until the document is done.
"""

from __future__ import annotations

import gc
import logging
import os
import re
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any
from urllib.parse import unquote, urlsplit

import weasyprint
from weasyprint.text.ffi import pango
from weasyprint.text.fonts import FontConfiguration
from weasyprint.urls import URLFetcher, URLFetcherResponse

from generator.booklets.drawings import Drawings
from generator.booklets.fonts import font_folders

VARIANT = "pdf/ua-1"
"""The standard that every document follows: PDF/UA-1, ISO 14289-1."""

_EPOCH = "SOURCE_DATE_EPOCH"
# A picture inside the document has an address of thousands of letters.
_DATA = re.compile(r"data:[^\s\"']{20,}")
_STYLE = re.compile(r"<style>(.*?)</style>", re.DOTALL)


class OwnFiles(URLFetcher):  # type: ignore[misc] # the library ships no types
    """Fetches only pictures inside the document and our font files; everything else is refused."""

    def __init__(self, folders: tuple[Path, ...]) -> None:
        super().__init__(allowed_protocols=("file", "data"))
        self.folders = folders

    def fetch(self, url: str, headers: Mapping[str, str] | None = None) -> URLFetcherResponse:
        """Return the content of an address of our own.

        Raises:
            ValueError: the address is not ours; the library logs it, and so it becomes a finding.

        """
        if url.startswith("data:"):
            return super().fetch(url, headers)
        parts = urlsplit(url)
        path = Path(unquote(parts.path)).resolve()
        if parts.scheme != "file" or not any(path.is_relative_to(folder) for folder in self.folders):
            raise ValueError(f"not a file of ours: {url}")
        return super().fetch(url, headers)


def text_engine() -> str:
    """Return name and version of the library that shapes and breaks lines; it belongs to the system."""
    return f"pango {pango.pango_version()}"


@contextmanager
def no_clock() -> Iterator[None]:
    """Keep the time of day out of the fonts: fontTools stamps every font it cuts with it, or with this.

    SOURCE_DATE_EPOCH is the variable of the reproducible-builds.org specification.
    """
    before = os.environ.get(_EPOCH)
    os.environ[_EPOCH] = "0"
    try:
        yield
    finally:
        if before is None:
            del os.environ[_EPOCH]
        else:
            os.environ[_EPOCH] = before


@contextmanager
def no_collecting() -> Iterator[None]:
    """Collect no garbage meanwhile; at the end what has come up since, not all that was there before."""
    collecting = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if collecting:
            gc.enable()
            gc.collect(0)


@contextmanager
def complaints() -> Iterator[list[str]]:
    """Collect what the library logs as warnings or errors meanwhile, instead of letting it be printed."""
    handler = _Complaints()
    logger = logging.getLogger("weasyprint")
    logger.addHandler(handler)
    spread, logger.propagate = logger.propagate, False
    try:
        yield handler.messages
    finally:
        logger.removeHandler(handler)
        logger.propagate = spread


class _Complaints(logging.Handler):
    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.messages: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.messages.append(_DATA.sub("data:…", record.getMessage()))


@dataclass(frozen=True)
class _Style:
    """A parsed style sheet with its fonts, and what the library complained of while reading it."""

    rules: Any
    fonts: Any
    logged: tuple[str, ...]


@lru_cache(maxsize=8)
def _style(css: str) -> _Style:
    fonts = FontConfiguration()
    with complaints() as logged:
        rules = weasyprint.CSS(string=css, font_config=fonts, url_fetcher=OwnFiles(font_folders()))
    return _Style(rules, fonts, tuple(logged))


@lru_cache(maxsize=1)
def _drawings() -> Drawings:
    return Drawings(OwnFiles(()))


def rendered(html: str) -> tuple[Any, tuple[str, ...]]:
    """Return a document of the library, laid out on pages, and what it complained of.

    The first ``<style>`` element is taken out of the document and parsed once for all that share it.
    """
    found = _STYLE.search(html)
    with no_clock():
        style = _style(found[1] if found else "")
        with complaints() as logged:
            bare = html[: found.start()] + html[found.end() :] if found else html
            page = weasyprint.HTML(string=bare, url_fetcher=OwnFiles(font_folders()))
            document = page.render(
                font_config=style.fonts, stylesheets=[style.rules], pdf_variant=VARIANT, cache=_drawings()
            )
    return document, tuple(dict.fromkeys((*style.logged, *logged)))
