"""``proof`` shows freshly printed sheets, and says what there is to look at when nothing fits."""

from __future__ import annotations

from pathlib import Path

import click
import pytest
from click.testing import CliRunner, Result

from generator.cli.proof import proof
from generator.cli.shared import DONE, NOT_STARTED, PROBLEMS
from tests.content import FILES, with_change, write_content


def run(folder: Path, *options: str) -> Result:
    """Return what the command prints and its exit code; the pictures go beside the content."""
    content = folder / "content"
    arguments = [*options, "--content", str(content), "--output", str(folder / "proof"), "--workers", "1"]
    return CliRunner().invoke(proof, arguments, catch_exceptions=False, standalone_mode=False)


@pytest.mark.parametrize(
    ("options", "says"),
    [
        (("tendon-repai",), "did you mean 'tendon-repair'?"),
        (("--language", "eng"), "did you mean 'en'?"),
        (("--phase", "7"), "No booklet is of this phase and kind"),
    ],
)
def test_nothing_to_look_at(tmp_path: Path, options: tuple[str, ...], says: str) -> None:
    """The command says what there is, and writes no picture."""
    write_content(tmp_path / "content")
    result = run(tmp_path, *options)
    assert result.return_value == NOT_STARTED
    assert says in result.output
    assert not (tmp_path / "proof").exists()


def test_an_unknown_kind(tmp_path: Path) -> None:
    """The command names the kinds there are, the file to fold among them."""
    write_content(tmp_path / "content")
    with pytest.raises(click.UsageError) as raised:
        run(tmp_path, "--kind", "huge")
    assert raised.value.exit_code == NOT_STARTED
    assert "'pocket-fold'" in raised.value.format_message()


def test_content_with_errors_is_not_printed(tmp_path: Path) -> None:
    """What is wrong is said first."""
    files = with_change(FILES, "programmes/tendon-repair.yml", "dose-steps: [2 x 8,", "dose-steps: [9 x 8,")
    write_content(tmp_path / "content", files)
    result = run(tmp_path)
    assert result.return_value == PROBLEMS
    assert "dose-not-permitted" in result.output


@pytest.mark.slow
def test_each_booklet_has_rows_of_its_own(tmp_path: Path) -> None:
    """Rows of four are named after the first page in them; rows of an earlier run are gone."""
    write_content(tmp_path / "content")
    rows = tmp_path / "proof" / "en" / "booklets" / "tendon-repair-phase-1"
    rows.mkdir(parents=True)
    (rows / "pages-97.png").write_bytes(b"old")
    result = run(tmp_path, "--phase", "1")
    assert result.return_value == DONE, result.output
    names = sorted(path.name for path in rows.iterdir())
    assert names[:2] == ["pages-01.png", "pages-05.png"]
    assert "pages-97.png" not in names
    pictures = list((tmp_path / "proof").rglob("*.png"))
    assert f"{len(pictures)} pictures; look at" in result.output
    kinds = {
        "tendon-repair-phase-1",
        *(f"tendon-repair-phase-1-{kind}" for kind in ("large", "pocket", "pocket-fold", "sheet")),
    }
    assert {path.name for path in rows.parent.iterdir()} == kinds
