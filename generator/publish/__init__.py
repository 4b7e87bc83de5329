"""Examines the finished site and puts it in the place of the old one, whole or not at all.

Reading order: `staging` (the folder beside), `audit` (it looks for what `expected` says), `manifest`, `swap`.
"""

from __future__ import annotations

from generator.problems import Rule
from generator.publish import doses, expected, links, manifest, notes, outside, refusals, sheets
from generator.publish.audit import audit_tree
from generator.publish.cache import claim
from generator.publish.expected import Audit, Expected, ExpectedPdf
from generator.publish.manifest import verify
from generator.publish.refusals import Busy, NotPublishedError, Refused
from generator.publish.staging import Stage, open_stage

RULES: tuple[Rule, ...] = (
    *refusals.RULES,
    *manifest.RULES,
    *expected.RULES,
    *notes.RULES,
    *doses.RULES,
    *sheets.RULES,
    *outside.RULES,
    *links.RULES,
)

__all__ = [
    "RULES",
    "Audit",
    "Busy",
    "Expected",
    "ExpectedPdf",
    "NotPublishedError",
    "Refused",
    "Stage",
    "audit_tree",
    "claim",
    "open_stage",
    "verify",
]
