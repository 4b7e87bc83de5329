"""Gathers the rules of all rooms, so that no finding is without words and every code is in the reference."""

from __future__ import annotations

from generator import checks, editing, publish, reading, wording
from generator.booklets import rules as booklets
from generator.problems import Rule
from generator.progression import one_patient
from generator.review import editions as review_editions
from generator.steps import (
    figures,
    gaps,
    languages,
    previewing,
    reviewing,
    states,
    translating,
    unreviewed,
    weights,
)
from generator.website import engine

ALL_RULES: tuple[Rule, ...] = tuple(
    sorted(
        {
            *reading.RULES,
            *checks.RULES,
            *wording.RULES,
            *engine.RULES,
            *booklets.RULES,
            *publish.RULES,
            *editing.RULES,
            *languages.RULES,
            *previewing.RULES,
            *translating.RULES,
            *reviewing.RULES,
            *unreviewed.RULES,
            *weights.RULES,
            *figures.RULES,
            *gaps.RULES,
            *one_patient.RULES,
            *review_editions.RULES,
            *states.RULES,
        },
        key=lambda rule: rule.code,
    )
)
