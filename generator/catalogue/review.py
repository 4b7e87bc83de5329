"""Describes the ledger of sign-offs: who, by role, read what, when, and in which state it was."""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from enum import Enum

from generator.catalogue.base import Record
from generator.catalogue.editorial import Scope


class Reviewer(Enum):
    """In which role a person reviews; a role and never a name is shown."""

    PHYSIOTHERAPIST = "physiotherapist"
    SURGEON = "surgeon"
    DOCTOR = "doctor"
    NURSE = "nurse"
    OCCUPATIONAL_THERAPIST = "occupational therapist"
    TRANSLATOR = "translator"
    PATIENT = "patient"
    EDITOR = "editor"


@dataclass(frozen=True, kw_only=True)
class SignOff(Record):
    """One reading by one person.

    item: what was read, such as ``exercise/clam`` or ``phase/hip-abductor-repair/2``. language: BCP 47, of a
    translation only. fingerprint: of what was read, 32 hexadecimal digits. next_review: first day of the
    month in which it is to be read again. document: number in the clinic's own system.
    """

    item: str
    scope: Scope
    role: Reviewer
    language: str | None = None
    fingerprint: str
    date: datetime.date
    document: str | None = None
    next_review: datetime.date | None = None
    initials: str | None = None


@dataclass(frozen=True, kw_only=True)
class Ledger(Record):
    """All sign-offs in the order in which they were given.

    invented: whether they are made up for a demonstration; outside one they are an error.
    """

    invented: bool = False
    signed: tuple[SignOff, ...] = ()


NO_LEDGER = Ledger()


@dataclass(frozen=True)
class Reviewed:
    """That several things were read: in which roles, when the last of them, when the next review."""

    roles: tuple[Reviewer, ...]
    date: datetime.date
    next_review: datetime.date | None = None


@dataclass(frozen=True)
class ReviewState:
    """How what one page or booklet says in one language was reviewed; None where a part of it was not.

    changed: whether a part was changed after its review. translated: whether this language is a translation.
    invented: whether the sign-offs are made up for a demonstration.
    """

    content: Reviewed | None
    translation: Reviewed | None = None
    changed: bool = False
    translated: bool = False
    invented: bool = False

    @property
    def draft(self) -> bool:
        """Return whether something in it was not read as it stands."""
        return self.content is None or (self.translated and self.translation is None)
