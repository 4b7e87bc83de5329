"""Knows a site that is still what this content, this program and this look would give, file for file."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from generator.publish.manifest import NAME, verify
from generator.shelf import Shelf

# What a site is made from beside the content and the program.
_LOOK = ("mkdocs.yml", "overrides", "site_assets")


@dataclass(frozen=True)
class Counted:
    """What a published site holds."""

    pages: int
    booklets: int
    sheets: int


def state_of(content: Path, root: Path, *wanted: str) -> str:
    """Return the fingerprint of all that is read. wanted: what was asked for beside the content."""
    sums = {name: _sums(root / name) for name in _LOOK}
    said = json.dumps([_sums(content), sums, *wanted], sort_keys=True)
    return hashlib.sha256(said.encode("utf-8")).hexdigest()


def remember(shelf: Shelf, state: str, output: Path, counted: Counted) -> None:
    """Keep that `output` was published from this state."""
    found = {"manifest": _sum(output / NAME), **counted.__dict__}
    shelf.put(_name(shelf, state, output), json.dumps(found).encode("utf-8"))


def still_there(shelf: Shelf, state: str, output: Path) -> Counted | None:
    """Return what `output` holds where it was published from this very state and is whole; else None."""
    work = shelf.take(_name(shelf, state, output))
    if work is None or not (output / NAME).is_file():
        return None
    found = json.loads(work)
    if found.pop("manifest") != _sum(output / NAME) or verify(output):
        return None
    return Counted(**found)


def _name(shelf: Shelf, state: str, output: Path) -> str:
    return shelf.name("published", state, output.resolve().as_posix())


def _sum(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest()


def _sums(place: Path) -> Mapping[str, str]:
    """Return the fingerprint of a file, or of each file in a folder."""
    files = sorted(place.rglob("*")) if place.is_dir() else [place]
    return {path.relative_to(place).as_posix(): _sum(path) for path in files if path.is_file()}
