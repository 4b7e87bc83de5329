"""Prints booklets afresh as pictures, sheets side by side, for a person to look at before patients do."""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from generator.booklets.side_by_side import proof_pngs
from generator.booklets.values import BookletJob
from generator.catalogue.arranged import Orders
from generator.problems import Problem, in_order
from generator.steps.figures import draw_all, palette_of
from generator.steps.kinds import FOLD, POCKET, Kinds
from generator.steps.languages import Spoken
from generator.steps.paper import Sheets, booklet_jobs, print_jobs
from generator.steps.worked import work_out

ACROSS, FOLDS_ACROSS = 4, 2
"""Sheets in a row; a side of a sheet to fold is as wide as two pages."""


@dataclass(frozen=True)
class Wanted:
    """Which booklets to look at; None means all, of kinds all that a build usually makes.

    workers: processes at a time.
    """

    phase: int | None = None
    kind: str | None = None
    programme: str | None = None
    language: str | None = None
    workers: int = 1

    def printed(self, job: BookletJob) -> bool:
        """Return whether a booklet has to be printed, in whatever language it is.

        Where one begins its sheets depends on the other languages; what is folded is a pocket booklet.
        """
        return (
            self.phase in (None, job.phase)
            and self._made_as in (None, job.kind)
            and self.programme in (None, job.programme)
        )

    @property
    def _made_as(self) -> str | None:
        return POCKET if self.kind == FOLD else self.kind

    def shown(self, sheets: Sheets) -> bool:
        """Return whether a booklet is one to look at."""
        return self.language in (None, sheets.language) and self.kind in (None, sheets.kind)

    def kinds(self, spoken: Sequence[Spoken]) -> Kinds:
        """Return the kinds of the smallest build that publishes what is wanted in all these languages."""
        codes = [one.voice.code for one in spoken if self.language in (None, one.voice.code)]
        source = spoken[0].catalogue.source_language
        usual = all(self._made_as in (None, *Kinds.USUAL.of(code, source)) for code in codes)
        return Kinds.USUAL if usual else Kinds.ALL


@dataclass(frozen=True)
class Proofs:
    """The pictures written, and what was found in the booklets; a finding is no reason not to look."""

    pictures: tuple[Path, ...]
    problems: tuple[Problem, ...]


def proof_sheets(
    spoken: Sequence[Spoken], orders: Orders, wanted: Wanted, assets: Path, output: Path
) -> Proofs:
    """Write the sheets of the booklets wanted into `output`, in rows, named after their booklets.

    spoken: all languages of the clinic, whichever is wanted, because a build sets them on the same sheets.
    """
    catalogue = spoken[0].catalogue
    palette = palette_of((assets / "tokens.css").read_text(encoding="utf-8"))
    gallery = draw_all(catalogue, palette, lefts=(False,), with_moving=False, workers=wanted.workers)
    worked = replace(work_out(catalogue, orders), gallery=gallery)
    pictures: list[Path] = []
    problems: list[Problem] = []
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        jobs = booklet_jobs(spoken, worked, folder, assets, wanted.kinds(spoken))
        made = print_jobs([one for one in jobs if wanted.printed(one[2])], folder, wanted.workers)
        for sheets in filter(wanted.shown, made):
            problems += sheets.problems
            pictures += _write(sheets, output / Path(sheets.path).with_suffix(""))
    return Proofs(tuple(pictures), in_order(problems))


def _write(sheets: Sheets, folder: Path) -> list[Path]:
    """Write the rows of one booklet into a folder of its own; rows of an earlier run there are removed."""
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    written = []
    across = FOLDS_ACROSS if sheets.folded else ACROSS
    for number, png in enumerate(proof_pngs(sheets.result.path.read_bytes(), across)):
        path = folder / f"pages-{number * across + 1:02}.png"
        path.write_bytes(png)
        written.append(path)
    return written
