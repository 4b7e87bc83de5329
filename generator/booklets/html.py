"""Puts a booklet into HTML: one template a sheet, every word a message, every colour a token."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, MemcachedBytecodeCache, StrictUndefined
from markupsafe import Markup, escape

from generator.booklets.booklet_view import booklet_view
from generator.booklets.fonts import font_rules
from generator.booklets.formats import SHEET
from generator.booklets.marks import mark_rules
from generator.booklets.values import NO_FITS, BookletJob, Fits
from generator.catalogue.base import Text
from generator.wording.html import as_html, text_html
from generator.wording.jinja import Compiled, install
from generator.wording.voice import Voice

SESSION_SHEET = "session"
"""Key of the section that is a kind of its own."""

NOTES = "notes-"
"""So begin the keys of sheets with nothing but lines to write on, which fill up a booklet."""

PARTING = "parting.css"
"""The style sheet that says where words part at a line's end; protocols use it too."""

TEMPLATES = Path(__file__).parent / "templates"
_SECTION = re.compile(r'<section\b[^>]*\bdata-sheet="([^"]*)"[^>]*>')
_TAG = re.compile(r"<[^>]*>")
_ISOLATE = re.compile(r'<bdi dir="ltr">(.*?)</bdi>')
# The note stands where a line begins, the facts where it ends; the page boxes know only left and right.
_WIDE_RULE = (
    "@page {{ size: {size}; @bottom-{start} {{ content: element(foot-note); width: 69%; {foot} }}"
    " @bottom-{end} {{ content: element(foot-facts); width: 31%; {foot} }} }}"
)
_NARROW_RULE = (
    "@page {{ size: {size}; @bottom-center {{ content: element(foot-note); width: 100%; {foot} }} }}"
)
_FOOT = "vertical-align: top; padding-top: 2.2mm; border-top: 0.3mm solid var(--pb-line); margin-top: 3mm;"


def render_html(job: BookletJob, fits: Fits = NO_FITS) -> str:
    """Return the booklet as one HTML document that needs no file besides the fonts.

    fits: how the sections sit on paper, known once the document has been laid out.
    """
    return _html(job, fits, None, (), margins=True)


def sections_html(job: BookletJob, fits: Fits, only: frozenset[str] | None = None) -> str:
    """Return sections without the margins of their sheets: those with a key in `only`, else all."""
    return _html(job, fits, only, (), margins=False)


def frame_html(job: BookletJob, leaves: Sequence[str]) -> str:
    """Return empty sheets with their margins, one for each of the kinds of page in `leaves`."""
    return _html(job, NO_FITS, frozenset(), leaves, margins=True)


def _html(
    job: BookletJob, fits: Fits, only: frozenset[str] | None, leaves: Sequence[str], *, margins: bool
) -> str:
    template = environment(job.voice).get_template("booklet.html")
    catalogue, booklet = job.catalogue, booklet_view(job, fits)
    if only is None and job.kind == SHEET:
        only = frozenset({SESSION_SHEET})
    return template.render(
        booklet=booklet,
        only=only,
        notes=sorted(key for key in only or () if key.startswith(NOTES)),
        leaves=leaves,
        margins=margins,
        session=booklet.session,
        helper=booklet.helper,
        programme=job.stages,
        phase=job.stage,
        clinic=catalogue.clinic,
        safety=catalogue.safety,
        source_language=catalogue.source_language,
        style=_style(job),
    )


def letters_in_sections(html: str) -> Mapping[str, int]:
    """Return how many letters and signs the sections of a booklet have, blanks left out, by their keys."""
    parts = _SECTION.split(html)
    return {
        key: len("".join(_TAG.sub(" ", text).split()))
        for key, text in zip(parts[1::2], parts[2::2], strict=True)
    }


# Words written into a template are finished while it is compiled, and finished words depend on the direction.
_COMPILED = {side: MemcachedBytecodeCache(Compiled()) for side in ("ltr", "rtl")}


def environment(voice: Voice) -> Environment:
    """Return the template environment of one language: texts become escaped, isolated, marked by language."""

    def shown(value: Any) -> Any:
        if isinstance(value, Text):
            return _calm(text_html(value, voice.code), voice)
        return _calm(as_html(value), voice) if isinstance(value, str) else value

    made = Environment(
        loader=FileSystemLoader(TEMPLATES),
        extensions=["jinja2.ext.i18n"],
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        finalize=shown,
        bytecode_cache=_COMPILED[voice.direction],
    )
    install(made, voice)
    made.globals["page_line"] = _page_line(voice)
    return made


def _calm(words: Markup, voice: Voice) -> Markup:
    """Return words without isolates where the line runs from left to right, where they change nothing.

    The layout engine sometimes breaks a line early before an inline element.
    """
    return (
        words if voice.direction == "rtl" or 'dir="rtl"' in words else Markup(_ISOLATE.sub(r"\1", str(words)))
    )


def _page_line(voice: Voice) -> Markup:
    """Return the words of `page_of`, with places that the style sheet fills with the page numbers."""
    words = Markup(escape(voice.gettext("Page {page} of {total}")))
    place = Markup('<bdi dir="ltr"><span class="{}"></span></bdi>')
    return words.format(page=place.format("page"), total=place.format("pages"))


def _style(job: BookletJob) -> Markup:
    tokens = (job.assets / "tokens.css").read_text(encoding="utf-8")
    own = "".join((TEMPLATES / name).read_text(encoding="utf-8") for name in ("booklet.css", PARTING))
    start, end = ("right", "left") if job.voice.direction == "rtl" else ("left", "right")
    if job.format.narrow:
        own += (TEMPLATES / "narrow.css").read_text(encoding="utf-8")
    rule = _NARROW_RULE if job.format.narrow else _WIDE_RULE
    paper = rule.format(size=job.format.size, start=start, end=end, foot=_FOOT)
    parts = (font_rules(), tokens, mark_rules(tokens, job.voice.direction), own, paper)
    # The sources are our own files; escaping would break the quotes of the rules.
    return Markup("\n".join(parts))
