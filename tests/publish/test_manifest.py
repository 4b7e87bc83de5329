"""The manifest tells whether a site is still what was built."""

import hashlib
import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.problems import Problem
from generator.publish.manifest import Manifest, describe, from_text, stays_inside, to_text, verify

NAMES = st.text(
    st.characters(exclude_characters="/\\:", exclude_categories=["Cc", "Cs"]), min_size=1, max_size=12
)
PATHS = st.lists(NAMES.filter(lambda name: name not in (".", "..")), min_size=1, max_size=4).map("/".join)
CHECKSUMS = st.binary(max_size=4).map(lambda data: hashlib.sha256(data).hexdigest())


@given(st.dictionaries(PATHS, CHECKSUMS))
def test_what_is_written_is_read_back(files: dict[str, str]) -> None:
    """Any list of portable paths survives the way through the file."""
    assert from_text(to_text(Manifest(files))) == Manifest(files)


@given(st.dictionaries(PATHS, CHECKSUMS))
def test_the_text_depends_on_the_files_only(files: dict[str, str]) -> None:
    """Sorted keys, LF and no clock: the order in which files were found leaves no trace."""
    backwards = dict(reversed(files.items()))
    text = to_text(Manifest(files))
    assert to_text(Manifest(backwards)) == text
    assert "\r" not in text
    assert text.endswith("}\n")
    assert set(json.loads(text)) == {"format", "files"}


@given(PATHS, st.sampled_from(["..", ".", ""]), st.integers(0, 3))
def test_a_path_that_climbs_out_is_refused(path: str, step: str, position: int) -> None:
    """Wherever ``..``, ``.`` or an empty step stands, the path is not opened."""
    parts = path.split("/")
    parts.insert(min(position, len(parts)), step)
    climbing = "/".join(parts)
    assert not stays_inside(climbing)
    refused = from_text(json.dumps({"format": 1, "files": {climbing: "0" * 64}}))
    assert isinstance(refused, Problem)
    assert refused.code == "manifest-climbs-out"


@pytest.mark.parametrize("path", ["C:/windows", "a\\..\\b", "a\nb", "/etc/passwd", "a\x00"])
def test_paths_of_other_systems_are_refused(path: str) -> None:
    """Drive letters, backslashes and control characters are not portable."""
    assert not stays_inside(path)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "[]",
        "{}",
        '{"format": 2, "files": {}}',
        '{"format": true, "files": {}}',
        '{"format": 1}',
        '{"format": 1, "files": {"a": "abc"}}',
        f'{{"format": 1, "files": {{"a": "{"0" * 64}", "a": "{"1" * 64}"}}}}',
        "[" * 100_000,
    ],
)
def test_a_damaged_list_is_a_problem_and_no_crash(text: str) -> None:
    """Whatever stands in the file, the answer is a problem with place and remedy."""
    problem = from_text(text)
    assert isinstance(problem, Problem)
    assert (problem.code, problem.place.path) == ("manifest-unreadable", "manifest.json")


def test_the_checksum_is_sha256(tmp_path: Path) -> None:
    """The checksum of "abc" is the example of FIPS 180-4 (NIST, SHA-256 example 1; digits from memory)."""
    (tmp_path / "a.txt").write_bytes(b"abc")
    expected = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
    assert describe(tmp_path).files == {"a.txt": expected}


def test_a_published_site_is_verified(tmp_path: Path) -> None:
    """Changed, missing and extra files are named, each with its own code."""
    for name in ("a.html", "b.html", "c.html", "en/d.html", "e.html"):
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).write_text(name)
    (tmp_path / "manifest.json").write_text(to_text(describe(tmp_path)))
    assert verify(tmp_path) == ()
    (tmp_path / "a.html").write_text("x")
    (tmp_path / "b.html").unlink()
    (tmp_path / "en/new.html").write_text("x")
    (tmp_path / "e.html").unlink()
    (tmp_path / "e.html").symlink_to("c.html")
    assert [(problem.code, problem.place.path) for problem in verify(tmp_path)] == [
        ("file-changed", "a.html"),
        ("file-missing", "b.html"),
        ("file-changed", "e.html"),
        ("file-extra", "en/new.html"),
    ]


def test_a_folder_without_a_list_is_not_verified(tmp_path: Path) -> None:
    """Without manifest.json nothing can be said, and that is said."""
    assert [problem.code for problem in verify(tmp_path)] == ["manifest-unreadable"]
