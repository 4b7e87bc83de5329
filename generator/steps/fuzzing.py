"""Feeds spoilt content to the reader and the checks, and looks at whatever comes out.

A spoilt file must end in findings, each with a place in that content and a remedy, or in a catalogue;
never in an error of Python or an endless loop. Nothing is built: what passes is what an editor may write.
"""

from __future__ import annotations

import gc
import json
import re
import signal
import tempfile
import traceback
from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from enum import Enum
from functools import lru_cache, partial
from pathlib import Path
from types import FrameType

from generator.body.shown import facts_of
from generator.catalogue.values import Catalogue
from generator.pipeline import Checked, check_reading
from generator.pool import pool
from generator.problems import Place, Problem, as_json, as_text, has_errors
from generator.reading import read_files
from generator.reading.editions import FILE as LEDGER
from generator.reading.editions import ReadLedger, parse_editions
from generator.reading.nodes import Node, parse
from generator.steps.all_rules import ALL_RULES
from generator.steps.languages import speak_one
from generator.steps.mutations import Mutant, mutant
from generator.steps.worked import work_out

# Seconds of processor time; the slowest honest file takes a hundredth of it.
MOST_SECONDS = 20.0
_TRANSLATIONS = "translations/"
_CODES = frozenset(rule.code for rule in ALL_RULES)
_CHUNK = 50
# Controls, line ends that only some programs count, marks that turn a line round, halves of characters.
_CONTROL = re.compile("[\x00-\x1f\x7f-\x9f\u2028-\u202e\u2066-\u2069\ud800-\udfff]")


class End(Enum):
    """Where a spoilt file was stopped."""

    READING = "stopped while it was read"
    CHECKS = "stopped by a check"
    PASSED = "passed: an editor may write this"


@dataclass(frozen=True)
class Verdict:
    """What came of one spoilt file. failure: why the program is at fault, or nothing."""

    seed: int
    done: str
    end: End
    failure: str = ""


class _TooSlowError(Exception):
    """Too much processor time went by."""


@dataclass(frozen=True)
class Ground:
    """Content that is spoilt one file at a time. catalogue: what its unspoilt files say."""

    files: Mapping[str, bytes]
    catalogue: Catalogue = field(repr=False)

    def judge(self, seed: int) -> Verdict:
        """Spoil a file as the seed says, read and check everything, and judge what is said of it."""
        spoilt = mutant(seed, self.files)
        done = f"{spoilt.name}: {spoilt.done}"
        try:
            with _limited(MOST_SECONDS):
                end, checked = self._look_at(spoilt)
                failure = next(_failures(checked, {**self.files, spoilt.name: spoilt.data}), "")
        except _TooSlowError:
            return Verdict(seed, done, End.READING, f"more than {MOST_SECONDS:g} seconds of processor time")
        except Exception:  # whatever escapes here would have been a traceback on an editor's screen
            return Verdict(seed, done, End.READING, traceback.format_exc(limit=-4))
        return Verdict(seed, done, end, failure)

    def _look_at(self, spoilt: Mutant) -> tuple[End, Checked]:
        if spoilt.name.startswith(_TRANSLATIONS):
            return self._translated(spoilt)
        files = {**self.files, spoilt.name: spoilt.data}
        read = read_files(files, parser=_parse_once)
        checked = check_reading(read, *_ledger(files))
        if read.catalogue is None or has_errors(read.problems):
            return End.READING, checked
        if (catalogue := checked.sound) is None:
            return End.CHECKS, checked
        found = _in_words(catalogue, catalogue.source_language, Path())
        work_out(catalogue, checked.orders)
        end = End.CHECKS if has_errors(found) else End.PASSED
        return end, replace(checked, problems=(*checked.problems, *found))

    def _translated(self, spoilt: Mutant) -> tuple[End, Checked]:
        """Put the unspoilt catalogue into the language whose file is spoilt."""
        with tempfile.TemporaryDirectory(prefix="phasebook-fuzz-") as folder:
            path = Path(folder, spoilt.name)
            path.parent.mkdir()
            path.write_bytes(spoilt.data)
            found = _in_words(self.catalogue, path.stem, Path(folder))
        return End.READING if has_errors(found) else End.PASSED, Checked(None, {}, found, {})


