"""Holds how far a programme answers the items of two reporting checklists, and where it does.

CERT: Slade, Dionne, Underwood and Buchbinder 2016, Br J Sports Med 50(23):1428-1437,
doi 10.1136/bjsports-2016-096651: 16 items, 19 answers since items 7, 14 and 16 are split.
PEMAT-P: Shoemaker, Wolf and Brach, AHRQ Publication 14-0002-EF, 2013: 24 items for printed material; items 13
and 14 are for sound and film only. The items' words here are our own.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum


class Checklist(Enum):
    """The two lists."""

    CERT = "CERT"
    PEMAT = "PEMAT-P"


class Item(Enum):
    """One answer that a list asks for, as list and number."""

    CERT_1 = "CERT 1"
    CERT_2 = "CERT 2"
    CERT_3 = "CERT 3"
    CERT_4 = "CERT 4"
    CERT_5 = "CERT 5"
    CERT_6 = "CERT 6"
    CERT_7A = "CERT 7a"
    CERT_7B = "CERT 7b"
    CERT_8 = "CERT 8"
    CERT_9 = "CERT 9"
    CERT_10 = "CERT 10"
    CERT_11 = "CERT 11"
    CERT_12 = "CERT 12"
    CERT_13 = "CERT 13"
    CERT_14A = "CERT 14a"
    CERT_14B = "CERT 14b"
    CERT_15 = "CERT 15"
    CERT_16A = "CERT 16a"
    CERT_16B = "CERT 16b"
    PEMAT_1 = "PEMAT-P 1"
    PEMAT_2 = "PEMAT-P 2"
    PEMAT_3 = "PEMAT-P 3"
    PEMAT_4 = "PEMAT-P 4"
    PEMAT_5 = "PEMAT-P 5"
    PEMAT_6 = "PEMAT-P 6"
    PEMAT_7 = "PEMAT-P 7"
    PEMAT_8 = "PEMAT-P 8"
    PEMAT_9 = "PEMAT-P 9"
    PEMAT_10 = "PEMAT-P 10"
    PEMAT_11 = "PEMAT-P 11"
    PEMAT_12 = "PEMAT-P 12"
    PEMAT_15 = "PEMAT-P 15"
    PEMAT_16 = "PEMAT-P 16"
    PEMAT_17 = "PEMAT-P 17"
    PEMAT_18 = "PEMAT-P 18"
    PEMAT_19 = "PEMAT-P 19"
    PEMAT_20 = "PEMAT-P 20"
    PEMAT_21 = "PEMAT-P 21"
    PEMAT_22 = "PEMAT-P 22"
    PEMAT_23 = "PEMAT-P 23"
    PEMAT_24 = "PEMAT-P 24"
    PEMAT_25 = "PEMAT-P 25"
    PEMAT_26 = "PEMAT-P 26"

    @property
    def checklist(self) -> Checklist:
        """Return the list that asks."""
        return Checklist(self.value.rpartition(" ")[0])

    @property
    def number(self) -> str:
        """Return the item's number in its list, such as ``7a``."""
        return self.value.rpartition(" ")[2]


class Answer(Enum):
    """How far an item is answered; nothing is answered that only a person can judge."""

    ANSWERED = "answered"
    PARTLY = "partly"
    OPEN = "open"
    NOT_APPLICABLE = "not applicable"


class Shown(Enum):
    """Where the answer can be seen."""

    PROGRAMME_PAGE = "programme page"
    PHASE_PAGES = "phase pages"
    EXERCISE_PAGES = "exercise pages"
    CLINICIANS_PAGE = "clinicians' page"
    WARNING_SIGNS = "warning signs"
    GLOSSARY = "glossary"
    BOOKLETS = "booklets"
    PROTOCOL = "protocol"


@dataclass(frozen=True)
class Reading:
    """How many of the texts for patients were measured, and how many are harder than the target."""

    texts: int
    too_hard: int


@dataclass(frozen=True)
class ItemAnswer:
    """What a programme says to one item.

    shown: where, the best place first; empty where it is open. number, total: what was counted, as the item's
    sentence says it. terms, names: fixed words and the editor's own words that the sentence lists.
    """

    item: Item
    answer: Answer
    shown: tuple[Shown, ...] = ()
    number: int = 0
    total: int = 0
    terms: tuple[Enum, ...] = ()
    names: tuple[str, ...] = ()
