"""Mistakes in whole files and folders: each file is named, and the rest is still read."""

from __future__ import annotations

import os
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest

from generator.reading import read_content, read_files
from tests.content import FILES, write_content

PUMP = "exercises/ankle-pump.yml"
PUMP_TEXT = FILES[PUMP]


@dataclass(frozen=True)
class Spoilt:
    """One file as bytes: what must be found, and where."""

    rule: str
    path: str
    data: bytes
    code: str
    place: str
    says: tuple[str, ...] = ()


SPOILT = (
    Spoilt(
        "a file in Latin-1 is refused at its first letter that is not UTF-8",
        PUMP,
        PUMP_TEXT.replace("Ankle pump", "Übung für den Knöchel").encode("latin-1"),
        "not-utf8",
        f"{PUMP}:1:7",
        ("not UTF-8", "save it again"),
    ),
    Spoilt(
        "columns count letters, not bytes, before the letter that cannot be read",
        PUMP,
        "name: Übung für den Kn".encode() + "öchel".encode("latin-1"),
        "not-utf8",
        f"{PUMP}:1:23",
    ),
    Spoilt(
        "a file in UTF-16 with its mark is refused at the start",
        PUMP,
        b"\xff\xfe" + PUMP_TEXT.encode("utf-16-le"),
        "not-utf8",
        f"{PUMP}:1:1",
    ),
    Spoilt(
        "a file of more than a megabyte is not read at all",
        PUMP,
        b"# " + b"x" * 10_000_000,
        "file-too-large",
        PUMP,
        ("1 MB", "split"),
    ),
    Spoilt(
        "an empty file is named",
        PUMP,
        b"",
        "empty-text",
        PUMP,
        ("the file is empty", "delete the file"),
    ),
    Spoilt(
        "a file of comments alone is empty",
        PUMP,
        b"# to be written\n",
        "empty-text",
        PUMP,
    ),
    Spoilt(
        "one text in place of the keys says which keys are wanted",
        PUMP,
        b"Ankle pump\n",
        "wrong-kind",
        f"{PUMP}:1:1",
        ("'Ankle pump'", "the keys of an exercise", "name, purpose"),
    ),
    Spoilt(
        "a list in place of ids accuses nobody who refers to it",
        "equipment.yml",
        b"- worktop\n",
        "wrong-kind",
        "equipment.yml:1:1",
        ("a list", "write an id and a colon"),
    ),
    Spoilt(
        "another ending than .yml would be left out in silence",
        "exercises/heel-drop.yaml",
        PUMP_TEXT.encode(),
        "unexpected-file",
        "exercises/heel-drop.yaml",
        ("ends in .yml",),
    ),
    Spoilt(
        "a stray file is named",
        "notes.txt",
        b"remember the milk",
        "unexpected-file",
        "notes.txt",
    ),
    Spoilt(
        "a file name with capitals cannot stand in an address",
        "exercises/Heel Drop.yml",
        PUMP_TEXT.encode(),
        "bad-id",
        "exercises/Heel Drop.yml",
        ("'Heel Drop'",),
    ),
    Spoilt(
        "brackets nested deeper than any content are refused",
        PUMP,
        b"name: " + b"[" * 500 + b"]" * 500,
        "too-much",
        f"{PUMP}:1:31",
        ("deeply nested",),
    ),
    Spoilt(
        "a hundred thousand items are refused",
        PUMP,
        b"- a\n" * 100_000,
        "too-much",
        f"{PUMP}:50000:3",
        ("too many",),
    ),
)


def _remove(folder: Path) -> None:
    (folder / "studies.yml").unlink()


def _folder_in_place(folder: Path) -> None:
    (folder / PUMP).unlink()
    (folder / PUMP).mkdir()


def _folder_in_place_of_studies(folder: Path) -> None:
    (folder / "studies.yml").unlink()
    (folder / "studies.yml").mkdir()


def _broken_link(folder: Path) -> None:
    (folder / PUMP).unlink()
    (folder / PUMP).symlink_to("nowhere")


def _pipe(folder: Path) -> None:
    (folder / PUMP).unlink()
    os.mkfifo(folder / PUMP)


def _no_exercises(folder: Path) -> None:
    for path in (folder / "exercises").iterdir():
        path.unlink()


@dataclass(frozen=True)
class Disturbed:
    """A folder that something happened to: what must be found, and where."""

    rule: str
    disturb: Callable[[Path], None]
    code: str
    place: str
    says: str


DISTURBED = (
    Disturbed("a missing file is named", _remove, "missing-file", "studies.yml", "this file is missing"),
    Disturbed("a folder in place of a file", _folder_in_place, "unreadable-file", PUMP, "it is a folder"),
    Disturbed(
        "a folder in place of a shared file is not missing as well",
        _folder_in_place_of_studies,
        "unreadable-file",
        "studies.yml",
        "it is a folder",
    ),
    Disturbed("a broken link", _broken_link, "unreadable-file", PUMP, "cannot be opened"),
    Disturbed("a pipe is not waited for", _pipe, "unreadable-file", PUMP, "no ordinary file"),
)


@pytest.mark.parametrize("spoilt", SPOILT, ids=lambda spoilt: spoilt.rule)
def test_spoilt_file(spoilt: Spoilt) -> None:
    """A file that cannot be read is named once, with the place, and nothing else is accused."""
    files = {path: text.encode() for path, text in FILES.items()}
    reading = read_files({**files, spoilt.path: spoilt.data})
    assert [f"{found.code} {found.place}" for found in reading.problems] == [f"{spoilt.code} {spoilt.place}"]
    said = f"{reading.problems[0].message}\n{reading.problems[0].remedy}"
    for words in spoilt.says:
        assert words in said


