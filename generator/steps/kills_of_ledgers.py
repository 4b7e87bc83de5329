"""Kills recording and signing at random moments, and reads what both have written since, file for file."""

from __future__ import annotations

import datetime
import hashlib
import random
import time
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from generator.catalogue.editorial import Scope
from generator.catalogue.review import Reviewer
from generator.editing import sign_offs_written
from generator.editing.editions import archived
from generator.pipeline import Request, check_catalogue, record_editions
from generator.problems import has_errors
from generator.steps.editions import checked_ledger
from generator.steps.excerpt import write_files
from generator.steps.kills import begin, kill
from generator.steps.kinds import Kinds
from generator.steps.reviewing import Signing, sign

# Of recording and of reading; which one is no matter.
_DAY = datetime.date(2026, 1, 5)
# How an entry of the ledger of editions begins.
_ENTRY = b"\n  - "
# A ledger is written in the last moments, so every other kill falls there.
_LAST_PART = 0.9


@dataclass(frozen=True)
class Torn:
    """What came of it. kills: of a writer still at work. done: those that were quicker."""

    kills: int
    done: int
    faults: tuple[str, ...]


@dataclass
class _Ledger:
    """A ledger that is written over and over from the same state. archive: its files, where it has any."""

    path: Path
    before: bytes | None
    work: Callable[..., None]
    given: tuple[object, ...]
    archive: Path | None = None
    after: bytes = b""
    seconds: float = 0.0
    faults: list[str] = field(default_factory=list)

    def back(self) -> None:
        """Put the ledger back as it was; what was kept besides may stay."""
        self.path.unlink(missing_ok=True)
        if self.before is not None:
            self.path.write_bytes(self.before)

    def write(self) -> None:
        """Write the ledger from its state before to the end; RuntimeError where that fails."""
        self.back()
        started = time.perf_counter()
        process = begin(self.work, *self.given)
        process.join()
        if process.exitcode != 0:
            raise RuntimeError(f"{self.path.name} was not written")
        self.after, self.seconds = self.path.read_bytes(), time.perf_counter() - started

    def try_once(self, seconds: float) -> bool:
        """Kill a writer after some seconds, look at what is left, and return whether it was at work."""
        self.back()
        started = time.perf_counter()
        killed = kill(begin(self.work, *self.given), seconds)
        if not killed:
            self.seconds = min(self.seconds, time.perf_counter() - started)
        now = self.path.read_bytes() if self.path.exists() else None
        if now not in (self.before, self.after):
            self.faults.append(f"{self.path.name} is neither as it was nor as it was to be")
        if self.archive is not None:
            self.faults += _harmed(self.archive, self.path.parent)
        return killed


def kill_ledgers(
    files: Mapping[str, bytes], count: int, root: Path, folder: Path, say: Callable[[str], None]
) -> Torn:
    """Kill `count` recordings and as many signings of a content (SIGKILL); folder: an empty one.

    Raises RuntimeError where one that nobody kills fails.
    """
    chance, kills, done = random.Random(0), 0, 0
    ledgers = (_recorded(files, root, folder, say), _signed(files, folder))
    for ledger in ledgers:
        ledger.write()
        say(f"Killing the writers of {ledger.path.name} ...")
        own = 0
        while own < count:
            least = ledger.seconds * _LAST_PART if (own + done) % 2 else 0.0
            killed = ledger.try_once(chance.uniform(least, ledger.seconds))
            own, done = own + killed, done + (not killed)
        kills += own
        _hold_at_the_end(ledger)
    return Torn(kills, done, tuple(fault for ledger in ledgers for fault in ledger.faults))


def _hold_at_the_end(ledger: _Ledger) -> None:
    """Write once more without a kill, and look whether it comes out as before all of them."""
    wanted = ledger.after
    ledger.write()
    if ledger.after != wanted:
        ledger.faults.append(f"{ledger.path.name} came out otherwise")


def _recorded(files: Mapping[str, bytes], root: Path, folder: Path, say: Callable[[str], None]) -> _Ledger:
    """Record all, and return the ledger without its last entry, to which that is added."""
    content, archive = write_files(files, folder / "recorded"), folder / "archive"
    say("Recording once ...")
    request = Request(content, folder / "site", root, root / ".phasebook", 2, Kinds.STANDARD)
    _record(request, archive)
    ledger = content / "editions.yml"
    data = ledger.read_bytes()
    return _Ledger(ledger, data[: data.rindex(_ENTRY) + 1], _record, (request, archive), archive)


def _record(request: Request, archive: Path) -> None:
    found, _ = record_editions(request, archive, _DAY, lambda _: None)
    if not found.fresh:
        raise SystemExit(1)


def _signed(files: Mapping[str, bytes], folder: Path) -> _Ledger:
    """Sign one kind of item, and return the ledger to which the others are added."""
    content = write_files(files, folder / "signed")
    _sign(content, "safety")
    ledger = content / "reviews.yml"
    return _Ledger(ledger, ledger.read_bytes(), _sign, (content, "exercise/*"))


def _sign(content: Path, items: str) -> None:
    checked = check_catalogue(content)
    if (catalogue := checked.sound) is None:
        raise SystemExit(1)
    wanted = Signing((items,), Scope.CONTENT, "", Reviewer.PHYSIOTHERAPIST, _DAY)
    signed, problems = sign(catalogue, content, wanted, checked.problems)
    ledger = content / "reviews.yml"
    if problems or sign_offs_written(ledger, catalogue.ledger, signed, checked.sources):
        raise SystemExit(1)


def _harmed(archive: Path, content: Path) -> Iterator[str]:
    """Yield each file of the archive that is not what its name says, and each that the ledger misses."""
    read = checked_ledger(content)
    if has_errors(read.problems) or read.ledger is None:
        yield "the ledger of editions cannot be read"
        return
    for path in archive.rglob("[!.]*.pdf"):
        if hashlib.sha256(path.read_bytes()).hexdigest() != path.stem:
            yield f"{path.name} is torn"
    listed = (sheet.pdf for edition in read.ledger.editions for sheet in edition.sheets)
    yield from (
        f"{digest} is recorded and not kept" for digest in listed if not archived(archive, digest).exists()
    )
