"""Writes the two pages that speak every language: the first page, and the one for lost readers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import urlsplit

from jinja2 import Environment
from markupsafe import Markup

from generator.catalogue.clinic import Clinic
from generator.website.addresses import EXERCISES, HOME, WARNING_SIGNS
from generator.website.assets import Assets
from generator.website.config import Language
from generator.website.environment import environment
from generator.website.frame import clinic_line
from generator.website.values import PageFact, SiteInput


@dataclass(frozen=True)
class Greeting:
    """What a root page says in one language, as markup."""

    language: Language
    body: Markup


def base_path(clinic: Clinic) -> str:
    """Return the path that the site is served under, a slash at both ends; ``/`` without a base address."""
    path = urlsplit(clinic.base_address or "").path.strip("/")
    return f"/{path}/" if path else "/"


def write_root(sites: Sequence[SiteInput], assets: Assets, output: Path) -> tuple[PageFact, ...]:
    """Write ``index.html`` and ``404.html`` for all languages under `output`; say what the audit must find.

    `sites` are all published languages, the one the content is written in first. The page for lost readers
    is served at any depth, so it alone uses addresses that begin with a slash.
    """
    first = sites[0]
    speaking = environment(first.voice, first.catalogue.source_language)
    clinic = first.catalogue.clinic
    for name, root in (("index", ""), ("404", base_path(clinic))):
        greetings = tuple(_greeting(site, f"greeting-{name}.html", root) for site in sites)
        text = _page(speaking, first, greetings, assets, name, root)
        (output / f"{name}.html").write_text(text, encoding="utf-8", newline="\n")
    required = tuple(str(site.catalogue.safety.deferral) for site in sites)
    return (PageFact("index.html", (), required), PageFact("404.html", (), required))


def _page(
    speaking: Environment,
    first: SiteInput,
    greetings: tuple[Greeting, ...],
    assets: Assets,
    name: str,
    root: str,
) -> str:
    lines = speaking.get_template("root.html").render(
        name=name,
        root=root,
        assets=assets,
        greetings=greetings,
        clinic=first.catalogue.clinic,
        home=HOME,
    )
    return "\n".join(line for line in lines.splitlines() if line.strip()) + "\n"


def _greeting(site: SiteInput, template: str, root: str) -> Greeting:
    catalogue, code = site.catalogue, site.voice.code
    safety = catalogue.safety
    language = next(one for one in site.languages if one.code == code)
    speaking = environment(site.voice, catalogue.source_language)
    body = speaking.get_template(template).render(
        language=language,
        deferral=safety.deferral,
        demonstration=safety.demonstration if catalogue.clinic.demo else None,
        line=clinic_line(catalogue, site.voice),
        home=f"{root}{code}/{HOME}",
        exercises=f"{root}{code}/{EXERCISES}",
        warnings=f"{root}{code}/{WARNING_SIGNS}",
    )
    return Greeting(language, Markup(body))
