"""Says what a site is made from and what came of it, so that the pipeline and the audit share one shape."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum
from types import MappingProxyType

from generator.catalogue.arranged import (
    AnchorHeights,
    Day,
    Orders,
    RestrictionRow,
    SessionPlace,
    StepBack,
    Thing,
)
from generator.catalogue.choices import PhaseChoices
from generator.catalogue.editions import KnownPaper
from generator.catalogue.estimates import Estimate, Hanging, SetAside, VariationEffect
from generator.catalogue.exercise import Exercise
from generator.catalogue.moments import Contradiction, Moment
from generator.catalogue.reporting import ItemAnswer
from generator.catalogue.values import Catalogue
from generator.problems import Rule
from generator.website.config import Language
from generator.website.figure_files import FigureFact
from generator.wording.voice import Voice

PhaseKey = tuple[str, int]
"""A programme's id and the number of one of its phases."""

UseKey = tuple[str, int, str]
"""A programme's id, the number of one of its phases, and an exercise's id."""

StepKey = tuple[str, int]
"""An exercise's id and the position of one of its dose steps, from 0."""

FormKey = tuple[str, str]
"""A form, ``exercise`` or ``exercise/variation``, and the id of a whole muscle."""

FieldGroup = tuple[str, str, str, tuple[tuple[str, bool, str, str], ...]]
"""A group of keys of the content: file, name, help, and per key: key, whether it must stand, form, help."""


class PaperKind(Enum):
    """Another form in which a phase's booklet can be loaded, as its file name ends."""

    SHEET = "sheet"
    LARGE = "large"
    POCKET = "pocket"
    FOLD = "pocket-fold"


class DataKind(Enum):
    """What a file for clinicians holds, and in which form."""

    ORDER_TABLE = "CSV"
    ORDER = "JSON"
    STUDIES = "CSL-JSON"


@dataclass(frozen=True)
class BookletFact:
    """A finished booklet: path from the language's folder, number of pages, size in bytes, edition code."""

    path: str
    pages: int
    size: int
    edition: str


@dataclass(frozen=True)
class DataFact:
    """A file with a programme's evidence: path from the language's folder, what it holds, size in bytes."""

    path: str
    kind: DataKind
    size: int


@dataclass(frozen=True)
class PageFact:
    """What the audit must find in one page.

    path: of the HTML, from the language's folder (of a root page: from the site's root). doses: every large
    dose it prints and no other; None where doses are not judged. required: texts that must be read there.
    """

    path: str
    doses: tuple[str, ...] | None = ()
    required: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True)
class SiteInput:
    """All that the pages of one language say.

    catalogue: localised, every text in words. languages: all that are published, in the chooser's order.
    orders: by programme. booklets: what can be downloaded; a phase without an entry offers none. kinds: in
    which other forms. choices: what can be narrowed for one patient.
    in_use: an exercise as used in a phase, localised with the dose that phase begins with; where an entry
    is missing, the catalogue's own is shown. withheld: ids (``exercise/variation``) of variations that a
    phase does not show, such as those above its band; what its restrictions forbid is never shown.
    days, turns, things, back: by phase, what its fullest day holds, the order of a session, what must be at
    hand, and the step back from each dose step. tables: by programme, what is allowed when. anchors: a
    band's heights by body height.
    estimates, set_aside: what is known of each form. effects: by exercise, what its forms change. hanging: by
    programme, what hangs on one study. moments, contradictions: by programme, what a model says of gravity,
    and where it gainsays the order. protocols, data: by programme, the protocol for clinicians and the
    files with its evidence. reports: by programme, the reporting checklists. figures: by item, the
    pictures that were drawn. paper: booklets that somebody may have. reviewed: by page, how it was
    reviewed. rules: all codes of problems.
    fields: the reference of all keys of the content.
    """

    catalogue: Catalogue
    voice: Voice
    languages: tuple[Language, ...]
    orders: Orders
    booklets: Mapping[PhaseKey, BookletFact] = field(default_factory=lambda: MappingProxyType({}))
    in_use: Mapping[UseKey, Exercise] = field(default_factory=lambda: MappingProxyType({}))
    withheld: Mapping[PhaseKey, frozenset[str]] = field(default_factory=lambda: MappingProxyType({}))
    days: Mapping[PhaseKey, Day] = field(default_factory=lambda: MappingProxyType({}))
    turns: Mapping[PhaseKey, tuple[SessionPlace, ...]] = field(default_factory=lambda: MappingProxyType({}))
    things: Mapping[PhaseKey, tuple[Thing, ...]] = field(default_factory=lambda: MappingProxyType({}))
    back: Mapping[PhaseKey, Mapping[StepKey, StepBack]] = field(default_factory=lambda: MappingProxyType({}))
    tables: Mapping[str, tuple[RestrictionRow, ...]] = field(default_factory=lambda: MappingProxyType({}))
    anchors: tuple[AnchorHeights, ...] = ()
    estimates: Mapping[FormKey, Estimate] = field(default_factory=lambda: MappingProxyType({}))
    set_aside: Mapping[FormKey, tuple[SetAside, ...]] = field(default_factory=lambda: MappingProxyType({}))
    effects: Mapping[str, tuple[VariationEffect, ...]] = field(default_factory=lambda: MappingProxyType({}))
    hanging: Mapping[str, tuple[Hanging, ...]] = field(default_factory=lambda: MappingProxyType({}))
    moments: Mapping[str, Mapping[str, Moment]] = field(default_factory=lambda: MappingProxyType({}))
    contradictions: Mapping[str, tuple[Contradiction, ...]] = field(
        default_factory=lambda: MappingProxyType({})
    )
    data: Mapping[str, tuple[DataFact, ...]] = field(default_factory=lambda: MappingProxyType({}))
    choices: Mapping[PhaseKey, PhaseChoices] = field(default_factory=lambda: MappingProxyType({}))
    reports: Mapping[str, tuple[ItemAnswer, ...]] = field(default_factory=lambda: MappingProxyType({}))
    figures: Mapping[str, FigureFact] = field(default_factory=lambda: MappingProxyType({}))
    protocols: Mapping[str, BookletFact] = field(default_factory=lambda: MappingProxyType({}))
    kinds: Mapping[PhaseKey, tuple[tuple[PaperKind, BookletFact], ...]] = field(
        default_factory=lambda: MappingProxyType({})
    )
    paper: tuple[KnownPaper, ...] = ()
    reviewed: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    rules: tuple[Rule, ...] = ()
    fields: tuple[FieldGroup, ...] = ()

    @property
    def for_editors(self) -> bool:
        """Return whether this language carries the editors' pages: only the one the content is written in."""
        return self.voice.code == self.catalogue.source_language

    def exercise_in(self, programme: str, phase: int, exercise: str) -> Exercise:
        """Return an exercise in the words of the dose that a phase begins with."""
        return self.in_use.get((programme, phase, exercise)) or self.catalogue.exercises[exercise]
