"""A served folder is compared with what was built, file by file."""

from __future__ import annotations

import json
from pathlib import Path

from click.testing import CliRunner, Result

from generator.cli.shared import DONE, NOT_STARTED, PROBLEMS
from generator.cli.verify import verify
from generator.publish.staging import open_stage


def run(*words: str) -> Result:
    """Return what the command prints and its exit code."""
    return CliRunner().invoke(verify, list(words), catch_exceptions=False, standalone_mode=False)


def published(tmp_path: Path) -> Path:
    """Return a site of three files, published the usual way."""
    site = tmp_path / "site"
    with open_stage(site, tmp_path / "content") as stage:
        for name in ("index.html", "a.pdf", "b.pdf"):
            (stage.root / name).write_text(name, encoding="utf-8")
        stage.publish()
    return site


def test_a_whole_site_has_no_differences(tmp_path: Path) -> None:
    """What was published is what was built."""
    result = run(str(published(tmp_path)))
    assert (result.return_value, result.output) == (DONE, "no problems\n")


def test_each_changed_missing_and_extra_file_is_named(tmp_path: Path) -> None:
    """A copy cut short, a file edited on the server, one put there: each by its name, exit code 1."""
    site = published(tmp_path)
    (site / "a.pdf").write_text("other", encoding="utf-8")
    (site / "b.pdf").unlink()
    (site / "note.txt").write_text("mine", encoding="utf-8")
    result = run(str(site), "--format", "json")
    assert result.return_value == PROBLEMS
    found = {(one["path"], one["code"]) for one in json.loads(result.output)["problems"]}
    assert found == {("a.pdf", "file-changed"), ("b.pdf", "file-missing"), ("note.txt", "file-extra")}


def test_a_list_that_climbs_out_is_never_followed(tmp_path: Path) -> None:
    """A manifest with a path outside the site is refused as a whole."""
    site = published(tmp_path)
    listing = site / "manifest.json"
    document = json.loads(listing.read_text(encoding="utf-8"))
    document["files"]["../secret"] = "0" * 64
    listing.write_text(json.dumps(document), encoding="utf-8")
    result = run(str(site))
    assert result.return_value == PROBLEMS
    assert "manifest-climbs-out" in result.output


def test_a_folder_that_is_not_there_is_said_plainly(tmp_path: Path) -> None:
    """Nothing was compared: exit code 2."""
    result = run(str(tmp_path / "nowhere"))
    assert result.return_value == NOT_STARTED
    assert "There is no folder" in result.output
