"""Makes facts and ledgers of the small content, as an editor would change it; all of it invented."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from pathlib import Path

from generator.body.shown import with_angles
from generator.catalogue.edition_values import facts_fingerprint
from generator.catalogue.editions import Change, Edition, EditionLedger, Facts, Sheet
from generator.catalogue.fingerprints import edition_code
from generator.progression import arrange
from generator.review.changes import differences
from generator.steps.editions import facts_in
from generator.steps.languages import speak
from generator.steps.worked import work_out
from tests.content import FILES, catalogue_of, with_change

PROGRAMME = "tendon-repair"
FILE = f"programmes/{PROGRAMME}.yml"
DAY = datetime.date(2024, 11, 20)
NOWHERE = Path("no-such-folder")


def facts_of_files(files: Mapping[str, str] = FILES, phase: int = 2) -> Facts:
    """Return what the English booklet of a phase says."""
    catalogue = with_angles(catalogue_of(files))
    spoken, problems = speak(catalogue, NOWHERE)
    assert problems == ()
    return facts_in(spoken, work_out(catalogue, arrange(catalogue)))[PROGRAMME, phase, "en"]


def changed(path: str, old: str, new: str, phase: int = 2) -> tuple[Change, ...]:
    """Return what differs between the small content and the same with one change."""
    return differences(
        facts_of_files(FILES, phase), facts_of_files(with_change(FILES, path, old, new), phase), "en"
    )


def code(number: int) -> str:
    """Return an edition code that nobody printed."""
    return edition_code(f"{number:016x}" + "0" * 48)


def edition(facts: Facts | None, *codes: str, day: datetime.date = DAY, phase: int = 2) -> Edition:
    """Return an entry of the ledger with a file for each code."""
    return Edition(
        recorded=day,
        programme=PROGRAMME,
        phase=phase if facts else None,
        language="en",
        fingerprint=facts_fingerprint(facts) if facts else "0" * 40,
        sheets=tuple(
            Sheet(code=one, kind="standard", pdf=f"{position:064x}") for position, one in enumerate(codes)
        ),
        facts=facts,
    )


def ledger(*editions: Edition) -> EditionLedger:
    """Return a ledger."""
    return EditionLedger(editions=editions)
