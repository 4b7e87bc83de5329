"""Kills builds at random moments while somebody reads the site, and looks at what is left.

Two states of a content are built in turns into one folder, so that there is always something to publish. Both
are known whole beforehand: whatever a reader gets must be one of them, file for file, and all of it be there.
"""

from __future__ import annotations

import hashlib
import random
import signal
import threading
import time
from collections import defaultdict
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from multiprocessing import get_all_start_methods, get_context, set_start_method
from multiprocessing.process import BaseProcess
from pathlib import Path

from generator.pipeline import Request, build_site
from generator.problems import Problem
from generator.publish import Busy, manifest, open_stage, verify
from generator.steps.excerpt import write_files
from generator.steps.kinds import Kinds

# Every fifth build takes nothing from earlier ones, so that also the making is interrupted.
_ANEW_EACH = 5
# Between two files, so that the reader leaves the processor to the build.
_PAUSE_SECONDS = 0.02
# Processes of a killed build notice it, end and give the lock free.
_MOST_SECONDS_OF_LOCK = 10.0


@dataclass(frozen=True)
class Survived:
    """What came of it. kills: builds still running. done: those that were quicker. reads: of files."""

    kills: int
    done: int
    reads: int
    faults: tuple[str, ...]


@dataclass
class _Reader:
    """Reads files of the site over and over, like a browser, and compares each with the whole states."""

    site: Path
    known: Mapping[str, frozenset[str]]
    faults: list[str] = field(default_factory=list)
    reads: int = 0

    def read(self, chance: random.Random) -> None:
        """Read one file by its address; a file of both states is there at any time."""
        path = chance.choice(sorted(self.known))
        try:
            data = (self.site / path).read_bytes()
        except OSError as error:
            self.faults.append(f"a reader does not get {path}: {error.strerror}")
            return
        self.reads += 1
        if hashlib.sha256(data).hexdigest() not in self.known[path]:
            self.faults.append(f"a reader gets {path} as it was never built")


@dataclass(frozen=True)
class _Trial:
    folder: Path
    root: Path
    contents: tuple[Path, Path]

    @property
    def site(self) -> Path:
        return self.folder / "site"

    def start(self, number: int, anew: bool) -> BaseProcess:
        """Start a build of one of the two states in a process of its own."""
        request = Request(
            self.contents[number],
            self.site,
            self.root,
            self.root / ".phasebook",
            workers=2,
            kinds=Kinds.STANDARD,
            anew=anew,
        )
        return begin(_build, request)

    def build(self, number: int) -> float:
        """Build to the end and return the seconds it took; RuntimeError where nothing is published."""
        started = time.perf_counter()
        build = self.start(number, anew=False)
        build.join()
        if build.exitcode != 0:
            raise RuntimeError(f"the build of {self.contents[number]} published nothing")
        return time.perf_counter() - started


def begin(work: Callable[..., None], *given: object) -> BaseProcess:
    """Start some work in a process of its own, as the command line would."""
    # The server has read the program once and has no thread: its copies begin at once, and soundly.
    context = get_context("forkserver")
    context.set_forkserver_preload([__name__])
    process = context.Process(target=_at_work, args=(work, *given))
    process.start()
    return process


def _at_work(work: Callable[..., None], *given: object) -> None:
    # As in a command that was typed, not as the process was made that this one is a copy of.
    set_start_method(get_all_start_methods()[0], force=True)
    work(*given)


def _build(request: Request) -> None:
    if not build_site(request, lambda _: None).published:
        raise SystemExit(1)


def kill_builds(
    states: Sequence[Mapping[str, bytes]], count: int, root: Path, folder: Path, say: Callable[[str], None]
) -> Survived:
    """Kill `count` builds (SIGKILL) of two states in turns and return what was seen; folder: an empty one.

    Raises RuntimeError where a build that nobody kills fails.
    """
    contents = [write_files(files, folder / f"content-{number}") for number, files in enumerate(states)]
    trial = _Trial(folder, root, (contents[0], contents[1]))
    say("Building both states ...")
    found, seconds = [], 0.0
    for number in (0, 1):
        seconds = trial.build(number)
        found.append(_files(trial.site))
    reader = _Reader(trial.site, _in_both(found))
    chance, kills, done = random.Random(0), 0, 0
    faults: list[str] = []
    with _reading(reader):
        while kills < count:
            anew = (kills + done) % _ANEW_EACH == _ANEW_EACH - 1
            other = 0 if _files(trial.site) == found[1] else 1
            started = time.perf_counter()
            killed = kill(trial.start(other, anew), chance.uniform(0, seconds))
            kills, done = kills + killed, done + (not killed)
            if not killed:
                seconds = min(seconds, time.perf_counter() - started)
            faults += (f"after {kills} kills: {fault}" for fault in _left(trial))
            if killed and kills % 10 == 0:
                say(f"{kills} of {count} killed ...")
        trial.build(0)
    faults += _at_the_end(trial, found[0])
    return Survived(kills, done, reader.reads, (*reader.faults, *faults))


def second_state(files: Mapping[str, bytes]) -> dict[str, bytes]:
    """Return the files with a word more in the glossary, which every booklet and many pages show."""
    word = b"\nsecond-state:\n  term: Second state\n  meaning: A word that was added for a trial.\n"
    return {**files, "glossary.yml": files["glossary.yml"] + word}


def _files(site: Path) -> Mapping[str, str]:
    """Return the fingerprints of what belongs to this edition."""
    listing = manifest.read(site)
    if isinstance(listing, Problem):
        raise RuntimeError(listing.message)
    return {path: total for path, total in listing.files.items() if path not in listing.kept}


def _in_both(states: Sequence[Mapping[str, str]]) -> Mapping[str, frozenset[str]]:
    found: dict[str, set[str]] = defaultdict(set)
    for state in states:
        for path, total in state.items():
            found[path].add(total)
    return {path: frozenset(totals) for path, totals in found.items() if all(path in one for one in states)}


@contextmanager
def _reading(reader: _Reader) -> Iterator[None]:
    ended, chance = threading.Event(), random.Random(1)

    def go_on() -> None:
        while not ended.wait(_PAUSE_SECONDS):
            reader.read(chance)

    thread = threading.Thread(target=go_on)
    thread.start()
    try:
        yield
    finally:
        ended.set()
        thread.join()


def kill(process: BaseProcess, seconds: float) -> bool:
    """Kill a process after some seconds; return whether it was still running."""
    process.join(seconds)
    process.kill()
    process.join()
    return process.exitcode == -signal.SIGKILL


def _left(trial: _Trial) -> Iterator[str]:
    """Yield what is wrong right after a kill: the site is whole, and the next build may begin."""
    yield from (f"{one.place}: {one.message}" for one in verify(trial.site))
    until = time.monotonic() + _MOST_SECONDS_OF_LOCK
    while True:
        try:
            with open_stage(trial.site, trial.contents[0]):
                break
        except Busy:
            if time.monotonic() > until:
                yield "the next build is told that one is running"
                return
            time.sleep(0.05)
    beside = {path.name for path in trial.folder.iterdir()}
    for name in sorted(beside - {"site", *(content.name for content in trial.contents)}):
        yield f"{name} is left beside the site"


def _at_the_end(trial: _Trial, first: Mapping[str, str]) -> Iterator[str]:
    """Yield what differs between the last build, which nobody killed, and the same one before all kills."""
    yield from _left(trial)
    last = _files(trial.site)
    yield from (f"{path} came out otherwise" for path in sorted(last) if first.get(path) != last[path])
    yield from (f"{path} is missing" for path in sorted(first.keys() - last.keys()))
