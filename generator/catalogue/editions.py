"""Keeps what was handed out on paper: each recorded edition, and the facts that tell old paper from new."""

from __future__ import annotations

import datetime
from dataclasses import dataclass, field
from enum import Enum

from generator.catalogue.base import Record
from generator.catalogue.dose import DoseStep

PROTOCOL = "protocol"
"""The kind of paper that is made for clinicians, one for a whole programme."""


@dataclass(frozen=True, kw_only=True)
class ExerciseFact(Record):
    """What a booklet said of one exercise.

    name: in the booklet's language. variation: the form in use, or "". position: in the order of the phase.
    weeks: full weeks from which it may begin, on the usual and the delayed track. dose: all dose steps.
    often: times a day, days a week, days of rest. pace: seconds of holding, lifting, lowering, and rest
    between sets. forms: easier and harder forms on offer (ids). when, words, safety, pictures: fingerprints
    of what must be reached first, of how it is done, of what keeps it safe, and of its poses.
    """

    id: str
    name: str
    variation: str = ""
    position: int
    weeks: tuple[int, ...]
    dose: tuple[DoseStep, ...]
    often: tuple[int, ...]
    pace: tuple[int, ...]
    forms: tuple[str, ...] = ()
    when: str = ""
    words: str
    safety: str
    pictures: str


@dataclass(frozen=True, kw_only=True)
class RuleFact(Record):
    """A restriction that held in the booklet's phase; weeks: when it ends on either track.

    words: as said to the patient. limit: fingerprint of what exactly it forbids, and of what else ends it.
    """

    id: str
    words: str
    weeks: tuple[int, ...]
    limit: str


@dataclass(frozen=True, kw_only=True)
class ItemFact(Record):
    """A thing of daily life in the booklet; words, safety, pictures: fingerprints as for an exercise."""

    id: str
    name: str
    words: str
    safety: str
    pictures: str


