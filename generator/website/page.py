"""Holds one page before it is written, and writes it so that no text in it can turn into markup."""

from __future__ import annotations

import json
import posixpath
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from types import MappingProxyType
from typing import Any

from jinja2 import Environment
from markupsafe import Markup

from generator.website.values import PageFact
from generator.wording.html import as_html
from generator.wording.isolation import plain

# A fence or a stray mark of Markdown would be read before the page's HTML is.
_MARKDOWN = {"`": "&#96;", "~": "&#126;"}


@dataclass(frozen=True, kw_only=True)
class Page:
    """A page of one language: what it is called, which template shows which values, what the audit must find.

    path, previous, next: from the language's folder, ending in ``.html``. languages: codes of the only
    languages that have this page; empty where all have it. found: whether the site's search lists it.
    listed: whether search engines may list it. script: name of a script of its own, or "".
    """

    path: str
    template: str
    title: str
    description: str
    values: Mapping[str, Any] = field(default_factory=lambda: MappingProxyType({}))
    doses: tuple[str, ...] | None = ()
    required: tuple[str, ...] = ()
    previous: str = ""
    next: str = ""
    languages: tuple[str, ...] = ()
    found: bool = True
    listed: bool = True
    reviewed: str = ""
    script: str = ""

    @property
    def fact(self) -> PageFact:
        """Return what the audit must find."""
        said = (self.reviewed,) if self.reviewed else ()
        return PageFact(self.path, self.doses, (*self.required, *said))


def href(here: str, target: str) -> str:
    """Return the address of `target` as a page at `here` writes it; both from the language's folder."""
    path, mark, spot = target.partition("#")
    return posixpath.relpath(path, posixpath.dirname(here) or ".") + mark + spot


def write_page(page: Page, environment: Environment, folder: Path) -> None:
    """Write the page under `folder`."""
    target = folder / source_name(page.path)
    target.parent.mkdir(parents=True, exist_ok=True)
    target.write_text(page_text(page, environment), encoding="utf-8", newline="\n")


def source_name(path: str) -> str:
    """Return the name of the Markdown file from which the page at a path is made."""
    return f"{path.removesuffix('.html')}.md"


def page_text(page: Page, environment: Environment) -> str:
    """Return the page as Markdown that holds nothing but HTML."""
    body = environment.get_template(page.template).render(
        **page.values, title=page.title, to=lambda target: href(page.path, target)
    )
    if page.reviewed:
        body += f'\n<p class="pb-quiet">{as_html(page.reviewed)}</p>\n'
    return f"{_front_matter(page)}\n{_wrapped(body)}"


def _front_matter(page: Page) -> str:
    values = {
        "title": plain(page.title),
        "description": plain(page.description),
        "previous": page.previous,
        "next": page.next,
        "languages": list(page.languages),
        "noindex": not page.listed,
        "script": page.script,
        "search": {} if page.found else {"exclude": True},
    }
    # JSON is YAML too, and quotes everything: no title can turn into a number, a date or a tag.
    lines = [f"{name}: {json.dumps(value, ensure_ascii=True)}\n" for name, value in values.items() if value]
    return "---\n" + "".join(lines) + "---\n"


def _wrapped(body: str) -> Markup:
    """Return the body in the one element that Markdown passes on untouched."""
    # A blank line would end the element for Markdown.
    lines = (line.strip() for line in body.splitlines())
    text = "\n".join(line for line in lines if line)
    for sign, reference in _MARKDOWN.items():
        text = text.replace(sign, reference)
    return Markup(f'<div class="pb-page">\n{text}\n</div>\n')
