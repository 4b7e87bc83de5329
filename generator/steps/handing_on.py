"""Hands the written pages on to another builder of sites, with all that they need lying beside them."""

from __future__ import annotations

import shutil
from dataclasses import replace
from pathlib import Path

from generator.steps.pages import Site, write_sources
from generator.website.root import write_root

SITE = "site"
# What the pages' configuration inherits from, and the frame around every page.
_OF_THE_PROJECT = ("mkdocs.yml", "overrides")


def why_not(output: Path) -> str:
    """Return why nothing can be written there, or an empty text; nothing is written."""
    if output.exists() and (not output.is_dir() or any(output.iterdir())):
        return f"'{output}' is there and is not empty; choose a new folder"
    if not output.absolute().parent.is_dir():
        return f"there is no folder '{output.absolute().parent}'; make it first, or choose another"
    return ""


def hand_on(site: Site, output: Path) -> tuple[Path, ...]:
    """Write pages, frame and shared files of `site` under `output`; return the settings of each language.

    Every path in them is relative: the folder can be carried anywhere. `mkdocs build -f en.yml` there
    fills ``site/en``, beside what all languages share.
    """
    output.mkdir(exist_ok=True)
    for name in _OF_THE_PROJECT:
        source = site.root / name
        if source.is_dir():
            shutil.copytree(source, output / name)
        else:
            shutil.copyfile(source, output / name)
    shutil.copytree(site.root / "site_assets", output / "site_assets")
    written = write_sources(replace(site, root=output, workshop=output), output / SITE)
    write_root(written.inputs, written.assets, output / SITE)
    return tuple(job.config for job in written.jobs)
