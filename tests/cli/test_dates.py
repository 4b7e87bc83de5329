"""``dates`` says "not before" on both tracks, and refuses days that cannot be meant."""

from __future__ import annotations

import datetime
import json
from pathlib import Path

import click
import pytest
from click.testing import CliRunner, Result

from generator.catalogue.surgery import why_not
from generator.cli.dates import dates
from generator.cli.shared import DONE, NOT_STARTED, PROBLEMS
from tests.content import FILES, with_change, write_content


def run(folder: Path, *options: str, programme: str = "tendon-repair") -> Result:
    """Return what the command prints and its exit code."""
    return CliRunner().invoke(
        dates,
        [programme, "--content", str(folder), *options],
        catch_exceptions=False,
        standalone_mode=False,
    )


def test_both_tracks_and_the_rule_to_stay(tmp_path: Path) -> None:
    """A day is one before which nothing begins; what to do until then stands below."""
    result = run(write_content(tmp_path), "--surgery-date", "2024-02-29")
    assert result.return_value == DONE
    lines = result.output.splitlines()
    assert "2024-02-29  2024-02-29  phase 1: Protect" in lines
    assert "2024-04-11  2024-04-25  phase 2: Load" in lines
    assert "Not before these days" in result.output
    assert lines[-1] == "Until you are told, stay with the booklet you have."


def test_json_form(tmp_path: Path) -> None:
    """The same days as data, in a numbered format; a delay from phase 2 on leaves phase 1 alone."""
    write_content(
        tmp_path, with_change(FILES, "programmes/tendon-repair.yml", "delayed-week: 0", "delayed-week: 1")
    )
    options = ("--surgery-date", "2024-12-31", "--delayed-from", "2", "--format", "json")
    found = json.loads(run(tmp_path, *options).output)
    assert (found["format"], found["programme"], found["delayed_from"]) == (1, "tendon-repair", 2)
    assert found["stay"] == "Until you are told, stay with the booklet you have."
    assert [(item["phase"], item["usual"], item["delayed"]) for item in found["not_before"]] == [
        (1, "2024-12-31", "2024-12-31"),
        (2, "2025-02-11", "2025-02-25"),
    ]


@pytest.mark.parametrize(
    ("options", "says"),
    [
        (("--surgery-date", "29.02.2024"), "such as 2028-02-29"),
        (("--surgery-date", "2024-2-9"), "such as 2028-02-29"),
        (("--surgery-date", "20240229"), "such as 2028-02-29"),
        (("--surgery-date", "٢٠٢٤-٠٢-٢٩"), "such as 2028-02-29"),
        (("--surgery-date", "2023-02-29"), "there is no day 2023-02-29"),
        (("--surgery-date", "2024-13-01"), "check month and day"),
        (("--surgery-date", "1989-12-31"), "before 1990"),
        (("--surgery-date", "9999-12-31"), "a year ahead"),
        (("--surgery-date", "2024-02-29", "--delayed-from", "3"), "has phases 1 to 2"),
        (("--surgery-date", "2024-02-29", "--delayed-from", "0"), "1<=x<=12"),
        ((), "--surgery-date"),
    ],
)
def test_a_day_that_cannot_be_meant_is_refused(tmp_path: Path, options: tuple[str, ...], says: str) -> None:
    """The command does not start and says what to type."""
    with pytest.raises(click.UsageError) as raised:
        run(write_content(tmp_path), *options)
    assert raised.value.exit_code == NOT_STARTED
    assert says in raised.value.format_message()


def test_operations_are_planned_no_more_than_a_year_ahead() -> None:
    """The clock is an argument: what is too far ahead today is not so next year."""
    today = datetime.date(2026, 1, 1)
    assert why_not(datetime.date(2027, 1, 1), today) == ""
    assert "a year ahead" in why_not(datetime.date(2027, 1, 5), today)
    assert why_not(datetime.date(1990, 1, 1), today) == ""
    assert "1990" in why_not(datetime.date(1989, 12, 31), today)


def test_an_unknown_programme_brings_the_nearest(tmp_path: Path) -> None:
    """A misspelt id is answered with the id that is meant."""
    result = run(write_content(tmp_path), "--surgery-date", "2024-02-29", programme="tendon-repai")
    assert result.return_value == NOT_STARTED
    assert "did you mean 'tendon-repair'?" in result.output


def test_content_with_errors_gives_no_days(tmp_path: Path) -> None:
    """Weeks that contradict each other are no base for a calendar."""
    write_content(tmp_path, with_change(FILES, "programmes/tendon-repair.yml", "    week: 6", "    week: 9"))
    result = run(tmp_path, "--surgery-date", "2024-02-29")
    assert result.return_value == PROBLEMS
    assert "delay-shortens" in result.output
