"""Carries what a clinician says where nobody measured: like which exercise, between which two, or no load."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from generator.catalogue.base import Record


class JudgedAs(Enum):
    """How a judgement is worded; it never gives a percentage of its own."""

    LIKE = "like"
    BETWEEN = "between"
    NO_LOAD = "no load"


@dataclass(frozen=True, kw_only=True)
class Judgement(Record):
    """How hard muscles work in an exercise that nobody measured, by a person with a reason.

    kind: how it is worded. muscles: ids for which it holds. others: the exercises it refers to, as
    ``exercise`` or ``exercise/variation``: one for "like", two for "between", none for "no load".
    role: role of the person who judged. reason: why; for clinicians, in the language of the content.
    """

    kind: JudgedAs
    muscles: tuple[str, ...]
    others: tuple[str, ...] = ()
    role: str
    reason: str