@pytest.mark.parametrize("disturbed", DISTURBED, ids=lambda disturbed: disturbed.rule)
def test_disturbed_folder(disturbed: Disturbed, tmp_path: Path) -> None:
    """What cannot be opened is named under the folder's name, and what refers to it is not accused."""
    folder = write_content(tmp_path / "content")
    disturbed.disturb(folder)
    (problem,) = read_content(folder).problems
    assert f"{problem.code} {problem.place}" == f"{disturbed.code} {folder}/{disturbed.place}"
    assert disturbed.says in problem.message
    assert problem.remedy


def test_file_that_the_system_refuses(tmp_path: Path) -> None:
    """A file that cannot be opened is named with the system's reason; a link to itself stops even root."""
    folder = write_content(tmp_path / "content")
    (folder / PUMP).unlink()
    (folder / PUMP).symlink_to(PUMP.rpartition("/")[2])
    (problem,) = read_content(folder).problems
    assert (problem.code, problem.place.path) == ("unreadable-file", f"{folder}/{PUMP}")
    assert "Too many levels of symbolic links" in problem.message


def test_no_exercises(tmp_path: Path) -> None:
    """A folder without any exercise is named, besides the uses that ask for one."""
    folder = write_content(tmp_path / "content")
    _no_exercises(folder)
    found = [f"{problem.code} {problem.place}" for problem in read_content(folder).problems]
    assert f"missing-file {folder}/exercises/" in found


def test_no_folder(tmp_path: Path) -> None:
    """A content folder that does not exist is one finding, not ten missing files."""
    (problem,) = read_content(tmp_path / "nowhere").problems
    assert (problem.code, str(problem.place)) == ("missing-file", str(tmp_path / "nowhere"))


def test_name_in_another_encoding(tmp_path: Path) -> None:
    """A file name in Latin-1 can still be printed in the finding."""
    folder = write_content(tmp_path / "content")
    Path(os.fsdecode(os.fsencode(folder / "exercises") + b"/r\xfccken.yml")).write_text("name: x")
    (problem,) = read_content(folder).problems
    assert problem.code == "bad-id"
    assert str(problem.place).encode("utf-8").endswith(b"r\\udcfccken.yml")


def test_hidden_files_are_left_alone(tmp_path: Path) -> None:
    """Files that begin with a dot belong to editors' programs and are not content."""
    folder = write_content(tmp_path / "content")
    (folder / ".swap").write_bytes(b"\0")
    (folder / "exercises" / ".ankle-pump.yml.swp").write_bytes(b"\0")
    assert read_content(folder).problems == ()


def test_editions_and_translations_are_read_elsewhere() -> None:
    """Editions and translations belong to the content though this room does not read them."""
    files = {path: text.encode() for path, text in FILES.items()}
    others = {"editions.yml": b"[", "translations/de.po": b"\xff"}
    assert read_files({**files, **others}).problems == ()


def test_line_ends_and_byte_order_mark() -> None:
    """Windows line ends and a byte order mark change neither values nor places."""
    files = {path: text.encode() for path, text in FILES.items()}
    windows = {path: b"\xef\xbb\xbf" + text.replace("\n", "\r\n").encode() for path, text in FILES.items()}
    expected, actual = read_files(files), read_files(windows)
    assert actual.problems == ()
    assert actual.catalogue == expected.catalogue
    assert expected.catalogue is not None
    assert actual.catalogue is not None
    pump = "ankle-pump"
    assert actual.catalogue.exercises[pump].places == expected.catalogue.exercises[pump].places


def test_file_of_one_mistake_is_cut_short() -> None:
    """Of a file full of NUL bytes or tabs the first twenty are named; the rest costs nothing."""
    files = {path: text.encode() for path, text in FILES.items()}
    for data, code in ((b"\0" * 900_000, "control-character"), (b"\tx\n" * 300_000, "tab-indentation")):
        assert [found.code for found in read_files({**files, PUMP: data}).problems] == [code] * 20


def test_messages_stay_short() -> None:
    """A value of a megabyte is shown by its beginning, on one line."""
    files = {path: text.encode() for path, text in FILES.items()}
    key = b"? |\n" + b"  line\n" * 20_000 + b": x\n"
    for data in (b"role: " + b"x" * 900_000, key, b"'" + b"y" * 900_000 + b"': x"):
        for found in read_files({**files, PUMP: data}).problems:
            assert len(found.message) < 300
            assert "\n" not in found.message


@pytest.mark.parametrize("name", [PUMP, "glossary.yml", "daily-life"])
def test_a_link_never_leads_out_of_the_content(tmp_path: Path, name: str) -> None:
    """Otherwise a message could show lines of any file of the machine; the file itself is not opened."""
    outside = tmp_path / "secret"
    outside.write_text("root:x:0:0: a secret\n", encoding="utf-8")
    folder = write_content(tmp_path / "content")
    (folder / name).unlink(missing_ok=True)
    (folder / name).symlink_to(outside if "." in name else tmp_path)
    reading = read_content(folder)
    found = [problem for problem in reading.problems if problem.code == "unreadable-file"]
    assert [problem.place.path for problem in found] == [f"{folder}/{name}"]
    assert "leads out of the content folder" in found[0].message
    assert "secret" not in "".join(line for lines in reading.sources.values() for line in lines)


def test_a_content_folder_may_itself_be_a_link(tmp_path: Path) -> None:
    """A clinic that keeps its content on another disk names it by a link."""
    write_content(tmp_path / "real")
    (tmp_path / "content").symlink_to(tmp_path / "real")
    assert read_content(tmp_path / "content").problems == ()
