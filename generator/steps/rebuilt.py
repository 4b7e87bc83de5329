"""Builds spoilt content that passes the checks, and holds the finished site against the catalogue."""

from __future__ import annotations

import shutil
import tempfile
import traceback
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from generator.catalogue.values import Catalogue
from generator.pipeline import Outcome, Request, build_site
from generator.publish import verify
from generator.reading import read_content
from generator.steps.excerpt import excerpt, write_files
from generator.steps.fuzzing import End, ground_of
from generator.steps.kinds import Kinds
from generator.steps.mutations import mutant
from generator.steps.reread import differences
from generator.wording.voice import direction_of


@dataclass(frozen=True)
class Built:
    """What came of a build. failure: why the program is at fault, or nothing."""

    seeds: tuple[int, ...]
    done: str
    published: bool
    failure: str = ""


def both_directions(files: Mapping[str, bytes], catalogue: Catalogue) -> dict[str, bytes]:
    """Return the files of one programme, also in the first language that is written from right to left."""
    other = (one for one in catalogue.clinic.languages if direction_of(one) != "ltr")
    return excerpt(files, catalogue, tuple(other)[:1])


def rebuild(files: Mapping[str, bytes], seeds: Sequence[int], root: Path, work: Path, folder: Path) -> Built:
    """Spoil files as the seeds say, one after the other, build everything, and read the finished site again.

    What is not published must say why. work: keeps what is the same from one build to the next. folder: holds
    the spoilt ``content`` and the ``site`` afterwards.
    """
    spoilt, done = dict(files), []
    for seed in seeds:
        one = mutant(seed, spoilt)
        spoilt[one.name] = one.data
        done.append(f"{one.name}: {one.done}")
    request = Request(folder / "content", folder / "site", root, work, kinds=Kinds.STANDARD)
    write_files(spoilt, request.content)
    try:
        outcome = build_site(request, lambda _: None)
        failure, published = "\n".join(_failures(request, outcome)), outcome.published
    except Exception:  # whatever escapes here would have been a traceback on an editor's screen
        failure, published = traceback.format_exc(limit=-4), False
    return Built(tuple(seeds), "; ".join(done), published, failure)


def rebuild_passed(
    files: Mapping[str, bytes], count: int, root: Path, say: Callable[[str], None]
) -> tuple[Built, ...]:
    """Build the first `count` spoilt catalogues that pass the checks, each by itself."""
    found: list[Built] = []
    ground, seed = ground_of(files), 0
    with tempfile.TemporaryDirectory(prefix="phasebook-fuzz-") as name:
        while len(found) < count:
            if ground.judge(seed).end is End.PASSED:
                folder = Path(name, str(seed))
                found.append(rebuild(files, (seed,), root, Path(name, "work"), folder))
                shutil.rmtree(folder)
                say(f"{len(found)} of {count} built ...")
            seed += 1
    return tuple(found)


def _failures(request: Request, outcome: Outcome) -> Iterator[str]:
    for problem in outcome.problems:
        if not (problem.message and problem.remedy):
            yield f"without message or remedy: {problem.code}"
    if not outcome.published:
        if request.output.exists() or not outcome.problems:
            yield "not published, and yet there, or nothing said"
        return
    yield from (f"{problem.place}: {problem.message}" for problem in verify(request.output))
    catalogue = read_content(request.content).catalogue
    if catalogue is None:
        yield "published without a catalogue"
    else:
        yield from differences(request.output, catalogue)
