"""Booklets that the small site knows by their codes: printed now, older, the same to do, and gone."""

from __future__ import annotations

from dataclasses import replace

from generator.steps.editions import known_paper
from generator.website.values import SiteInput
from tests.content import FILES, with_change
from tests.review.paper import PROGRAMME, code, edition, facts_of_files, ledger
from tests.website.small_site import SERVED, site_inputs

FILE = f"programmes/{PROGRAMME}.yml"
NOW = facts_of_files()
# An older state: more of the exercise, a restriction less, other words.
OLD = with_change(
    FILES, FILE, "[2 x 8, 3 x 8, 3 x 10, 3 x 10 with light band]", "[2 x 8, 3 x 8, 3 x 10, 3 x 12]"
)
OLD = with_change(OLD, "exercises/heel-raise.yml", "- Lower slowly.", "- Lower.")
OLD = with_change(OLD, FILE, "id: no-jumping", "id: no-hopping")
CURRENT, GERMAN, CHANGED, SAME, GONE = (code(number) for number in (11, 12, 13, 14, 15))
PAPER = known_paper(
    ledger(
        edition(facts_of_files(OLD), CHANGED, code(16)),
        edition(NOW, SAME),
        edition(NOW, GONE, phase=9),
    ),
    {(PROGRAMME, 2, "en"): NOW},
    {CURRENT: (PROGRAMME, 2, "en"), GERMAN: (PROGRAMME, 2, "de")},
)


def served_inputs() -> tuple[SiteInput, ...]:
    """Return what the pages that are opened in a browser are made from, with the booklets that are out."""
    return tuple(replace(one, paper=PAPER) for one in site_inputs(SERVED))
