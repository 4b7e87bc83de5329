"""The command line on a two-exercise catalogue: exit codes, messages, a site that no mistake can touch."""

from __future__ import annotations

import datetime
import errno
import functools
import json
import resource
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from generator.cli.build import exit_code
from generator.pipeline import Request, build_site, export_pages, record_editions
from generator.publish import open_stage, verify
from generator.steps import unchanged
from tests.content import FILES, with_change, write_content
from tests.whole.command import PROJECT, answered, bytes_of, phasebook

CLINIC = "clinic.yml"
ONE = ("--workers", "1", "--kinds", "standard")
Answer = Callable[..., subprocess.CompletedProcess[str]]


@pytest.fixture
def answer(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Answer:
    """Give a function that runs a command and returns what it printed and its exit code."""
    return functools.partial(answered, capsys, monkeypatch)


def test_a_sound_catalogue_has_no_problems(tmp_path: Path) -> None:
    """Checking prints that nothing was found and leaves with 0."""
    done = phasebook("check", "--content", write_content(tmp_path / "content"))
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.splitlines()[-1] == "no problems"


def test_a_mistake_is_shown_with_place_line_and_remedy(tmp_path: Path, answer: Answer) -> None:
    """A misspelt key is named with file, line and column, the line is shown, and the nearest key offered."""
    files = with_change(FILES, CLINIC, "languages:", "langauges:")
    done = answer("check", "--content", write_content(tmp_path / "content", files))
    line = files[CLINIC].split("\n").index("langauges: [en]") + 1
    assert done.returncode == 1
    assert f"{tmp_path}/content/clinic.yml:{line}:1: unknown-key" in done.stdout
    assert "did you mean 'languages'?" in done.stdout
    assert f"  {line} | langauges: [en]\n" in done.stdout


def test_findings_can_be_had_as_json(tmp_path: Path, answer: Answer) -> None:
    """The JSON form has the pinned keys, and its place and code are those of the text form."""
    files = with_change(FILES, CLINIC, "languages:", "langauges:")
    done = answer("check", "--format", "json", "--content", write_content(tmp_path / "content", files))
    found = json.loads(done.stdout)
    assert found["format"] == 1
    assert {key for problem in found["problems"] for key in problem} == {
        "code", "severity", "path", "line", "column", "message", "remedy",
    }  # fmt: skip
    assert "unknown-key" in {problem["code"] for problem in found["problems"]}


def test_every_code_can_be_explained(answer: Answer) -> None:
    """Explaining a code gives symptom, cause and remedy; an unknown one is refused with the nearest."""
    done = answer("explain", "unknown-key")
    assert done.returncode == 0
    assert [line.split(":")[0] for line in done.stdout.splitlines() if ": " in line] == [
        "unknown-key", "What you see", "Why", "What to do",
    ]  # fmt: skip
    refused = answer("explain", "unknown-kee")
    assert refused.returncode == 2
    assert "did you mean 'unknown-key'?" in refused.stderr


@pytest.mark.slow
def test_a_failed_build_leaves_the_old_site_whole(tmp_path: Path) -> None:
    """After a mistake the published site is byte for byte as before; the command says so, with 1."""
    content, site = tmp_path / "content", tmp_path / "site"
    first = phasebook("build", "--content", write_content(content), "--output", site, "--kinds", "standard")
    assert first.returncode == 0, first.stdout + first.stderr
    before = bytes_of(site)
    write_content(content, with_change(FILES, CLINIC, "demo: yes", "demo: perhaps"))
    second = phasebook("build", "--content", content, "--output", site)
    assert second.returncode == 1
    assert "the site in it is as it was" in second.stdout
    assert "Traceback" not in second.stdout + second.stderr
    assert bytes_of(site) == before


@pytest.mark.slow
@pytest.mark.parametrize("when", ["while it is made", "after it is out"])
def test_a_disk_that_fills_up_is_told_and_spoils_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, answer: Answer, when: str
) -> None:
    """No file may grow beyond 4 kB (setrlimit): exit code 2, nothing is left; what is out stays out."""
    content = write_content(tmp_path / "content")
    if when == "after it is out":
        monkeypatch.setattr(unchanged, "remember", _full)
        done = answer("build", "--content", content, "--output", tmp_path / "site", *ONE)
        assert (done.returncode, verify(tmp_path / "site")) == (0, ())
        return
    most = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (4096, most[1]))
    try:
        done = answer("build", "--content", content, "--output", tmp_path / "site", *ONE)
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, most)
    assert done.returncode == 2
    assert "the system says: File too large" in done.stdout
    assert [path.name for path in tmp_path.iterdir()] == ["content"]


