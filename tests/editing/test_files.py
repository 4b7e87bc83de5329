"""A content file is written whole or not at all, and only while it is as it was read."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from generator.editing import (
    Draft,
    append_entry,
    create_file,
    hash_of,
    insert_item,
    replace_files,
    replace_scalar,
)
from generator.problems import Place
from generator.reading import read_content
from tests.content import write_content

RAISE = "exercises/heel-raise.yml"
AT_NAME = Place(RAISE, 1, 7)


def snapshot(folder: Path) -> dict[str, bytes]:
    """Return every file of a folder with its bytes, hidden ones too."""
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def hash_at(path: Path) -> str:
    """Return the hash of a file as it is now."""
    return hash_of(path.read_bytes())


def test_a_change_is_read_back_by_the_reader(tmp_path: Path) -> None:
    """The catalogue says what was written, a text, an item, a key, and no other file has changed."""
    path = write_content(tmp_path) / RAISE
    before = snapshot(tmp_path)
    catalogue = read_content(tmp_path).catalogue
    assert catalogue is not None
    exercise = catalogue.exercises["heel-raise"]
    assert replace_scalar(path, exercise.name.place, "Heel raise: two legs", hash_at(path)) == ()
    assert insert_item(path, exercise.at("steps"), "Rest.", hash_at(path)) == ()
    assert append_entry(path, exercise.place, "limits", ["No higher than this."], hash_at(path)) == ()
    reading = read_content(tmp_path)
    assert reading.problems == ()
    assert reading.catalogue is not None
    changed = reading.catalogue.exercises["heel-raise"]
    assert changed.name.source == "Heel raise: two legs"
    assert [step.source for step in changed.steps][-1] == "Rest."
    assert [limit.source for limit in changed.limits] == ["No higher than this."]
    assert {name for name, data in snapshot(tmp_path).items() if before.get(name) != data} == {RAISE}


def test_a_file_that_was_changed_meanwhile_is_left_alone(tmp_path: Path) -> None:
    """Who saved first wins: the second writer is told so and nothing is lost."""
    path = write_content(tmp_path) / RAISE
    read_at = hash_at(path)
    path.write_text(path.read_text(encoding="utf-8") + "# saved by somebody else\n", encoding="utf-8")
    before = snapshot(tmp_path)
    (problem,) = replace_scalar(path, AT_NAME, "Mine", read_at)
    assert problem.code == "content-changed-meanwhile"
    assert snapshot(tmp_path) == before


def test_marks_and_line_ends_of_the_file_stay(tmp_path: Path) -> None:
    """A file with a byte order mark and Windows line ends keeps both."""
    path = tmp_path / "sample.yml"
    path.write_bytes(b"\xef\xbb\xbfname: One # \xc3\xa9\r\nlist:\r\n  - a\r\n")
    assert replace_scalar(path, Place("sample.yml", 1, 7), "Zwei", hash_at(path)) == ()
    assert insert_item(path, Place("sample.yml", 3, 3), "b", hash_at(path)) == ()
    assert path.read_bytes() == b"\xef\xbb\xbfname: Zwei # \xc3\xa9\r\nlist:\r\n  - a\r\n  - b\r\n"


def test_permissions_and_links_stay(tmp_path: Path) -> None:
    """A file keeps who may read it, and a link keeps leading to the file that is changed."""
    real, link = tmp_path / "real.yml", tmp_path / "link.yml"
    real.write_text("name: One\n", encoding="utf-8")
    real.chmod(0o640)
    link.symlink_to(real)
    assert replace_scalar(link, Place("link.yml", 1, 7), "Two", hash_at(real)) == ()
    assert link.is_symlink()
    assert real.read_text(encoding="utf-8") == "name: Two\n"
    assert real.stat().st_mode & 0o777 == 0o640


def test_of_several_files_all_or_none_are_replaced(tmp_path: Path) -> None:
    """When one of two files has changed the other is not written either, and no draft is left lying."""
    one, two = tmp_path / "one.yml", tmp_path / "two.yml"
    for path in (one, two):
        path.write_text("name: Old\n", encoding="utf-8")
    drafts = {one: Draft("name: New\n", hash_at(one)), two: Draft("name: New\n", hash_of(b"other"))}
    (problem,) = replace_files(drafts)
    assert (problem.code, problem.place.path) == ("content-changed-meanwhile", str(two))
    assert snapshot(tmp_path) == {"one.yml": b"name: Old\n", "two.yml": b"name: Old\n"}
    assert replace_files({one: drafts[one], two: Draft("name: New\n", hash_at(two))}) == ()
    assert snapshot(tmp_path) == {"one.yml": b"name: New\n", "two.yml": b"name: New\n"}


def test_a_stop_in_the_middle_leaves_the_old_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """When the disk fails before the new text is safe, the old file is whole and the draft is gone."""
    path = tmp_path / "one.yml"
    path.write_text("name: Old\n", encoding="utf-8")

    def full(_: int) -> None:
        raise OSError(28, "No space left on device", "one.yml")

    monkeypatch.setattr(os, "fsync", full)
    (problem,) = replace_scalar(path, Place("one.yml", 1, 7), "New", hash_at(path))
    assert problem.code == "cannot-write"
    assert "No space left" in problem.message
    assert snapshot(tmp_path) == {"one.yml": b"name: Old\n"}


def test_a_file_that_is_gone_is_said_plainly(tmp_path: Path) -> None:
    """A file that was moved away is a finding, not a crash."""
    (problem,) = replace_scalar(tmp_path / "gone.yml", AT_NAME, "New", "")
    assert problem.code == "cannot-write"


def test_a_new_file_never_replaces_one(tmp_path: Path) -> None:
    """Creating a file where one is refuses; folders on the way are made."""
    path = tmp_path / "exercises" / "new.yml"
    assert create_file(path, "name: One\n") == ()
    (problem,) = create_file(path, "name: Two\n")
    assert problem.code == "file-exists"
    assert snapshot(tmp_path) == {"exercises/new.yml": b"name: One\n"}
