"""Remembers which finished files were read and found sound, so that the same file is not read again."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Sequence
from typing import Any

from generator.catalogue.fingerprints import plain
from generator.problems import Place
from generator.publish.expected import Audit
from generator.publish.pages import Link, PageFacts
from generator.shelf import Shelf


def name_of(shelf: Shelf, path: str, content: bytes, expected: Audit) -> str:
    """Return the name of a reading: it depends on the bytes and on all that is expected of them."""
    return shelf.name("read", path, hashlib.sha256(content).hexdigest(), plain(expected))


def remember(shelf: Shelf, name: str, facts: PageFacts | None) -> None:
    """Keep that a file is sound, with the links and ids that the check of links needs."""
    found = None
    if facts is not None:
        links = [[link.target, *_where(link.place), link.followed, link.clickable] for link in facts.links]
        found = {"links": links, "ids": [[id_, *_where(place)] for id_, place in facts.ids]}
    shelf.put(name, json.dumps(found, ensure_ascii=False).encode("utf-8"))


def remembered(shelf: Shelf, name: str, path: str) -> tuple[PageFacts | None] | None:
    """Return what is known of a sound file; None where nothing is."""
    work = shelf.take(name)
    if work is None:
        return None
    found = json.loads(work)
    if found is None:
        return (None,)
    links = tuple(Link(one[0], _place(path, one[1:3]), one[3], one[4]) for one in found["links"])
    ids = tuple((one[0], _place(path, one[1:3])) for one in found["ids"])
    return (PageFacts(path, links=links, ids=ids),)


def _where(place: Place) -> tuple[int, int]:
    return place.line, place.column


def _place(path: str, where: Sequence[Any]) -> Place:
    return Place(path, *where)
