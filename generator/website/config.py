"""Writes the MkDocs configuration of one language: words and addresses of the frame around its pages."""

from __future__ import annotations

import importlib.resources
import json
import os
from collections.abc import Sequence
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any

from generator.website.assets import Assets, search_language
from generator.website.engine import SiteJob

# Where the search parts words. No word is left out or cut to a stem: "not" is a word, and letters of any
# script must survive at a word's edge. The theme looks for the beginning of each word asked for, and a
# stem has other letters than the word's beginning: German "Übung" becomes "ubung" and is never found.
WORD_EDGES = r"""[\s\-–—/.,;:!?()\[\]"“”„«»‘’،؛؟…·]+"""
# Words that are written onto the next one are edges too: Arabic "the", alone or after "and", "with", "for".
_WRITTEN_ON = {"ar": "(?:[وفبك]?ال|لل)"}


@dataclass(frozen=True)
class Language:
    """A language as readers choose it: BCP 47 code, its own name, ``ltr`` or ``rtl``."""

    code: str
    name: str
    direction: str


@dataclass(frozen=True)
class Line:
    """A telephone line: what it is for, the number as people read it, and as a telephone dials it."""

    label: str
    number: str
    dial: str


@dataclass(frozen=True)
class Words:
    """The frame's own words in one language; a ``#`` in the search's words stands for a count."""

    skip: str
    menu: str
    languages: str
    safety: str
    search: str
    search_clear: str
    search_results: str
    search_start: str
    search_none: str
    search_one: str
    search_other: str
    search_more_one: str
    search_more_other: str
    search_missing: str


@dataclass(frozen=True)
class Frame:
    """All that stands around every page of one language.

    deferral: the note to the treating clinician. demonstration: the line of a demo, or "".
    warning_path: the page of warning signs, from the language's root. small_print: lines of the footer.
    base: the address the site is served under, without a closing slash, or "".
    """

    title: str
    clinic: str
    deferral: str
    warning_label: str
    warning_path: str
    telephones: tuple[Line, ...]
    words: Words
    demonstration: str = ""
    address: str = ""
    small_print: tuple[str, ...] = ()
    base: str = ""


@dataclass(frozen=True)
class Entry:
    """An entry of the menu: a page (path of its Markdown file) or a group of entries."""

    title: str
    path: str = ""
    children: tuple[Entry, ...] = ()


def write_config(
    job: SiteJob,
    project: Path,
    frame: Frame,
    languages: Sequence[Language],
    menu: Sequence[Entry],
    assets: Assets,
    outside_menu: Sequence[str] = (),
) -> None:
    """Write the configuration `job` names. It inherits from mkdocs.yml in `project`.

    `languages` are all languages of the site in the chooser's order; `outside_menu` names pages the menu
    leaves out, as patterns of a .gitignore file.
    """
    here = job.config.parent
    here.mkdir(parents=True, exist_ok=True)
    own = next(language for language in languages if language.code == job.language)
    settings = {
        "INHERIT": _relative(project / "mkdocs.yml", here),
        "site_name": frame.title,
        "docs_dir": _relative(job.pages, here),
        "site_dir": _relative(job.output, here),
        "theme": {
            "language": _theme_language(job.language),
            "direction": job.direction,
            "custom_dir": _relative(project / "overrides", here),
        },
        "plugins": {"search": _search(job.language)},
        "nav": [_entry(entry) for entry in menu],
        "not_in_nav": "\n".join(outside_menu),
        "extra": {"frame": _frame(frame, own, languages, assets)},
    }
    # JSON is YAML too, and quotes everything: no text can turn into a number, a date or a tag.
    job.config.write_text(json.dumps(settings, ensure_ascii=False, indent=1) + "\n", "utf-8", newline="\n")


def _frame(frame: Frame, own: Language, languages: Sequence[Language], assets: Assets) -> dict[str, Any]:
    values = asdict(frame)
    values["warning_signs"] = {"label": values.pop("warning_label"), "path": values.pop("warning_path")}
    values["language"] = asdict(own)
    values["alternates"] = [asdict(language) for language in languages]
    values["assets"] = asdict(assets)
    return values


def _search(code: str) -> dict[str, Any]:
    """Return the search's settings, all said: the theme would fall back to English rules in silence."""
    edges, before = WORD_EDGES, _WRITTEN_ON.get(code.split("-")[0])
    if before:
        edges = f"^{before}|{edges}{before}?"
    return {"lang": [search_language(code)], "separator": edges, "pipeline": []}


def _theme_language(code: str) -> str:
    """Return the nearest language the theme knows. The words are ours; an unknown one would stop it."""
    folder = importlib.resources.files("material").joinpath("templates", "partials", "languages")
    for name in (code, code.split("-")[0]):
        if folder.joinpath(f"{name}.html").is_file():
            return name
    return "en"


def _entry(entry: Entry) -> dict[str, Any]:
    if entry.children:
        return {entry.title: [_entry(child) for child in entry.children]}
    return {entry.title: entry.path}


def _relative(path: Path, start: Path) -> str:
    return Path(os.path.relpath(path, start)).as_posix()