@dataclass(frozen=True, kw_only=True)
class Facts(Record):
    """What a booklet told its reader to do and not to do, small enough to be kept for ever.

    weeks: from which the phase may begin, on both tracks. pain: highest during, after, next morning.
    support, avoid, help, telephone: fingerprints of weight, walking aid and brace; of what must not be done;
    of warning signs and what to do when it got worse; of the numbers to call. phase: of goals and milestones.
    rest: of all other texts.
    """

    weeks: tuple[int, ...]
    pain: tuple[int, ...]
    support: str
    avoid: str
    help: str
    telephone: str
    phase: str
    rest: str
    exercises: tuple[ExerciseFact, ...]
    rules: tuple[RuleFact, ...] = ()
    daily_life: tuple[ItemFact, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Sheet(Record):
    """A file that was kept: its edition code, its kind of booklet, and the SHA-256 of its bytes."""

    code: str
    kind: str
    pdf: str


@dataclass(frozen=True, kw_only=True)
class Edition(Record):
    """Booklets of one phase (None: of the whole programme) in one language that say the same, with the day.

    fingerprint: of what they say. facts: None for the clinicians' protocol.
    """

    recorded: datetime.date
    programme: str
    phase: int | None = None
    language: str
    fingerprint: str
    sheets: tuple[Sheet, ...]
    facts: Facts | None = None


@dataclass(frozen=True, kw_only=True)
class EditionLedger(Record):
    """All recorded editions in the order of recording."""

    editions: tuple[Edition, ...] = ()

    def dates(self) -> dict[str, datetime.date]:
        """Return the day on which each code was recorded."""
        found: dict[str, datetime.date] = {}
        for one in self.editions:
            for sheet in one.sheets:
                found.setdefault(sheet.code, one.recorded)
        return found

    def of(self, code: str) -> tuple[Edition, tuple[Sheet, ...]] | None:
        """Return the edition with this code and its files; None where it was never recorded."""
        found = [(one, sheet) for one in self.editions for sheet in one.sheets if sheet.code == code]
        return (found[0][0], tuple(sheet for _, sheet in found)) if found else None


NO_EDITIONS = EditionLedger()
"""What is known where nothing was recorded."""


class Urgency(Enum):
    """How soon somebody must be told who has the old paper; common practice, no source."""

    NOW = "call back now"
    NEXT_VISIT = "at the next visit"
    NO_NEED = "no need"

    @property
    def rank(self) -> int:
        """Return 0 for the most urgent."""
        return tuple(Urgency).index(self)


class ChangeKind(Enum):
    """What can be different between two editions, what keeps people safe first."""

    NOT_IN_USE = "booklet no longer in use"
    REMOVED = "exercise must no longer be done"
    FORM_REMOVED = "form must no longer be done"
    OTHER_FORM = "other form of the exercise"
    NEW_RULE = "new restriction"
    CHANGED_RULE = "restriction changed"
    RULE_WORDS = "words of a restriction changed"
    LATER = "exercise begins later"
    PHASE_LATER = "phase begins later"
    LESS = "dose is lower"
    SAFETY = "safety advice changed"
    PAIN_LOWER = "pain limit is lower"
    HELP = "warning signs changed"
    SUPPORT = "weight, walking aid or brace changed"
    AVOID = "what must not be done changed"
    TELEPHONE = "telephone number changed"
    ITEM_SAFETY = "safety of daily life changed"
    DOSE = "dose changed"
    ADDED = "new exercise"
    FORM_ADDED = "new form of an exercise"
    RULE_ENDED = "restriction no longer holds"
    EARLIER = "exercise may begin earlier"
    PHASE_EARLIER = "phase may begin earlier"
    PAIN_HIGHER = "pain limit is higher"
    WHEN = "what must be reached first changed"
    WORDS = "words of an exercise changed"
    PICTURES = "pictures changed"
    ITEM_ADDED = "daily life added"
    ITEM_REMOVED = "daily life left out"
    ITEM_WORDS = "words of daily life changed"
    PHASE = "goals or tests changed"
    ORDER = "order changed"
    REST = "other words changed"

    @property
    def urgency(self) -> Urgency:
        """Return how soon it must be told; what cannot be judged from the facts counts as urgent."""
        if self in (ChangeKind.ORDER, ChangeKind.REST):
            return Urgency.NO_NEED
        kinds = tuple(ChangeKind)
        urgent = kinds.index(self) <= kinds.index(ChangeKind.ITEM_SAFETY)
        return Urgency.NOW if urgent else Urgency.NEXT_VISIT


@dataclass(frozen=True)
class Change:
    """One difference. item: id of the exercise, restriction or thing; "" where the whole booklet is meant.

    form: id of a variation. name: of the item as the newer booklet says it, else the older; language of
    `name`. before, after: in figures where there are some.
    """

    kind: ChangeKind
    item: str = ""
    form: str = ""
    name: str = field(default="", compare=False)
    language: str = field(default="", compare=False)
    before: str = field(default="", compare=False)
    after: str = field(default="", compare=False)

    @property
    def urgency(self) -> Urgency:
        """Return how soon it must be told."""
        return self.kind.urgency


class Standing(Enum):
    """How a booklet stands to what is printed now."""

    CURRENT = "current"
    SAME_TO_DO = "newer, with the same to do"
    CHANGED = "newer, with changes"
    GONE = "no longer in use"


@dataclass(frozen=True)
class KnownPaper:
    """A booklet that somebody may have on paper, and how it stands to what is printed now.

    phase: None for the protocol. recorded: None where it was not recorded (then it is printed now).
    """

    code: str
    programme: str
    phase: int | None
    language: str
    recorded: datetime.date | None
    standing: Standing
    changes: tuple[Change, ...] = ()

    @property
    def urgency(self) -> Urgency:
        """Return how soon its reader must be told."""
        return Urgency.NOW if self.standing is Standing.GONE else most_urgent(self.changes)


def most_urgent(changes: tuple[Change, ...]) -> Urgency:
    """Return the urgency of the most urgent change; no need where there is none."""
    return min((one.urgency for one in changes), key=lambda one: one.rank, default=Urgency.NO_NEED)
