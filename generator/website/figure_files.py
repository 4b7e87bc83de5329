"""Writes the pictures once for all languages: they hold no text and never turn round with the script."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from generator.figures.pictures import Gallery, Shown

FOLDER = "assets/figures"
_SIZE = re.compile(r'viewBox="\S+ \S+ (\S+) (\S+)"')


@dataclass(frozen=True)
class FigureFact:
    """The pictures of one item, as paths from the site's root: start first; moving is empty for a position.

    width, height: of each picture, in whole pixels, so that a page keeps their place while they load.
    """

    stills: tuple[str, ...]
    moving: str
    width: int
    height: int


def write_figures(gallery: Gallery, site: Path) -> Mapping[str, FigureFact]:
    """Write every picture below `site` and return what there is, by item (``exercise/variation``).

    A file carries a fingerprint in its name, so that a browser never mixes two editions.
    """
    found = {}
    for item, joint in gallery.default_joint.items():
        pictures = gallery.pictures.get(Shown(item, joint))
        if pictures is None or not pictures.stills:
            continue
        width, height = _size(pictures.stills[0])
        found[item] = FigureFact(
            stills=tuple(_put(site, item, str(at), text) for at, text in enumerate(pictures.stills, 1)),
            moving=_put(site, item, "moving", pictures.moving) if pictures.moving else "",
            width=width,
            height=height,
        )
    return found


def _size(picture: str) -> tuple[int, int]:
    """Return width and height in whole pixels; raises ValueError for a picture without a box."""
    box = _SIZE.search(picture)
    if box is None:
        raise ValueError("a picture has no viewBox")
    return round(float(box[1])), round(float(box[2]))


def _put(site: Path, item: str, which: str, text: str) -> str:
    content = (text.rstrip("\n") + "\n").encode("utf-8")
    name = f"{item.replace('/', '.')}-{which}.{hashlib.sha256(content).hexdigest()[:12]}.svg"
    target = site / FOLDER / name
    target.parent.mkdir(parents=True, exist_ok=True)
    target.write_bytes(content)
    return f"{FOLDER}/{name}"
