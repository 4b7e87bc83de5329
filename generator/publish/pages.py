"""Reads one HTML or SVG file into the few facts that the audit judges, so that no file is parsed twice.

What a stylesheet hides cannot be seen here; attributes and elements that hide are known.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field

from bs4 import BeautifulSoup
from bs4.element import NavigableString, PreformattedString, Tag

from generator.problems import Place
from generator.publish.text import plain

# Never rendered, or only as a fallback that a present-day browser does not show.
_UNSEEN = frozenset(
    {"script", "style", "template", "head", "noscript", "title", "iframe", "object", "audio", "video"}
    | {"canvas", "textarea", "option", "datalist", "metadata", "desc", "defs", "symbol", "rp"}
)
# Words go on across their borders (HTML Standard, phrasing content).
_INLINE = frozenset(
    {"a", "abbr", "b", "bdi", "bdo", "cite", "code", "data", "del", "dfn", "em", "i", "ins", "kbd", "label"}
    | {"mark", "q", "s", "samp", "small", "span", "strong", "sub", "sup", "time", "tspan", "u", "var", "wbr"}
)
_HIDING_STYLE = re.compile(r"(display\s*:\s*none|visibility\s*:\s*(hidden|collapse))", re.IGNORECASE)
_ADDRESSES = frozenset(("href", "xlink:href", "src", "poster", "data", "action", "formaction", "background"))
# Signs that change places in a right-to-left line: doses, ranges, angles, grouped digits (UAX #9, W4, N1).
_FRAGILE = re.compile(r"\d\s*[×–−-]\s*\d|\d\s*°|\d[ \u00a0\u202f]\d|\+\d")
_ISOLATED = re.compile("[\u2066\u202a\u202d][^\u2069\u202c]*[\u2069\u202c]")


@dataclass(frozen=True)
class Link:
    """A reference from one file to another or to an id: where it stands, what it says."""

    target: str
    place: Place
    followed: bool
    """Whether it is a link that a reader follows (``a``, ``area``), not something the page loads."""
    clickable: bool
    """Whether a reader sees it and can follow it (an ``a`` that is not hidden)."""


@dataclass(frozen=True)
class PageFacts:
    """What the audit knows of one file."""

    path: str
    language: str = ""
    direction: str = ""
    """The ``dir`` of the page as written on ``html``, "ltr" where nothing is written."""
    body_direction: str = ""
    """The ``dir`` written on ``body``, empty where none is."""
    headings: int = 0
    """Number of visible ``h1``."""
    shown: str = ""
    """Plain text that is readable at once."""
    reachable: str = ""
    """Plain text that is readable at once or after opening something (``details``)."""
    links: tuple[Link, ...] = ()
    ids: tuple[tuple[str, Place], ...] = ()
    fragile: tuple[tuple[str, Place], ...] = ()
    """Numbers outside any left-to-right isolation, each with the signs around it."""


@dataclass
class _Gathered:
    """What one walk collects before it is frozen."""

    shown: list[str] = field(default_factory=list)
    reachable: list[str] = field(default_factory=list)
    links: list[Link] = field(default_factory=list)
    ids: list[tuple[str, Place]] = field(default_factory=list)
    fragile: list[tuple[str, Place]] = field(default_factory=list)
    headings: int = 0


@dataclass(frozen=True)
class _State:
    """How a reader meets the content of an element."""

    reachable: bool = True
    shown: bool = True
    live: bool = True
    """Whether the element is part of the document at all (not inside ``template``)."""
    isolated: bool = True
    """Whether the nearest element that says a direction says left-to-right; a page that says none is that."""


def parse(text: str) -> BeautifulSoup:
    """Return the tree of an HTML or SVG text; of a doubled attribute the first counts, as in browsers."""
    return BeautifulSoup(text, "html.parser", on_duplicate_attribute="ignore", multi_valued_attributes=None)


def attribute(tag: Tag, name: str) -> str | None:
    """Return the value of an attribute, or nothing where it is absent."""
    value = tag.attrs.get(name)
    return None if value is None else str(value)


def place_of(tag: Tag, path: str) -> Place:
    """Return where an element begins, line and column counted from 1."""
    return Place(path, tag.sourceline or 0, (tag.sourcepos or 0) + 1)


def gather(soup: BeautifulSoup, path: str) -> PageFacts:
    """Return the facts of a parsed page."""
    got = _Gathered()
    _walk(soup, path, got)
    html, body = soup.find("html"), soup.find("body")
    return PageFacts(
        path=path,
        language=(attribute(html, "lang") or "") if isinstance(html, Tag) else "",
        direction=(attribute(html, "dir") or "ltr").lower() if isinstance(html, Tag) else "",
        body_direction=(attribute(body, "dir") or "").lower() if isinstance(body, Tag) else "",
        headings=got.headings,
        shown=plain("".join(got.shown)),
        reachable=plain("".join(got.reachable)),
        links=tuple(got.links),
        ids=tuple(got.ids),
        fragile=tuple(got.fragile),
    )


def _walk(soup: BeautifulSoup, path: str, got: _Gathered) -> None:
    """Visit the whole tree in order; a stack of our own, because a faulty page may nest thousands deep."""
    waiting: list[tuple[Iterator[object], _State, Tag]] = [(iter(soup.contents), _State(), soup)]
    while waiting:
        children, state, parent = waiting[-1]
        child = next(children, None)
        if child is None:
            waiting.pop()
            _space(parent, got)
        elif isinstance(child, Tag):
            inner = _enter(child, parent, state, path, got)
            _space(child, got)
            waiting.append((iter(child.contents), inner, child))
        elif isinstance(child, NavigableString) and not isinstance(child, PreformattedString):
            _read(str(child), parent, state, path, got)


def _space(tag: Tag, got: _Gathered) -> None:
    """Part the words before and after the border of a block."""
    if tag.name not in _INLINE:
        got.shown.append(" ")
        got.reachable.append(" ")


def _read(text: str, parent: Tag, state: _State, path: str, got: _Gathered) -> None:
    """Collect a piece of text as far as a reader meets it."""
    if not state.reachable:
        return
    got.reachable.append(text)
    if state.shown:
        got.shown.append(text)
    if not state.isolated and (found := _FRAGILE.search(_ISOLATED.sub(" ", text))):
        got.fragile.append((found.group(), place_of(parent, path)))


def _enter(tag: Tag, parent: Tag, state: _State, path: str, got: _Gathered) -> _State:
    """Note what the element itself says, and return how a reader meets its content."""
    opened = parent.name != "details" or "open" in parent.attrs or tag.name == "summary"
    style = attribute(tag, "style")
    hidden = (
        tag.name in _UNSEEN
        or "hidden" in tag.attrs
        or "popover" in tag.attrs
        or "inert" in tag.attrs
        or attribute(tag, "aria-hidden") == "true"
        or (tag.name == "dialog" and "open" not in tag.attrs)
        or (style is not None and _HIDING_STYLE.search(style) is not None)
    )
    reachable = state.reachable and not hidden
    direction = attribute(tag, "dir")
    inner = _State(
        reachable,
        state.shown and reachable and opened,
        state.live and tag.name != "template",
        state.isolated if direction is None or tag.name == "body" else direction.lower() == "ltr",
    )
    # A heading may bear no attribute; nothing else without one has an id or an address.
    if state.live and (tag.attrs or tag.name == "h1"):
        _note(tag, path, inner, got)
    return inner


def _note(tag: Tag, path: str, state: _State, got: _Gathered) -> None:
    """Collect the ids, headings and links of one element."""
    if tag.name == "h1" and state.reachable:
        got.headings += 1
    name = attribute(tag, "id")
    if name is None and tag.name == "a":
        name = attribute(tag, "name")
    if name is not None:
        got.ids.append((name, place_of(tag, path)))
    for target in _targets(tag):
        # Browsers drop line ends and tabs inside an address (URL Standard, basic parser).
        address = re.sub(r"[\t\r\n]", "", target).strip()
        followed = tag.name in ("a", "area")
        clickable = tag.name == "a" and state.shown
        got.links.append(Link(address, place_of(tag, path), followed, clickable))


def _targets(tag: Tag) -> Iterator[str]:
    """Yield every address an element names; that of ``base`` leads nowhere by itself."""
    if tag.name == "base":
        return
    for name, value in tag.attrs.items():
        if name in _ADDRESSES and not (name == "data" and tag.name != "object"):
            yield str(value)
        elif name in ("srcset", "imagesrcset"):
            yield from sources(str(value))
    if tag.name == "meta" and (refresh := refresh_target(tag)) is not None:
        yield refresh


def sources(srcset: str) -> Iterator[str]:
    """Yield the addresses of a ``srcset``: candidates parted by commas, each an address and a descriptor."""
    for candidate in re.findall(r"\s*([^\s,]\S*)(?:\s+[^,]*)?(?:,|$)", srcset):
        yield candidate.rstrip(",")


def refresh_target(tag: Tag) -> str | None:
    """Return where a ``meta`` element sends the reader, or nothing when it does not."""
    if (attribute(tag, "http-equiv") or "").lower() != "refresh":
        return None
    found = re.search(r"url\s*=\s*['\"]?([^'\"]*)", attribute(tag, "content") or "", re.IGNORECASE)
    return found.group(1).strip() if found else None
