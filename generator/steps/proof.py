"""Prints booklets afresh as pictures, sheets side by side, for a person to look at before patients do."""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from generator.booklets.make import make_booklets
from generator.booklets.side_by_side import proof_pngs
from generator.catalogue.arranged import Orders
from generator.problems import Place, Problem, in_order
from generator.steps.figures import draw_all, palette_of
from generator.steps.kinds import Kinds
from generator.steps.languages import Spoken
from generator.steps.paper import booklet_jobs
from generator.steps.worked import work_out

ACROSS = 4


@dataclass(frozen=True)
class Wanted:
    """Which booklets to look at; None means all, of kinds all usual ones. workers: processes at a time."""

    phase: int | None = None
    kind: str | None = None
    programme: str | None = None
    workers: int = 1


@dataclass(frozen=True)
class Proofs:
    """The pictures written, and what was found in the booklets; a finding is no reason not to look."""

    pictures: tuple[Path, ...]
    problems: tuple[Problem, ...]


def proof_sheets(
    spoken: Sequence[Spoken], orders: Orders, wanted: Wanted, assets: Path, output: Path
) -> Proofs:
    """Write the sheets of the booklets wanted into `output`, rows of four, named after their booklets."""
    catalogue = spoken[0].catalogue
    palette = palette_of((assets / "tokens.css").read_text(encoding="utf-8"))
    gallery = draw_all(catalogue, palette, lefts=(False,), with_moving=False, workers=wanted.workers)
    worked = replace(work_out(catalogue, orders), gallery=gallery)
    pictures: list[Path] = []
    problems: list[Problem] = []
    kinds = Kinds.USUAL if wanted.kind is None else Kinds.ALL
    with tempfile.TemporaryDirectory() as folder:
        jobs = [
            (path, job)
            for _, path, job in booklet_jobs(spoken, worked, Path(folder), assets, kinds)
            if wanted.phase in (None, job.phase)
            and wanted.kind in (None, job.kind)
            and wanted.programme in (None, job.programme)
        ]
        results = make_booklets([job for _, job in jobs], wanted.workers)
        for (path, _), result in zip(jobs, results, strict=True):
            problems += (replace(one, place=Place(path)) for one in result.problems)
            pictures += _write(result.path.read_bytes(), output / Path(path).with_suffix(""))
    return Proofs(tuple(pictures), in_order(problems))


def _write(pdf: bytes, folder: Path) -> list[Path]:
    """Write the rows of one booklet into a folder of its own; rows of an earlier run there are removed."""
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    written = []
    for number, png in enumerate(proof_pngs(pdf, ACROSS)):
        path = folder / f"pages-{number * ACROSS + 1:02}.png"
        path.write_bytes(png)
        written.append(path)
    return written