def _full(*_: object) -> None:
    raise OSError(errno.ENOSPC, "No space left on device")


@pytest.mark.slow
def test_a_foreign_folder_is_never_replaced(tmp_path: Path) -> None:
    """A folder with somebody's files is refused before anything is built, with exit code 2."""
    site = tmp_path / "site"
    site.mkdir()
    (site / "letter.txt").write_text("mine", encoding="utf-8")
    done = phasebook("build", "--content", write_content(tmp_path / "content"), "--output", site)
    assert done.returncode == 2
    assert "output-not-ours" in done.stdout
    assert bytes_of(site).keys() == {"letter.txt"}


def test_a_second_build_is_refused_while_the_first_writes(tmp_path: Path, answer: Answer) -> None:
    """It does not wait and does not mix: exit code 2, and the first goes on undisturbed."""
    content = write_content(tmp_path / "content")
    with open_stage(tmp_path / "site", content) as stage:
        (stage.root / "index.html").write_text("first", encoding="utf-8")
        done = answer("build", "--content", content, "--output", tmp_path / "site")
        assert done.returncode == 2
        assert "build-running" in done.stdout
        stage.publish()
    assert verify(tmp_path / "site") == ()
    assert (tmp_path / "site" / "index.html").read_text(encoding="utf-8") == "first"


@pytest.mark.parametrize(
    ("output", "listing", "code", "reason"),
    [
        ("content/site", None, "output-in-content", "the output lies inside the content folder"),
        (".", None, "output-in-content", "the output contains the content folder"),
        ("/", None, "output-is-home-or-root", "this is the root of the disk"),
        ("site", "", "output-not-ours", "not readable as JSON"),
        ("site", '{"format": 2, "files": {}}', "output-not-ours", "format 2 is not the format 1 known here"),
        (
            "site",
            json.dumps({"format": 1, "files": {"../secret": "0" * 64}}),
            "output-not-ours",
            "the path '../secret' does not stay inside the site",
        ),
    ],
)
def test_an_output_that_is_not_ours_is_refused_with_the_reason(
    tmp_path: Path, answer: Answer, output: str, listing: str | None, code: str, reason: str
) -> None:
    """Inside the content, the root of the disk, another version, a list that climbs out: exit code 2."""
    content = write_content(tmp_path / "content")
    (tmp_path / "secret").write_text("mine", encoding="utf-8")
    if listing is not None:
        (tmp_path / "site").mkdir()
        (tmp_path / "site" / "manifest.json").write_text(listing, encoding="utf-8")
    before = bytes_of(tmp_path)
    done = answer("build", "--content", content, "--output", tmp_path / output)
    assert done.returncode == 2
    assert code in done.stdout
    assert reason in done.stdout
    assert bytes_of(tmp_path) == before


def test_an_unknown_option_is_refused_in_a_sentence(answer: Answer) -> None:
    """Wrong arguments leave with 2 and no traceback."""
    done = answer("build", "--colour", "red")
    assert done.returncode == 2
    assert "No such option" in done.stderr
    assert "Traceback" not in done.stderr


@pytest.mark.parametrize(
    ("name", "code", "reason"),
    [
        ("phasebook-cache.json", "cache-other-version", "format 7, this one keeps format 1"),
        ("letter.json", "cache-not-ours", "it holds 'letter.json'"),
    ],
)
def test_a_cache_that_is_not_ours_is_refused_with_the_reason(
    tmp_path: Path, name: str, code: str, reason: str
) -> None:
    """Of another version, or with somebody's files: exit code 2 for building, recording and exporting."""
    cache = tmp_path / "work" / "cache"
    cache.mkdir(parents=True)
    (cache / name).write_text('{"format": 7}', encoding="utf-8")
    content = write_content(tmp_path / "content")
    request = Request(content, tmp_path / "site", PROJECT, tmp_path / "work")
    before = bytes_of(tmp_path)
    built = build_site(request, lambda _: None)
    recorded, _ = record_editions(request, tmp_path / "archive", datetime.date(2026, 11, 25), lambda _: None)
    _, exported = export_pages(request)
    assert [exit_code(built), exit_code(exported), recorded.refused] == [2, 2, True]
    for *_, problem in (built.problems, exported.problems, recorded.problems):
        assert problem.code == code
        assert reason in problem.message
    assert bytes_of(tmp_path) == before
