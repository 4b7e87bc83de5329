"""Writes all pages of one language: the one door of this room for whoever builds the site."""

from __future__ import annotations

from pathlib import Path

from generator.website.values import PageFact, SiteInput


def write_pages(site: SiteInput, folder: Path) -> tuple[PageFact, ...]:
    """Write the Markdown pages of one language under `folder` and return what the audit must find in each."""
    raise NotImplementedError