def run(
    files: Mapping[str, bytes], seeds: Sequence[int], workers: int, say: Callable[[str], None]
) -> tuple[Verdict, ...]:
    """Judge every seed in processes of their own, and tell how many are done."""
    found: list[Verdict] = []
    chunks = [seeds[start : start + _CHUNK] for start in range(0, len(seeds), _CHUNK)]
    with pool(workers, fresh=True, prepare=partial(_prepare, dict(files))) as processes:
        for verdicts in processes.map(_judge_all, chunks):
            found += verdicts
            if len(found) % (20 * _CHUNK) == 0:
                say(f"{len(found)} of {len(seeds)} ...")
    return tuple(found)


def counts(verdicts: Sequence[Verdict]) -> dict[str, float]:
    """Return how many files ended where, and how many showed a fault of the program."""
    ends = Counter(one.end for one in verdicts)
    told = {end.value: float(ends[end]) for end in End}
    return {"spoilt files": len(verdicts), **told, "faults": sum(bool(one.failure) for one in verdicts)}


def ground_of(files: Mapping[str, bytes]) -> Ground:
    """Return sound content as ground; ValueError where the content is not sound."""
    checked = check_reading(read_files(files, parser=_parse_once), *_ledger(files))
    if (catalogue := checked.sound) is None:
        raise ValueError("the content has errors before anything is spoilt")
    return Ground(files, catalogue)


_ground: list[Ground] = []


def _prepare(files: Mapping[str, bytes]) -> None:
    _ground[:] = [ground_of(files)]
    # What stays for the whole run need not be looked through each time garbage is collected.
    gc.freeze()


def _judge_all(seeds: Sequence[int]) -> list[Verdict]:
    return [_ground[0].judge(seed) for seed in seeds]


@lru_cache(maxsize=1024)
def _parse_once(path: str, text: str, most: int) -> tuple[Node | None, tuple[Problem, ...]]:
    return parse(path, text, most)


def _ledger(files: Mapping[str, bytes]) -> tuple[ReadLedger, Mapping[str, Sequence[str]]]:
    read = parse_editions(LEDGER, files[LEDGER]) if LEDGER in files else ReadLedger(None, b"", ())
    return read, {LEDGER: read.lines}


def _in_words(catalogue: Catalogue, language: str, folder: Path) -> tuple[Problem, ...]:
    """Return what is found when the catalogue is put into words, places seen from the content."""
    _, found = speak_one(catalogue, language, folder, facts_of(catalogue))
    return tuple(replace(one, place=_seen_from(folder, one.place)) for one in found)


def _seen_from(folder: Path, place: Place) -> Place:
    return replace(place, path=place.path.removeprefix(f"{folder}/"))


@contextmanager
def _limited(seconds: float) -> Iterator[None]:
    """Stop what takes more processor time than that; time by the clock says nothing on a busy machine."""

    def stop(_: int, __: FrameType | None) -> None:
        raise _TooSlowError

    before = signal.signal(signal.SIGVTALRM, stop)
    signal.setitimer(signal.ITIMER_VIRTUAL, seconds)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_VIRTUAL, 0)
        signal.signal(signal.SIGVTALRM, before)


def _failures(checked: Checked, files: Mapping[str, bytes]) -> Iterator[str]:
    """Yield what is wrong with the findings: nothing said, no such place, no remedy, not to be printed."""
    for problem in checked.problems:
        shown = as_text(problem)
        if problem.code not in _CODES:
            yield f"no such code: {shown}"
        if not problem.message.strip() or not problem.remedy.strip():
            yield f"without message or remedy: {shown}"
        if _CONTROL.search(shown):
            yield f"more than a line, or not to be shown on a terminal: {shown!r}"
        if not _exists(problem.place, files):
            yield f"there is no such place: {shown}"
        json.dumps(as_json(problem), ensure_ascii=False).encode("utf-8")
        as_text(problem, checked.sources).encode("utf-8")


def _exists(place: Place, files: Mapping[str, bytes]) -> bool:
    """Return whether a place lies in the content, and no more than a line after the end of its file."""
    return place.path in files and place.line <= files[place.path].count(b"\n") + 2
