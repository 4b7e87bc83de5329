"""Puts finished booklets on the shelf and takes them from there, with what is known of their sheets."""

from __future__ import annotations

import json
from pathlib import Path

from generator.booklets.values import BookletResult, SheetFact
from generator.shelf import Shelf


def taken(shelf: Shelf, name: str, output: Path) -> BookletResult | None:
    """Copy a kept booklet to `output` and return what is known of it; None where none is kept."""
    work = shelf.take(name)
    if work is None:
        return None
    head, _, pdf = work.partition(b"\n")
    facts = json.loads(head)
    sheets = tuple(SheetFact(exercise, page, tuple(said)) for exercise, page, said in facts["sheets"])
    output.parent.mkdir(parents=True, exist_ok=True)
    output.write_bytes(pdf)
    two = frozenset(facts["two_sheets"])
    return BookletResult(output, facts["pages"], sheets, (), two, dict(facts["taken"]), kept=True)


def keep(shelf: Shelf, name: str, result: BookletResult) -> None:
    """Keep a booklet without findings."""
    if result.problems:
        return
    facts = {
        "pages": result.pages,
        "sheets": [[one.exercise, one.page, list(one.required)] for one in result.sheets],
        "two_sheets": sorted(result.two_sheets),
        "taken": list(result.taken.items()),
    }
    head = json.dumps(facts, ensure_ascii=False).encode("utf-8")
    shelf.put(name, head + b"\n" + result.path.read_bytes())
