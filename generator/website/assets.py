"""Puts what all languages share into one folder: styles, scripts, fonts and the parts of the theme we use.

The theme would copy 3.6 MB into every language. Only its script, its search worker and search rules that a
language at hand needs are kept, once. Our own files carry a fingerprint in their name, so a browser
never mixes two editions.
"""

from __future__ import annotations

import hashlib
import importlib.resources
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from generator.website.fonts import FontFile, font_faces

LIGHT_STYLES = (
    *("tokens.css", "css/frame.css", "css/parts.css", "css/session.css", "css/find.css", "css/check.css"),
    *("css/clinicians.css", "css/paper.css"),
)
DARK_STYLES = ("tokens-dark.css",)
DARK = "screen and (prefers-color-scheme: dark)"
SCRIPTS = ("js/frame.js",)
CHOOSER = "js/choose.js"
LOST = "js/lost.js"
# Scripts of single pages, by the name that the page gives.
OWN_SCRIPTS = {name: f"js/{name}.js" for name in ("check", "session", "dates", "find", "tables", "patient")}
ICON = "icon.svg"
# Words are found by their beginning in every language, which word stems would spoil; only a script without
# blanks between words needs rules of its own.
SEARCH_RULES = {"ja": ("min/lunr.stemmer.support.min.js", "min/lunr.ja.min.js", "tinyseg.js")}


@dataclass(frozen=True)
class Style:
    """A style sheet: its path from the site's root, and the media it is for (empty: all)."""

    path: str
    media: str = ""


@dataclass(frozen=True)
class Assets:
    """Where the shared files lie, as paths from the site's root; `chooser` is empty for a single language.

    lost: script of the page for lost readers. own: scripts of single pages, by name.
    """

    styles: tuple[Style, ...]
    scripts: tuple[str, ...]
    icon: str
    bundle: str
    worker: str
    lost: str
    chooser: str = ""
    own: Mapping[str, str] = field(default_factory=dict)


def search_language(code: str) -> str:
    """Return the search's name for the rules of a language: its code where it needs some, else ``en``."""
    name = code.lower().split("-")[0]
    return name if name in SEARCH_RULES else "en"


def write_assets(sources: Path, fonts: Sequence[FontFile], languages: Iterable[str], site: Path) -> Assets:
    """Write ``assets/`` under `site` for the given language codes and return where everything lies.

    `sources` is the project's folder site_assets/.
    """
    codes = tuple(languages)
    for font in fonts:
        _put(site, f"assets/fonts/{font.woff2.name}", font.woff2.read_bytes())
    faces = font_faces(fonts, "../fonts/").encode()
    light = faces + _joined(sources, LIGHT_STYLES)
    icon = (sources / ICON).read_bytes()
    theme = _theme()
    bundle = _only(theme / "javascripts", "bundle.*.min.js")
    worker = _only(theme / "javascripts" / "workers", "search.*.min.js")
    for path in (bundle, worker, *_word_rules(theme, codes)):
        _put(site, f"assets/{path.relative_to(theme).as_posix()}", path.read_bytes())
    return Assets(
        styles=(
            Style(_put_named(site, "css/phasebook", ".css", light)),
            Style(_put_named(site, "css/dark", ".css", _joined(sources, DARK_STYLES)), DARK),
        ),
        scripts=tuple(_put_script(sources, name, site) for name in SCRIPTS),
        icon=_put_named(site, "icon", ".svg", icon),
        bundle=f"assets/{bundle.relative_to(theme).as_posix()}",
        worker=f"assets/{worker.relative_to(theme).as_posix()}",
        lost=_put_script(sources, LOST, site),
        chooser=_put_script(sources, CHOOSER, site) if len(codes) > 1 else "",
        own={name: _put_script(sources, script, site) for name, script in OWN_SCRIPTS.items()},
    )


def _theme() -> Path:
    return Path(str(importlib.resources.files("material"))) / "templates" / "assets"


def _only(folder: Path, pattern: str) -> Path:
    """Return the one file of the theme that fits; a theme that changed its files must not go unnoticed."""
    found = sorted(folder.glob(pattern))
    if len(found) != 1:
        raise FileNotFoundError(f"the theme has {len(found)} files {pattern}; one was expected")
    return found[0]


def _word_rules(theme: Path, languages: Iterable[str]) -> list[Path]:
    names = sorted({file for code in languages for file in SEARCH_RULES.get(search_language(code), ())})
    return [theme / "javascripts" / "lunr" / name for name in names]


def _joined(sources: Path, names: Sequence[str]) -> bytes:
    return b"\n".join((sources / name).read_bytes() for name in names)


def _put_script(sources: Path, name: str, site: Path) -> str:
    return _put_named(site, name.removesuffix(".js"), ".js", (sources / name).read_bytes())


def _put_named(site: Path, stem: str, suffix: str, content: bytes) -> str:
    path = f"assets/{stem}.{hashlib.sha256(content).hexdigest()[:12]}{suffix}"
    _put(site, path, content)
    return path


def _put(site: Path, path: str, content: bytes) -> None:
    target = site / path
    target.parent.mkdir(parents=True, exist_ok=True)
    target.write_bytes(content)
