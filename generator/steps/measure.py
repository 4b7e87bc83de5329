"""Measures what a build costs beside the bare libraries it stands on, as ratios within one run.

Seconds differ between machines and hours; a ratio to plain MkDocs and plain WeasyPrint on the very same
pages and sheets tells what this program adds. Processor time of child processes counts.
"""

from __future__ import annotations

import os
import resource
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from generator.booklets.html import render_html
from generator.booklets.make import fitted
from generator.booklets.plain import print_plainly
from generator.booklets.protocol import fitted_protocol
from generator.catalogue.values import Catalogue
from generator.progression import arrange
from generator.steps.figures import draw_anew, palette_of
from generator.steps.languages import speak
from generator.steps.paper import booklet_jobs
from generator.steps.protocols import protocol_jobs
from generator.steps.worked import work_out

Say = Callable[[str], None]


@dataclass(frozen=True)
class Cost:
    """Seconds: `wall` by the clock, `cpu` of the processor in all processes."""

    wall: float
    cpu: float


@dataclass(frozen=True)
class Measured:
    """One run. build: ours. mkdocs, weasyprint: the bare libraries on the same pages and sheets."""

    build: Cost
    mkdocs: Cost
    weasyprint: Cost
    pages: int
    booklets: int
    sheets: int

    @property
    def cpu_ratio(self) -> float:
        """Return our processor time over that of the bare libraries."""
        return self.build.cpu / (self.mkdocs.cpu + self.weasyprint.cpu)

    @property
    def wall_ratio(self) -> float:
        """Return our time by the clock over that of the bare libraries one after the other."""
        return self.build.wall / (self.mkdocs.wall + self.weasyprint.wall)


def measure(catalogue: Catalogue, content: Path, root: Path, say: Say) -> Measured:
    """Build once, then run the bare libraries on what the build wrote for them.

    Raises RuntimeError where the build or a library fails: there is nothing to compare then.
    """
    with tempfile.TemporaryDirectory(prefix="phasebook-measure-") as name:
        folder = Path(name)
        say("Building ...")
        command = [sys.executable, "-m", "generator.cli", "build", "--anew", "--kinds", "standard"]
        paths = ["--output", str(folder / "site"), "--content", str(content.resolve())]
        build = timed(lambda: run_command([*command, *paths], root))
        say("Running plain MkDocs on the same pages ...")
        export = [sys.executable, "-m", "generator.cli", "export", "pages", str(folder / "pages")]
        run_command([*export, "--content", str(content.resolve())], root)
        configs = [one for one in sorted((folder / "pages").glob("*.yml")) if one.stem != "mkdocs"]
        mkdocs = timed(lambda: _run_all([_mkdocs(config, folder) for config in configs], root))
        say("Laying out the same sheets for plain WeasyPrint ...")
        sheets = _write_sheets(catalogue, content, root, folder / "sheets")
        say("Running plain WeasyPrint on them ...")
        plain = timed(
            lambda: run_command(
                [sys.executable, "-m", "generator.steps.measure", str(folder / "sheets")], root
            )
        )
        return Measured(
            build=build,
            mkdocs=mkdocs,
            weasyprint=plain,
            pages=sum(1 for _ in (folder / "site").rglob("*.html")),
            booklets=len(list((folder / "site").rglob("*.pdf"))),
            sheets=sheets,
        )


def measure_figures(catalogue: Catalogue, root: Path, count: int, workers: int) -> tuple[int, Cost]:
    """Draw `count` stills in processes of their own; return how many, and the cost with their start."""
    palette = palette_of((root / "site_assets" / "tokens.css").read_text(encoding="utf-8"))
    drawn: list[int] = []
    cost = timed(lambda: drawn.append(draw_anew(catalogue, palette, count, workers)))
    return drawn[0], cost


def timed(work: Callable[[], object]) -> Cost:
    """Return what `work` costs; the processor time is that of child processes, which do all of it."""
    before, started = resource.getrusage(resource.RUSAGE_CHILDREN), time.perf_counter()
    work()
    after, ended = resource.getrusage(resource.RUSAGE_CHILDREN), time.perf_counter()
    cpu = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return Cost(ended - started, cpu)


def run_command(command: list[str], root: Path) -> None:
    """Run a program in the project's folder; RuntimeError with all that it said where it fails."""
    environment = {**os.environ, "NO_MKDOCS_2_WARNING": "1", "SOURCE_DATE_EPOCH": "0"}
    done = subprocess.run(command, cwd=root, env=environment, capture_output=True, text=True, check=False)
    if done.returncode not in (0, 3):
        raise RuntimeError(f"{' '.join(command[1:4])} failed:\n{done.stdout}{done.stderr}")


def _run_all(commands: list[list[str]], root: Path) -> None:
    for command in commands:
        run_command(command, root)


def _mkdocs(config: Path, folder: Path) -> list[str]:
    output = folder / "plain" / config.stem
    return [sys.executable, "-m", "mkdocs", "build", "-f", str(config), "-d", str(output)]


def _write_sheets(catalogue: Catalogue, content: Path, root: Path, folder: Path) -> int:
    """Write the HTML of every booklet and protocol as it is finally laid out; return the number of sheets."""
    folder.mkdir()
    spoken, _ = speak(catalogue, content, unsigned=True)
    sheets = 0
    worked = work_out(catalogue, arrange(catalogue))
    jobs = booklet_jobs(spoken, worked, folder, root / "site_assets")
    for number, (_, _, job) in enumerate(jobs):
        fits, laid = fitted(job)
        sheets += laid.pages
        (folder / f"{number:04}.html").write_text(render_html(job, fits), encoding="utf-8")
    for number, (_, _, protocol) in enumerate(protocol_jobs(spoken, worked, folder, root / "site_assets")):
        html, laid = fitted_protocol(protocol)
        sheets += laid.pages
        (folder / f"protocol-{number:04}.html").write_text(html, encoding="utf-8")
    return sheets


if __name__ == "__main__":
    print_plainly(Path(sys.argv[1]))
