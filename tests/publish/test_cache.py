"""The folder of kept work is made, marked and used again; any other folder is refused with its reason."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from generator.publish import Refused, claim
from generator.publish.cache import FORMAT, MARKER


def refusal(folder: Path) -> tuple[str, str, str]:
    """Return code, message and remedy of a refusal, in which nothing changes."""
    before = {path: path.read_bytes() for path in folder.parent.rglob("*") if path.is_file()}
    with pytest.raises(Refused) as refused:
        claim(folder)
    assert {path: path.read_bytes() for path in folder.parent.rglob("*") if path.is_file()} == before
    problem = refused.value.problem
    assert problem.place.path == str(folder)
    return problem.code, problem.message, problem.remedy


@pytest.mark.parametrize("there", ["nothing", "an empty folder", "half a marker"])
def test_a_new_folder_becomes_ours(tmp_path: Path, there: str) -> None:
    """Also where a build was killed while it marked it; from then on it is ours with all that it holds."""
    cache = tmp_path / "work" / "cache"
    if there != "nothing":
        cache.mkdir(parents=True)
    if there == "half a marker":
        (cache / "abc.part").write_text("{", encoding="utf-8")
    assert claim(cache) == cache
    assert json.loads((cache / MARKER).read_text(encoding="utf-8")) == {"format": FORMAT}
    (cache / "shelf").mkdir()
    assert claim(cache) == cache


@pytest.mark.parametrize(
    ("marker", "says"),
    [
        ('{"format": 2}\n', "format 2, this one keeps format 1"),
        ('{"format": 1, "more": 0}\n', "format 1, this one keeps format 1"),
        ("[]\n", "no format that can be read, this one keeps format 1"),
        ("", "no format that can be read"),
    ],
)
def test_a_cache_of_another_version_is_refused(tmp_path: Path, marker: str, says: str) -> None:
    """It is not guessed at: the reason stands there, and the command that deletes it."""
    cache = tmp_path / "kept work"
    cache.mkdir()
    (cache / MARKER).write_text(marker, encoding="utf-8")
    code, message, remedy = refusal(cache)
    assert code == "cache-other-version"
    assert says in message
    assert f"rm -r '{cache}'" in remedy


def test_a_folder_of_somebody_else_is_refused(tmp_path: Path) -> None:
    """The program removes from its cache what it no longer needs; a letter there would be lost."""
    cache = tmp_path / "cache"
    cache.mkdir()
    (cache / "letter.json").write_text("mine", encoding="utf-8")
    code, message, remedy = refusal(cache)
    assert code == "cache-not-ours"
    assert "'letter.json'" in message
    assert "move what is in it" in remedy


@pytest.mark.parametrize("where", ["cache", "cache/inner"])
def test_a_file_in_its_place_is_refused(tmp_path: Path, where: str) -> None:
    """A file is no folder, neither itself nor as a folder above."""
    (tmp_path / "cache").write_text("mine", encoding="utf-8")
    code, message, _ = refusal(tmp_path / where)
    assert code == "cache-not-ours"
    assert "is a file" in message
