"""Puts all exercises in one line, so that next and previous follow the computed order."""

from __future__ import annotations

from collections.abc import Mapping

from generator.website.values import SiteInput


def sequence(site: SiteInput) -> tuple[str, ...]:
    """Return the ids of all exercises: in the order of introduction, those of no programme at the end."""
    placed = (
        place.exercise
        for programme in site.catalogue.programmes
        for place in sorted(site.orders[programme].places, key=lambda one: one.overall)
    )
    return tuple(dict.fromkeys((*placed, *site.catalogue.exercises)))


def neighbours(site: SiteInput) -> Mapping[str, tuple[str | None, str | None]]:
    """Return for each exercise the one before and the one after it."""
    line = sequence(site)
    around = zip((None, *line[:-1]), line, (*line[1:], None), strict=True)
    return {here: (before, after) for before, here, after in around}
