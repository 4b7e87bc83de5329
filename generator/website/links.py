"""Follows every link of the finished site, because MkDocs does not look into the HTML of our pages."""

from __future__ import annotations

import posixpath
from collections.abc import Iterator
from dataclasses import dataclass
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit

from generator.problems import Place, Problem, Rule, in_order

BROKEN_LINK = Rule(
    code="site-broken-link",
    symptom="A link of the finished site leads nowhere.",
    cause="The page, picture or booklet it names was not made, or the spot on that page does not exist.",
    remedy="name what exists, or remove the link",
)
OUTSIDE_REQUEST = Rule(
    code="site-outside-request",
    symptom="A page would load something from another host.",
    cause="A picture, style or script is named by a full address; the clinic's network may have no way out.",
    remedy="put the file into the project and name it by a relative path",
    safety=True,
)


@dataclass(frozen=True)
class _Use:
    line: int
    address: str
    loads: bool


class _Page(HTMLParser):
    """Collects what a page links to, what it loads, and the spots it offers."""

    def __init__(self) -> None:
        super().__init__()
        self.uses: list[_Use] = []
        self.spots: set[str] = set()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        values = {name: value or "" for name, value in attrs}
        if "id" in values:
            self.spots.add(values["id"])
        for name in ("href", "src"):
            if name in values and values.get("rel") != "alternate":
                self.uses.append(_Use(self.getpos()[0], values[name], name == "src" or tag == "link"))


def check_links(site: Path) -> tuple[Problem, ...]:
    """Return every relative link under `site` that leads nowhere, and every load from another host."""
    pages = {path.relative_to(site).as_posix(): _read(path) for path in sorted(site.rglob("*.html"))}
    files = {path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file()}
    return in_order(
        problem
        for name, page in pages.items()
        for use in page.uses
        for problem in _judge(name, use, pages, files)
    )


def _read(path: Path) -> _Page:
    page = _Page()
    page.feed(path.read_text("utf-8"))
    page.close()
    return page


def _judge(name: str, use: _Use, pages: dict[str, _Page], files: set[str]) -> Iterator[Problem]:
    parts = urlsplit(use.address)
    place = Place(name, use.line)
    if parts.scheme or parts.netloc:
        if use.loads and parts.scheme != "data":
            yield OUTSIDE_REQUEST.at(place, f'it loads "{use.address}"')
        return
    folder = posixpath.dirname(name)
    target = posixpath.normpath(posixpath.join(folder, unquote(parts.path))) if parts.path else name
    if target not in files:
        yield BROKEN_LINK.at(place, f'"{use.address}" leads to {target}, which does not exist')
    elif parts.fragment and target in pages and unquote(parts.fragment) not in pages[target].spots:
        yield BROKEN_LINK.at(place, f'"{use.address}" names a spot that {target} does not have')
