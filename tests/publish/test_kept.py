"""A page opened before a new edition still finds its style, script and pictures, for one build."""

from __future__ import annotations

import errno
import json
import os
from pathlib import Path

import pytest

from generator.publish import Refused, open_stage, verify
from generator.publish.manifest import Manifest, from_text, read
from tests.publish.test_staging import publish as publish_pages

STYLE = "assets/css/phasebook.{}.css"


def publish(output: Path, words: str) -> None:
    """Publish a page with a style whose name says its content, as the build's assets do."""
    with open_stage(output, output.parent / "content") as stage:
        (stage.root / "index.html").write_text(words)
        style = stage.root / STYLE.format(words)
        style.parent.mkdir(parents=True)
        style.write_text(words)
        stage.publish()


def styles(output: Path) -> list[str]:
    """Return the words of the styles that are there."""
    return sorted(file.read_text() for file in output.glob("assets/css/*.css"))


def test_assets_of_the_edition_before_stay_for_one_build(tmp_path: Path) -> None:
    """After the second edition both styles are there; after the third those of the first are gone."""
    output = tmp_path / "site"
    for words, expected in (("one", ["one"]), ("two", ["one", "two"]), ("three", ["three", "two"])):
        publish(output, words)
        assert styles(output) == expected
        assert (output / "index.html").read_text() == words
        assert verify(output) == ()


def test_a_build_without_changes_keeps_nothing_twice(tmp_path: Path) -> None:
    """What was kept once is gone after the next build, and the site is that of a first build."""
    output, other = tmp_path / "site", tmp_path / "other"
    for words in ("one", "two", "two"):
        publish(output, words)
    publish(other, "two")
    assert styles(output) == ["two"]
    assert (output / "manifest.json").read_bytes() == (other / "manifest.json").read_bytes()


def test_only_assets_are_kept(tmp_path: Path) -> None:
    """A page that left the catalogue is gone at once: nobody may go on reading it."""
    output = tmp_path / "site"
    publish_pages(output, "one")
    publish(output, "two")
    assert not (output / "en").exists()


@pytest.mark.parametrize("damage", ["changed", "link", "gone"])
def test_an_asset_that_is_not_as_it_was_built_is_left_behind(tmp_path: Path, damage: str) -> None:
    """Something edited on the server, or a link to elsewhere, is not carried into the new edition."""
    output = tmp_path / "site"
    publish(output, "one")
    style = output / STYLE.format("one")
    secret = tmp_path / "secret"
    secret.write_text("one")
    style.unlink()
    if damage == "changed":
        style.write_text("other")
    elif damage == "link":
        style.symlink_to(secret)
    publish(output, "two")
    assert styles(output) == ["two"]
    assert verify(output) == ()


def test_a_list_that_keeps_what_it_does_not_list_is_not_trusted(tmp_path: Path) -> None:
    """What is kept is among the files; anything else was written by hand."""
    publish(tmp_path / "site", "one")
    publish(tmp_path / "site", "two")
    found = read(tmp_path / "site")
    assert isinstance(found, Manifest)
    assert found.kept == (STYLE.format("one"),)
    text = json.dumps({"format": 1, "files": {}, "kept": ["../secret"]})
    assert not isinstance(from_text(text), Manifest)


@pytest.mark.parametrize("code", [errno.ENOSPC, errno.EROFS, errno.EDQUOT])
def test_a_disk_that_fills_up_while_pages_are_written_is_a_refusal(tmp_path: Path, code: int) -> None:
    """Wherever the build is, the system's reason reaches the user in words, and the old site stays."""
    output = tmp_path / "site"
    publish(output, "one")
    with pytest.raises(Refused) as refused, open_stage(output, tmp_path / "content"):
        raise OSError(code, os.strerror(code))
    assert refused.value.problem.code == "output-not-writable"
    assert os.strerror(code) in refused.value.problem.message
    assert verify(output) == ()
    assert [entry.name for entry in tmp_path.iterdir()] == ["site"]


def test_a_fault_of_the_program_is_never_called_a_full_disk(tmp_path: Path) -> None:
    """An error that is no matter of the disk is raised as it is; the old site stays."""
    with pytest.raises(FileNotFoundError), open_stage(tmp_path / "site", tmp_path / "content"):
        (tmp_path / "nowhere").read_text()


def test_no_rights_to_write_are_a_refusal(tmp_path: Path) -> None:
    """A user who may not write beside the site is told so (as root, a child gives up its rights)."""
    output = tmp_path / "site"
    publish(output, "one")
    # Whoever may not even enter the folder could be told something else: pytest's folders are private.
    for folder in tmp_path.parents:
        if folder.stat().st_mode & 0o005:
            break
        folder.chmod(0o755)
    tmp_path.chmod(0o555)
    child = os.fork()
    if child == 0:
        code = 1
        try:
            if os.getuid() == 0:
                os.setgid(65534)
                os.setuid(65534)
            with open_stage(output, tmp_path / "content"):
                pass
        except Refused as refused:
            code = 0 if refused.problem.code == "output-not-writable" else 2
        finally:
            os._exit(code)
    _, status = os.waitpid(child, 0)
    tmp_path.chmod(0o755)
    assert os.waitstatus_to_exitcode(status) == 0
    assert verify(output) == ()
