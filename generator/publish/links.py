"""Follows every link inside the site, so that nobody meets a missing page on the way to the warning signs."""

from __future__ import annotations

import posixpath
import re
from collections import Counter
from collections.abc import Collection, Iterator, Mapping
from urllib.parse import unquote

from generator.problems import Place, Problem, Rule
from generator.publish.outside import leads_outside
from generator.publish.pages import Link, PageFacts

NO_FILE = Rule(
    "link-to-no-file",
    "A link or picture leads to a file that is not in the site.",
    "The page or asset was renamed, left out in this language, or the address has a typing mistake.",
    "correct the address, or restore the file",
)
NO_ANCHOR = Rule(
    "link-to-no-place",
    "A link leads to a place in a page that does not exist there.",
    "The heading or element with that id was renamed or removed.",
    "correct the part after # or give the element that id",
)
DOUBLE_ID = Rule(
    "same-id-twice",
    "Two elements of one page have the same id.",
    "A part of a template is used twice in a page; links and labels then lead to the first only.",
    "give each element an id of its own",
)
NOT_RELATIVE = Rule(
    "link-not-relative",
    "A link is not written relative to its page.",
    "It begins with /, //, or file:; the site then breaks in a subfolder or when it is read from a folder.",
    "write the address relative to the page",
)
RULES = (NO_FILE, NO_ANCHOR, DOUBLE_ID, NOT_RELATIVE)

_SCHEME = re.compile(r"\s*([a-z][a-z0-9+.-]*):", re.IGNORECASE)
_LEAVING = frozenset(
    {"http", "https", "mailto", "tel", "sms", "data", "javascript", "vbscript", "blob", "about"}
)
_NOT_FOUND_PAGE = "404.html"


def resolve(page: str, address: str, base_path: str = "/") -> str | None:
    """Return the path in the tree that an address of `page` leads to, or nothing when it leads elsewhere.

    A path that climbs out of the tree comes back beginning with ``..`` and so is in no tree.
    """
    bare = address.strip().split("#", 1)[0].split("?", 1)[0]
    if _SCHEME.match(bare) or leads_outside(bare):
        return None
    if not bare:
        return page
    decoded = unquote(bare)
    if decoded.startswith("/"):
        inside = decoded.startswith(base_path)
        target = posixpath.normpath(decoded[len(base_path) :] or ".") if inside else "../" + decoded
    else:
        target = posixpath.normpath(posixpath.join(posixpath.dirname(page), decoded))
    return f"{target}/" if decoded.endswith("/") and target != "." else target


def check(
    pages: Mapping[str, PageFacts],
    files: Collection[str],
    choice_pages: Collection[str] = (),
    base_path: str = "/",
) -> Iterator[Problem]:
    """Yield every link that leads nowhere and every id given twice, over all pages of a tree."""
    known = files if isinstance(files, (set, frozenset)) else frozenset(files)
    anchors = {path: frozenset(name for name, _ in facts.ids) for path, facts in pages.items()}
    for path, facts in pages.items():
        yield from _double_ids(facts)
        for link in facts.links:
            if (problem := _relative(path, link)) is not None:
                yield problem
                continue
            target = resolve(path, link.target, base_path)
            if target is None:
                continue
            if target not in known:
                yield _missing(link, target, known)
            elif target in anchors and target not in choice_pages:
                yield from _anchor(link, target, anchors[target])


def _double_ids(facts: PageFacts) -> Iterator[Problem]:
    """Yield a problem at every repetition of an id."""
    counted: Counter[str] = Counter()
    for name, place in facts.ids:
        counted[name] += 1
        if counted[name] > 1:
            yield DOUBLE_ID.at(place, f"the id {name!r} is already used in this page")


def _relative(path: str, link: Link) -> Problem | None:
    """Return the problem of an address that only works on one server, or none.

    The page for unknown addresses is served at any depth, so only there an address may begin with ``/``.
    """
    address = link.target
    scheme = _SCHEME.match(address)
    if scheme is None:
        # What is loaded from another host is found by the audit of requests.
        allowed = not link.followed if leads_outside(address) else path == _NOT_FOUND_PAGE
        if address.startswith(("/", "\\")) and not allowed:
            return NOT_RELATIVE.at(link.place, f"the address {address!r} begins with a slash")
    elif scheme.group(1).lower() not in _LEAVING:
        return NOT_RELATIVE.at(link.place, f"the address {address!r} does not lead to a page of the web")
    return None


def _missing(link: Link, target: str, files: Collection[str]) -> Problem:
    """Return the problem of a target that is no file; a folder is named as such."""
    index = posixpath.normpath(posixpath.join(target, "index.html"))
    if index in files:
        return NO_FILE.at(
            link.place,
            f"{link.target!r} leads to a folder, which shows a list of files when read without a server",
            f"Lead the link to {posixpath.basename(index)} in that folder.",
        )
    return NO_FILE.at(link.place, f"{link.target!r} leads to {target}, which is not in the site")


def _anchor(link: Link, target: str, ids: Collection[str]) -> Iterator[Problem]:
    """Yield the problem of a fragment that names no id; ``#``, ``#top`` and ``name=value`` need none."""
    _, _, raw = link.target.partition("#")
    name = unquote(raw).split(":~:", 1)[0]
    if name in ("", "top") or "=" in name or "(" in name or name in ids:
        return
    yield NO_ANCHOR.at(link.place, f"{target} has no element with the id {name!r}")


def style_links(path: str, addresses: Iterator[tuple[str, int]]) -> PageFacts:
    """Return the addresses of a stylesheet file as facts, so that they are followed like those of a page."""
    places = ((address, Place(path, line, 1)) for address, line in addresses if address)
    links = tuple(Link(address, place, followed=False, clickable=False) for address, place in places)
    return PageFacts(path, links=links)
