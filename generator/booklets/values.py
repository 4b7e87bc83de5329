"""Says what a booklet is made from and what came of it: the shape shared with pipeline and audit."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from types import MappingProxyType

from generator.booklets.formats import Format, format_of
from generator.catalogue.arranged import AnchorHeights, Day, Order, SessionPlace, StepBack, Thing
from generator.catalogue.programme import Phase, Programme
from generator.catalogue.values import Catalogue
from generator.problems import Problem
from generator.wording.one_patient import PatientWords
from generator.wording.voice import Voice


@dataclass(frozen=True, kw_only=True)
class BookletJob:
    """One booklet to make: one phase of one programme in one language.

    catalogue: already localised, so that every text has its words. programme: its id. phase: from 1.
    edition: the code printed on every sheet. output: where the PDF goes. assets: folder that holds
    ``tokens.css``, the colours shared with the site. two_sheets: ids of exercises that take two sheets
    whatever their length, so that all languages keep the same exercise on the same sheet.
    withheld: variations (``exercise/variation``) that the phase forbids and no sheet may offer.
    day: what the fullest day holds. turns: all exercises in the order of a session. back: the step back
    from each dose step (exercise, position from 0). things: what must be at hand. anchors: heights of a
    band's anchor.
    stills: pictures as SVG by exercise, ``exercise/variation`` or daily-life item, start first; what has
    none is missing. kind: one of ``formats.KINDS``.
    sheets: how many sheets a section takes at least, by its key, for the same reason as `two_sheets`; what it
    does not fill becomes sheets for notes. recorded: the day on which the edition was recorded, if it was.
    patient: what only a booklet for one patient says. draft: the mark of a draft on
    each sheet. reviewed: how it was reviewed, in sentences.
    Exercises whose words depend on the dose (``{hold}``) are passed in the catalogue as used in this phase.
    """

    catalogue: Catalogue
    voice: Voice
    programme: str
    phase: int
    order: Order
    edition: str
    output: Path
    assets: Path
    withheld: frozenset[str]
    day: Day
    turns: tuple[SessionPlace, ...]
    back: Mapping[tuple[str, int], StepBack]
    things: tuple[Thing, ...]
    anchors: tuple[AnchorHeights, ...] = ()
    stills: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    kind: str = "standard"
    patient: PatientWords | None = None
    two_sheets: frozenset[str] = frozenset()
    sheets: Mapping[str, int] = field(default_factory=dict)
    recorded: datetime.date | None = None
    draft: str = ""
    reviewed: str = ""

    @property
    def format(self) -> Format:
        """Return on what paper and how large it is printed."""
        return format_of(self.kind, self.catalogue.clinic.paper)

    @property
    def stages(self) -> Programme:
        """Return the programme that the booklet belongs to."""
        return self.catalogue.programmes[self.programme]

    @property
    def stage(self) -> Phase:
        """Return the phase that the booklet is for."""
        return self.stages.phase(self.phase)


@dataclass(frozen=True)
class SheetFact:
    """What stands on one page: exercise id or None, page number from 1, strings that must be read there."""

    exercise: str | None
    page: int
    required: tuple[str, ...]


@dataclass(frozen=True)
class Fit:
    """How one section sits on paper.

    split: whether it is parted over two sheets with a heading of its own on the second. tight: whether its
    type stays at the smaller size, because the larger one would need a third sheet.
    uneven: whether each column begins right under what stands above it, not beside the other one.
    spare: millimetres left at the foot of its last page, which lines or taller rows may take. lines: how many
    lines for notes found room; None before that is known.
    """

    split: bool = False
    tight: bool = False
    uneven: bool = False
    spare: float = 0.0
    lines: int | None = None


Fits = Mapping[str, Fit]
"""How the sections of a booklet sit on paper, by the key of the section."""

NO_FITS: Fits = MappingProxyType({})


@dataclass(frozen=True)
class Expected:
    """What the finished PDF must show.

    path: the file, as findings name it. title, language: of the document. every_page: strings of the margin
    of every sheet. page_lines: the page line of each page. families: font families allowed. sheets: what
    stands where.
    """

    path: str
    title: str
    language: str
    every_page: tuple[str, ...]
    page_lines: tuple[str, ...]
    families: tuple[str, ...]
    sheets: tuple[SheetFact, ...]


@dataclass(frozen=True)
class BookletResult:
    """A finished booklet: where it is, how many pages, what stands on which, and all that was found.

    two_sheets: ids of the exercises that took two sheets. taken: how many sheets each section took, by key.
    kept: whether it was made in an earlier build.
    """

    path: Path
    pages: int
    sheets: tuple[SheetFact, ...]
    problems: tuple[Problem, ...]
    two_sheets: frozenset[str] = field(default_factory=frozenset)
    taken: Mapping[str, int] = field(default_factory=dict)
    kept: bool = False
