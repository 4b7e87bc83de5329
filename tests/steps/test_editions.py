"""What goes out is recorded and comes back byte for byte, years later and after the content changed."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from generator.catalogue.editions import PROTOCOL
from generator.cli.editions import editions
from generator.cli.shared import DONE, NOT_STARTED, PROBLEMS, ROOT
from generator.pipeline import Request, record_editions
from generator.steps.editions import Recording, checked_ledger
from generator.steps.kinds import Kinds
from tests.content import FILES, with_change, write_content
from tests.review.paper import code

THEN, TODAY = datetime.date(2024, 11, 20), datetime.date(2026, 11, 25)
CHANGED = with_change(
    FILES, "programmes/tendon-repair.yml", "3 x 10 with light band", "3 x 12 with light band"
)


def record(
    folder: Path, day: datetime.date, files: Mapping[str, str] = FILES, kinds: Kinds = Kinds.STANDARD
) -> Recording:
    """Record the booklets of a content, as the command does."""
    content = write_content(folder / "content", files)
    # What the tests of this file make alike is made once.
    request = Request(content, folder / "site", ROOT, ROOT / ".phasebook", 1, kinds)
    found, _ = record_editions(request, folder / "archive", day, lambda _: None)
    return found


def command(folder: Path, *arguments: str) -> Result:
    """Return what ``editions`` prints, and its exit code."""
    options = ["--content", str(folder / "content")]
    if arguments[0] == "show":
        options += ["--archive", str(folder / "archive")]
    return CliRunner().invoke(editions, [*arguments, *options], catch_exceptions=False, standalone_mode=False)


def kept(folder: Path) -> dict[str, bytes]:
    """Return every file of the archive."""
    return {path.name: path.read_bytes() for path in (folder / "archive").rglob("*.pdf")}


@pytest.mark.slow
def test_a_state_of_two_years_ago_comes_back_byte_for_byte(tmp_path: Path) -> None:
    """What a patient was given in 2024 is handed out again in 2026, whatever was changed meanwhile."""
    first = record(tmp_path, THEN)
    assert (first.problems, len(first.fresh), first.known) == ((), 3, 0)
    before = kept(tmp_path)
    ledger = checked_ledger(tmp_path / "content").ledger
    assert ledger is not None
    (old,) = [one for one in ledger.editions if one.phase == 2]
    given, digest = old.sheets[0].code, old.sheets[0].pdf
    assert (old.recorded, old.language, old.sheets[0].kind) == (THEN, "en", "standard")

    later = record(tmp_path, TODAY, CHANGED)
    assert later.problems == ()
    assert given not in later.fresh

    wanted = tmp_path / "old.pdf"
    shown = command(tmp_path, "show", given.lower().replace("-", " "), "--output", str(wanted))
    assert shown.return_value == DONE
    assert "recorded 2024-11-20" in shown.output
    assert wanted.read_bytes() == before[f"{digest}.pdf"]
    assert set(before.items()) <= set(kept(tmp_path).items())

    # The content as it was makes the same files again: the day that is printed on them is in the ledger.
    again = record(tmp_path, TODAY)
    assert (again.problems, again.fresh) == ((), ())
    listed = command(tmp_path, "list").output
    assert listed.count("2024-11-20") == 3
    assert f"tendon-repair {PROTOCOL}" in listed


@pytest.mark.slow
def test_booklets_are_made_again_as_they_were_recorded(tmp_path: Path) -> None:
    """Large print recorded later has the older day on it, and the standard booklets come out alike."""
    record(tmp_path, THEN)
    later = record(tmp_path, TODAY, kinds=Kinds.USUAL)
    assert later.problems == ()
    assert (later.known, later.same) == (3, 3)
    ledger = checked_ledger(tmp_path / "content").ledger
    assert ledger is not None
    assert {one.recorded for one in ledger.editions} == {THEN}
    _, sheets = ledger.of(later.fresh[0]) or (None, ())
    assert {one.kind for one in sheets} >= {"standard", "large", "pocket", "pocket-fold"}


def test_nothing_is_recorded_from_a_content_with_errors(tmp_path: Path) -> None:
    """A booklet that could not be published is not recorded; ledger and archive stay as they are."""
    wrong = with_change(FILES, "programmes/tendon-repair.yml", "use: heel-raise", "use: heel-rise")
    found = record(tmp_path, THEN, wrong)
    assert [one.code for one in found.problems] == ["unknown-exercise"]
    assert not (tmp_path / "archive").exists()
    assert not (tmp_path / "content" / "editions.yml").exists()


def test_a_wrong_ledger_stops_recording_and_building(tmp_path: Path) -> None:
    """A ledger that cannot be trusted is told with its line before anything is printed."""
    write_content(tmp_path / "content")
    (tmp_path / "content" / "editions.yml").write_text("editions:\n  - recorded: yesterday\n", "utf-8")
    found = record(tmp_path, THEN)
    assert {one.place.line for one in found.problems} == {2}
    listed = command(tmp_path, "list")
    assert listed.return_value == PROBLEMS
    assert "editions.yml:2:" in listed.output


@pytest.mark.slow
def test_a_kept_file_that_was_changed_or_lost_is_not_handed_out(tmp_path: Path) -> None:
    """Nobody gets a file that is not the one that was recorded."""
    given = record(tmp_path, THEN).fresh[0]
    ledger = checked_ledger(tmp_path / "content").ledger
    assert ledger is not None
    _, sheets = ledger.of(given) or (None, ())
    (path,) = (tmp_path / "archive").rglob(f"{sheets[0].pdf}.pdf")
    path.write_bytes(path.read_bytes() + b" ")
    wanted = tmp_path / "out.pdf"
    damaged = command(tmp_path, "show", given, "--output", str(wanted))
    assert (damaged.return_value, wanted.exists()) == (PROBLEMS, False)
    assert "edition-damaged" in damaged.output
    path.unlink()
    assert "edition-not-kept" in command(tmp_path, "show", given).output


def test_an_unknown_code_is_told(tmp_path: Path) -> None:
    """A code that nobody recorded ends with a message and a remedy, not with a file."""
    write_content(tmp_path / "content")
    found = command(tmp_path, "show", code(99))
    assert found.return_value == PROBLEMS
    assert f"CODE: edition-unknown: no edition '{code(99)}' was recorded" in found.output
    assert "nothing was recorded yet" in found.output


def test_nothing_recorded_yet_says_how_to_begin(tmp_path: Path) -> None:
    """An empty list names the command that fills it."""
    write_content(tmp_path / "content")
    found = command(tmp_path, "list")
    assert found.return_value == DONE
    assert "editions record" in found.output


def test_a_day_that_is_none_is_refused(tmp_path: Path) -> None:
    """A misspelt date is told before anything is printed."""
    write_content(tmp_path / "content")
    found = command(tmp_path, "record", "--date", "25.11.2026")
    assert found.return_value == NOT_STARTED
    assert "write it as 2026-11-25" in found.output
