"""What is kept between builds is taken whole or not at all, and only for the very same work."""

from __future__ import annotations

import errno
import json
import os
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.shelf import Shelf

JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.text(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(), inner, max_size=3),
    max_leaves=6,
)


@pytest.fixture
def shelf(tmp_path: Path) -> Shelf:
    """Return an empty shelf whose folder is not there yet."""
    return Shelf(tmp_path / "shelf", "program one")


def test_what_was_put_is_taken_and_nothing_else(shelf: Shelf) -> None:
    """The same bytes come back under their name; another name has nothing."""
    name = shelf.name("a", 1)
    assert shelf.take(name) is None
    shelf.put(name, b"work\0of\nbytes")
    assert shelf.take(name) == b"work\0of\nbytes"
    assert shelf.take(shelf.name("a", 2)) is None


def test_nothing_is_taken_when_all_is_made_anew(shelf: Shelf) -> None:
    """Asked for everything anew, a shelf gives nothing and still keeps what is put."""
    name = shelf.name("a")
    Shelf(shelf.folder, shelf.program, anew=True).put(name, b"work")
    assert Shelf(shelf.folder, shelf.program, anew=True).take(name) is None
    assert shelf.take(name) == b"work"


def test_another_program_finds_nothing(shelf: Shelf) -> None:
    """A shelf filled by another version is as good as empty: no work of it is ever used."""
    shelf.put(shelf.name("a"), b"work")
    other = Shelf(shelf.folder, "program two")
    assert other.take(other.name("a")) is None


@given(one=st.lists(JSON, max_size=3), two=st.lists(JSON, max_size=3))
def test_two_works_share_a_name_only_when_all_they_depend_on_is_the_same(
    one: list[object], two: list[object]
) -> None:
    """Property: names are equal exactly where the parts are equal, written as JSON."""
    shelf = Shelf(Path("never-made"), "program")
    assert (shelf.name(*one) == shelf.name(*two)) is (json.dumps(one) == json.dumps(two))


@pytest.mark.parametrize("harm", ["torn", "changed", "emptied", "a folder"])
def test_harmed_work_counts_as_not_there(shelf: Shelf, harm: str) -> None:
    """A file that was cut off, changed or emptied is not used; nothing stops."""
    name = shelf.name("a")
    shelf.put(name, b"a long piece of work")
    file = shelf.folder / name
    content = file.read_bytes()
    if harm == "a folder":
        file.unlink()
        file.mkdir()
    else:
        harmed = {"torn": content[:-3], "changed": content[:-1] + b"K", "emptied": b""}
        file.write_bytes(harmed[harm])
    assert shelf.take(name) is None


def test_a_full_disk_leaves_no_part_of_a_work(shelf: Shelf, monkeypatch: pytest.MonkeyPatch) -> None:
    """What could not be kept is told, and takes no room."""

    def full(_: Path, __: Path) -> Path:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(Path, "replace", full)
    with pytest.raises(OSError, match="No space left"):
        shelf.put(shelf.name("a"), b"work")
    assert list(shelf.folder.iterdir()) == []


def test_the_longest_unused_goes_first(shelf: Shelf) -> None:
    """Where room is short, what was used last stays: here the first, because it was taken again."""
    for day, part in enumerate("abc"):
        shelf.put(shelf.name(part), b"x" * 100)
        os.utime(shelf.folder / shelf.name(part), (day, day))
    shelf.take(shelf.name("a"))
    shelf.tidy(most=350)
    kept = [part for part in "abc" if (shelf.folder / shelf.name(part)).exists()]
    assert kept == ["a", "c"]
    Shelf(shelf.folder / "none", "").tidy()
