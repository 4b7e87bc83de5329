"""The command that draws pictures writes them beside a contact sheet, and says what has none."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from generator.cli.figures import figures
from tests.content import FILES, with_change, write_content
from tests.steps.test_figures import FIGURE, POSES, PUMP

DRAWN = with_change(FILES, PUMP, "name: Ankle pump\n", "name: Ankle pump\n" + POSES + FIGURE)
DRAWN = with_change(DRAWN, PUMP, ", to: 20 deg", "")


def run(folder: Path, files: dict[str, str], *words: str) -> Result:
    """Return what the command says; its value is its exit code."""
    content = write_content(folder / "content", files)
    options = ["--content", str(content), "--output", str(folder / "out"), "--workers", "1"]
    return CliRunner().invoke(figures, [*words, *options], standalone_mode=False)


def test_pictures_and_a_contact_sheet_are_written(tmp_path: Path) -> None:
    """SVG and PNG of each item, every pose alone, and a sheet that names what has no picture yet."""
    done = run(tmp_path, DRAWN)
    assert done.return_value == 0, done.output
    names = {path.name for path in (tmp_path / "out").iterdir()}
    assert names == {
        "ankle-pump.svg",
        "ankle-pump.png",
        "ankle-pump.1.svg",
        "ankle-pump.2.svg",
        "contact-sheet.html",
        "contact-sheet-1.png",
    }
    sheet = (tmp_path / "out" / "contact-sheet.html").read_text(encoding="utf-8")
    assert sheet.count("no picture yet") == 2
    assert "Point your toes away from you." in sheet
    assert "Stay up for 3 seconds." in sheet
    assert "1 drawn, 2 without a picture yet" in done.output


def test_one_side_and_the_movement_on_request(tmp_path: Path) -> None:
    """The left side is the mirror image; a movement is made where it is asked for."""
    assert run(tmp_path, DRAWN, "ankle-pump", "--side", "left", "--moving").return_value == 0
    assert "matrix(-1 0 0 1" in (tmp_path / "out" / "ankle-pump.svg").read_text(encoding="utf-8")
    assert "<animate" in (tmp_path / "out" / "ankle-pump.moving.svg").read_text(encoding="utf-8")


def test_a_misspelt_name_draws_nothing(tmp_path: Path) -> None:
    """What is not there cannot be drawn; the nearest name is offered, nothing is written."""
    done = run(tmp_path, DRAWN, "ankle-pumb")
    assert done.return_value == 2
    assert "did you mean 'ankle-pump'?" in done.stderr
    assert not (tmp_path / "out").exists()


def test_what_has_an_error_is_not_told_as_missing(tmp_path: Path) -> None:
    """A file that is there and cannot be read is not answered with the name of another."""
    spoilt = with_change(DRAWN, "exercises/ankle-pump.yml", "role: circulation", "role: circle")
    done = run(tmp_path, spoilt, "ankle-pump")
    assert done.return_value == 2
    assert "'ankle-pump' cannot be read" in done.stderr
    assert "did you mean" not in done.stderr


@pytest.mark.parametrize("wrong", ["{plantarflexion: 200}", "{plantarflexion: 0.35}"])
def test_poses_that_are_wrong_are_told(tmp_path: Path, wrong: str) -> None:
    """What cannot be drawn is said with its place, and the exit code says so too."""
    done = run(tmp_path, {**DRAWN, PUMP: DRAWN[PUMP].replace("{plantarflexion: 20}", wrong)})
    assert done.return_value == 1
    assert "pose-" in done.output
    assert "0 drawn" in done.output
