"""``import measurements`` brings a table of published values in, all rows or none."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from generator.catalogue.exercise import Measurement
from generator.catalogue.terms import Statistic
from generator.cli.import_ import import_
from generator.cli.shared import DONE, PROBLEMS
from generator.editing import measurements
from generator.reading import read_content
from tests.content import write_content

HEADER = "exercise,muscle,mean_pct_mvic,sd,n,study_key,place_in_source,mean_status,sd_status,n_status,remark"
ANKLE = "ankle_pump,inner_calf,12.5,,12,invented2001,Table 2,checked,,memory,"
SEATED = 'heel-raise/seated,calf,20,4,,invented-2001,"Table 1, row 2",memory,memory,,Sitting.'
STANDING = "heel-raise,inner-calf,31,9,12,invented-2001,Table 1,checked,checked,checked,"
SAME = "heel-raise,calf,34.5,11,,invented-2001,Table 1,checked,checked,,"


def run(folder: Path, *rows: str, header: str = HEADER, load: str = "body weight") -> Result:
    """Return what the command prints about a table of these rows, and its exit code."""
    table = folder.parent / "table.csv"
    table.write_text("\n".join([header, *rows]) + "\n", encoding="utf-8")
    options = ["measurements", str(table), "--content", str(folder), "--load", load]
    return CliRunner().invoke(import_, options, catch_exceptions=False, standalone_mode=False)


def values(folder: Path, exercise: str, variation: str = "") -> tuple[Measurement, ...]:
    """Return the measurements of an exercise, or of its variation, as the reader finds them."""
    reading = read_content(folder)
    assert reading.problems == ()
    assert reading.catalogue is not None
    found = reading.catalogue.exercises[exercise]
    return found.variations[variation].activity if variation else found.activity


def snapshot(folder: Path) -> dict[str, bytes]:
    """Return every file of a folder with its bytes."""
    return {str(path): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_rows_reach_their_exercises(tmp_path: Path) -> None:
    """A value goes to its exercise or variation, with what was read in the source and what is recalled."""
    folder = write_content(tmp_path / "content")
    result = run(folder, ANKLE, SEATED, STANDING)
    assert result.return_value == DONE
    assert result.output.startswith("3 values written, 0 were there already.")
    (pump,) = values(folder, "ankle-pump")
    assert pump == Measurement(
        muscle="inner-calf",
        mean=12.5,
        n=12,
        study="invented-2001",
        at_place="Table 2",
        load="body weight",
        read=("mean",),
    )
    (seated,) = values(folder, "heel-raise", "seated")
    assert (seated.mean, seated.sd, seated.read, seated.remark) == (20, 4, (), "Sitting.")
    assert seated.at_place == "Table 1, row 2"
    assert [value.mean for value in values(folder, "heel-raise")] == [34.5, 31]


def test_what_was_typed_before_stays(tmp_path: Path) -> None:
    """Each line of a file that takes values stands as it did, and other files are not touched."""
    folder = write_content(tmp_path / "content")
    before = snapshot(folder)
    run(folder, SEATED, STANDING)
    after = snapshot(folder)
    changed = [path for path in before if before[path] != after[path]]
    assert [Path(path).name for path in changed] == ["heel-raise.yml"]
    kept = iter(after[changed[0]].decode().split("\n"))
    assert all(line in kept for line in before[changed[0]].decode().rstrip("\n").split("\n"))


def test_a_value_that_is_there_is_not_written_twice(tmp_path: Path) -> None:
    """The same table brings nothing the second time, nor does a row that stands in it twice."""
    folder = write_content(tmp_path / "content")
    result = run(folder, SAME, ANKLE, ANKLE)
    assert result.output.startswith("1 values written, 2 were there already.")
    before = snapshot(folder)
    assert run(folder, SAME, ANKLE).output.startswith("0 values written, 2 were there already.")
    assert snapshot(folder) == before


@pytest.mark.parametrize(
    ("row", "says"),
    [
        (ANKLE.replace("ankle_pump", "ankle_pomp"), "did you mean 'ankle-pump'?"),
        (SEATED.replace("/seated", "/seeted"), "did you mean 'seated'?"),
        (ANKLE.replace("inner_calf", "inner_half"), "did you mean 'inner-calf'?"),
        (ANKLE.replace("invented2001", "somebody1999"), "there is no study 'somebody1999'"),
        (ANKLE.replace("12.5", "twelve"), "'twelve' is not a number"),
        (ANKLE.replace("12.5", "1250"), "1250 is not between 0 and 300"),
        (ANKLE.replace("12.5", ""), "does not state 'mean'"),
        (ANKLE.replace("checked", "seen"), "mean_status is 'seen', wanted is checked or memory"),
        (ANKLE + ",more", "more or fewer cells"),
        (ANKLE.removesuffix(","), "more or fewer cells"),
    ],
)
def test_one_row_that_fits_nowhere_stops_all(tmp_path: Path, row: str, says: str) -> None:
    """Nothing is written; the row is named by its line, with what is wrong and the nearest name."""
    folder = write_content(tmp_path / "content")
    before = snapshot(folder)
    result = run(folder, STANDING, row)
    assert result.return_value == PROBLEMS
    assert "table.csv:3:1: " in result.output
    assert says in result.output
    assert snapshot(folder) == before


def test_every_bad_row_is_reported_in_one_run(tmp_path: Path) -> None:
    """All rows that fit nowhere are named, not only the first."""
    folder = write_content(tmp_path / "content")
    output = run(folder, ANKLE.replace("pump", "x"), STANDING, SAME.replace("calf", "y")).output
    assert "table.csv:2:1: row-fits-nowhere" in output
    assert "table.csv:4:1: row-fits-nowhere" in output


def test_what_must_be_there_first_is_said(tmp_path: Path) -> None:
    """A study that nobody described, and a load that nobody stated, are told with what to do about them."""
    folder = write_content(tmp_path / "content")
    row = ANKLE.replace("invented2001", "author-2020")
    output = run(folder, row, load="").output
    assert "there is no study 'author-2020'; describe it in studies.yml first" in output
    assert "does not state 'load'; fill the column load, or say it once" in output


def test_a_median_is_never_taken_for_a_mean(tmp_path: Path) -> None:
    """A row that speaks of a median is refused until the table says what the value is."""
    folder = write_content(tmp_path / "content")
    row = ANKLE + "MEDIAN not mean"
    result = run(folder, row)
    assert result.return_value == PROBLEMS
    assert "no column 'statistic'" in result.output
    assert run(folder, f"{row},median", header=f"{HEADER},statistic").return_value == DONE
    assert values(folder, "ankle-pump")[0].statistic is Statistic.MEDIAN


def test_a_condition_of_load_is_never_guessed(tmp_path: Path) -> None:
    """Without a condition of load in the table or the command no value is written."""
    folder = write_content(tmp_path / "content")
    result = run(folder, ANKLE, load="")
    assert result.return_value == PROBLEMS
    assert "does not state 'load'" in result.output
    told = run(folder, ANKLE + ",lying down", header=HEADER + ",load", load="")
    assert told.return_value == DONE
    assert values(folder, "ankle-pump")[0].load == "lying down"


@pytest.mark.parametrize(
    ("header", "says"),
    [
        (HEADER.replace("study_key", "study"), "missing: study_key; not known: study"),
        ("", "missing: exercise"),
    ],
)
def test_a_table_with_other_columns_is_refused(tmp_path: Path, header: str, says: str) -> None:
    """The columns that are missing or not known are named."""
    result = run(write_content(tmp_path / "content"), ANKLE, header=header)
    assert result.return_value == PROBLEMS
    assert says in result.output


def test_a_table_that_cannot_be_read_is_said_plainly(tmp_path: Path) -> None:
    """A missing file, another encoding and a broken quotation mark are findings, not crashes."""
    folder = write_content(tmp_path / "content")
    options = ["--content", str(folder), "--load", "x"]
    bad = tmp_path / "bad.csv"
    for data, says in (
        (None, "cannot be opened"),
        (HEADER.encode() + b"\n\xff", "not in UTF-8"),
        (f'{HEADER}\n"a"b,'.encode(), "cannot be read as CSV"),
    ):
        if data is not None:
            bad.write_bytes(data)
        result = CliRunner().invoke(import_, ["measurements", str(bad), *options], standalone_mode=False)
        assert result.return_value == PROBLEMS
        assert says in result.output


def test_a_bomb_of_a_table_is_stopped_by_counting(tmp_path: Path) -> None:
    """Too many bytes, too many lines and a cell without end are refused, and nothing is written."""
    folder = write_content(tmp_path / "content")
    before = snapshot(folder)
    cell = '"' + "a" * 200_000 + '"'
    for rows, says in (
        (["x" * measurements.MOST_BYTES], "more than 5 MB"),
        ([ANKLE] * (measurements.MOST_ROWS + 1), "more than 20,000 lines"),
        ([ANKLE.replace("Table 2", cell)], "field larger than field limit"),
    ):
        result = run(folder, *rows)
        assert result.return_value == PROBLEMS
        assert says in result.output
    assert snapshot(folder) == before
