"""Names what the program is built from and the typefaces it hands out, each with its licence."""

from __future__ import annotations

import importlib.resources
import json
from dataclasses import dataclass
from typing import Any

from generator.website.fonts import FACES
from generator.wording.voice import Voice


@dataclass(frozen=True)
class Licence:
    """One thing by other makers: its name, version and licence as they write it, and what it is for.

    users: names of the packages that need it, where the program itself does not ask for it.
    """

    name: str
    version: str
    licence: str
    purpose: str
    users: tuple[str, ...] = ()


def packages(voice: Voice) -> tuple[Licence, ...]:
    """Return every package of the lock, sorted by name; what only serves another one names that one."""
    direct = _purposes(voice)
    return tuple(
        Licence(
            one["name"],
            one["version"],
            one["licence"],
            direct.get(one["name"], ""),
            () if one["name"] in direct else tuple(one["needed_by"]),
        )
        for one in _recorded()
    )


def typefaces(voice: Voice) -> tuple[Licence, ...]:
    """Return each family of type whose files the site and the booklets carry."""
    named = {
        "fontpkg-atkinson-hyperlegible": ("Atkinson Hyperlegible", voice.gettext("Text")),
        "fontpkg-noto-sans": ("Noto Sans", voice.gettext("Figures, Greek and Cyrillic letters")),
        "fontpkg-tajawal": ("Tajawal", voice.gettext("Arabic letters")),
    }
    used = {face.package.replace("_", "-") for face in FACES}
    return tuple(
        Licence(named[one["name"]][0], one["version"], one["licence"], named[one["name"]][1])
        for one in _recorded()
        if one["name"] in used
    )


def _recorded() -> list[dict[str, Any]]:
    file = importlib.resources.files("generator.website").joinpath("licences.json")
    found: list[dict[str, Any]] = json.loads(file.read_text(encoding="utf-8"))["packages"]
    return found


def _purposes(voice: Voice) -> dict[str, str]:
    """Return what each package is for that the program itself asks for."""
    pages = voice.gettext("Pages and search")
    templates = voice.gettext("Templates of pages and sheets")
    read_back = voice.gettext("Checking finished sheets")
    computed = voice.gettext("Computing order and postures")
    fonts = voice.gettext("Typefaces")
    return {
        "mkdocs": pages,
        "mkdocs-material": pages,
        "jinja2": templates,
        "markupsafe": templates,
        "pyyaml": voice.gettext("Reading the content"),
        "weasyprint": voice.gettext("Printing the booklets"),
        "babel": voice.gettext("Languages, dates and numbers"),
        "beautifulsoup4": voice.gettext("Checking finished pages"),
        "click": voice.gettext("Command line"),
        "segno": voice.gettext("Codes for the telephone’s camera"),
        "pypdf": read_back,
        "pypdfium2": read_back,
        "pikepdf": read_back,
        "fontpkg-atkinson-hyperlegible": fonts,
        "fontpkg-noto-sans": fonts,
        "fontpkg-tajawal": fonts,
        "fonttools": fonts,
        "numpy": computed,
        "scipy": computed,
        "shapely": voice.gettext("Drawing the figures"),
    }
