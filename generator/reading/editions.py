"""Reads the ledger of editions, which may grow far longer than any text of the content."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from generator.catalogue.editions import EditionLedger
from generator.problems import Place, Problem, in_order
from generator.reading import rules
from generator.reading.fields_editions import LEDGER
from generator.reading.findings import BAD, Findings
from generator.reading.nodes import decode, parse
from generator.reading.table import Group

FILE = "editions.yml"
MOST_LEDGER_BYTES = 50_000_000
_MOST_LEDGER_NODES = 4_000_000


@dataclass(frozen=True)
class ReadLedger:
    """What a ledger says: None where it cannot be read; its bytes as read, and its lines."""

    ledger: EditionLedger | None
    data: bytes
    problems: tuple[Problem, ...]
    lines: tuple[str, ...] = ()


def read_editions(content: Path) -> ReadLedger:
    """Read the ledger of a content folder; one that is not there says that nothing was recorded."""
    path = content / FILE
    place = Place(str(path))
    if not path.exists() and not path.is_symlink():
        return ReadLedger(EditionLedger(place=place), b"", ())
    if not path.is_file():
        return ReadLedger(None, b"", (rules.UNREADABLE_FILE.at(place, "it is no ordinary file"),))
    try:
        data = path.read_bytes()
    except OSError as error:
        message = f"it cannot be opened ({error.strerror})"
        return ReadLedger(None, b"", (rules.UNREADABLE_FILE.at(place, message),))
    return parse_editions(str(path), data)


def parse_editions(path: str, data: bytes) -> ReadLedger:
    """Return what the bytes of a ledger say."""
    text, problems = decode(path, data, MOST_LEDGER_BYTES)
    if text is None:
        return ReadLedger(None, data, problems)
    lines = tuple(text.split("\n"))
    root, problems = parse(path, text, _MOST_LEDGER_NODES)
    if root is None:
        return ReadLedger(
            None, data, problems or (rules.EMPTY_TEXT.at(Place(path), "the file is empty"),), lines
        )
    findings = Findings(list(problems))
    ledger = Group(LEDGER).read(root, findings)
    found = None if ledger is BAD or findings.problems else ledger
    return ReadLedger(found, data, in_order(findings.problems), lines)
