"""Every programme has its protocol at its pinned address, and its code changes with what it says."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pytest

from generator.catalogue.fingerprints import is_edition_code
from generator.progression import arrange
from generator.steps.languages import speak
from generator.steps.protocols import protocol_jobs
from generator.steps.worked import work_out
from tests.content import FILES, catalogue_of, with_change

PROGRAMME = "programmes/tendon-repair.yml"
CHANGES = (
    ("restriction", "words: Do not jump or run.", "words: Do not jump, hop or run."),
    ("milestone", "passed: Ten times without pain.", "passed: Twelve times without pain."),
    (
        "source",
        "week-source: {text: Invented for tests, status: invented}\n    goals: [Keep",
        "week-source: {text: Guessed for tests, status: invented}\n    goals: [Keep",
    ),
    ("dose", "[2 x 8, 3 x 8, 3 x 10, 3 x 10 with light band]", "[2 x 8, 3 x 8, 3 x 10]"),
    ("week", "until: {week: 6, delayed-week: 8, phase: 2}", "until: {week: 7, delayed-week: 8, phase: 2}"),
)


def jobs_of(files: Mapping[str, str], folder: Path) -> tuple[tuple[str, str, str], ...]:
    """Return language, path and edition of every protocol of a content without translations."""
    catalogue = catalogue_of(files)
    spoken, problems = speak(catalogue, folder)
    assert problems == ()
    found = protocol_jobs(spoken, work_out(catalogue, arrange(catalogue)), folder, folder)
    assert [job.output for _, _, job in found] == [folder / path for _, path, _ in found]
    return tuple((language, path, job.edition) for language, path, job in found)


def test_a_protocol_stands_at_its_pinned_address(tmp_path: Path) -> None:
    """Links to it keep working: the language, the folder of booklets, the programme's id."""
    ((language, path, edition),) = jobs_of(FILES, tmp_path)
    assert (language, path) == ("en", "en/booklets/tendon-repair-protocol.pdf")
    assert is_edition_code(edition)


@pytest.mark.parametrize(("old", "new"), [change[1:] for change in CHANGES], ids=[one[0] for one in CHANGES])
def test_its_code_changes_with_what_it_says(tmp_path: Path, old: str, new: str) -> None:
    """A surgeon can tell an old protocol from a new one whatever was changed in the programme."""
    ((_, _, before),) = jobs_of(FILES, tmp_path)
    ((_, _, after),) = jobs_of(with_change(FILES, PROGRAMME, old, new), tmp_path)
    assert before != after
