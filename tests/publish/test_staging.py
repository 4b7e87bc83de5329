"""A build replaces the old site as a whole or not at all, and touches nothing that is not its own."""

from __future__ import annotations

import itertools
import os
import stat
import subprocess
import sys
import textwrap
from pathlib import Path

import pytest

from generator.publish import Busy, Refused, open_stage, verify
from tests.killing import killed_at

ROOT = Path(__file__).parents[2]
# What publishing does to the system, as audit events name it.
STEPS = ("os.", "open", "shutil.", "ctypes.", "fcntl.")


def content_of(folder: Path) -> dict[str, bytes]:
    """Return every file below a folder by path."""
    return {str(file.relative_to(folder)): file.read_bytes() for file in folder.rglob("*") if file.is_file()}


def publish(output: Path, words: str, *, at_once: bool = True) -> None:
    """Build and publish a site of three pages."""
    content = output.parent / "content"
    content.mkdir(exist_ok=True)
    with open_stage(output, content) as stage:
        (stage.root / "en").mkdir()
        for name in ("index.html", "en/index.html", "en/bridge.html"):
            (stage.root / name).write_text(words)
        stage.publish(at_once=at_once)


def refusal(output: Path, content: Path) -> str:
    """Return the code with which an output is refused, or nothing when it is not."""
    try:
        with open_stage(output, content):
            return ""
    except Refused as refused:
        return refused.problem.code


@pytest.mark.parametrize("at_once", [True, False])
def test_a_site_is_published_and_replaced(tmp_path: Path, at_once: bool) -> None:
    """The new site is whole, the old one gone, and beside it nothing is left."""
    output = tmp_path / "site"
    for words in ("one", "two"):
        publish(output, words, at_once=at_once)
        assert verify(output) == ()
        assert (output / "en/bridge.html").read_text() == words
        assert {entry.name for entry in tmp_path.iterdir()} == {"site", "content"}


@pytest.mark.parametrize("at_once", [True, False])
def test_an_empty_folder_may_be_the_output(tmp_path: Path, at_once: bool) -> None:
    """A folder made for the site beforehand is used."""
    (tmp_path / "site").mkdir()
    publish(tmp_path / "site", "one", at_once=at_once)
    assert verify(tmp_path / "site") == ()


def test_the_published_tree_is_readable_by_the_web_server(tmp_path: Path) -> None:
    """Files are 0644 and folders 0755, whatever mask the build runs under."""
    before = os.umask(0o077)
    try:
        publish(tmp_path / "site", "one")
    finally:
        os.umask(before)
    for entry in ((tmp_path / "site"), *(tmp_path / "site").rglob("*")):
        assert stat.S_IMODE(entry.stat().st_mode) == (0o755 if entry.is_dir() else 0o644), entry


def test_leaving_without_publishing_keeps_the_old_site_byte_for_byte(tmp_path: Path) -> None:
    """A build with problems changes nothing."""
    output = tmp_path / "site"
    publish(output, "one")
    before = content_of(tmp_path)
    with open_stage(output, tmp_path / "content") as stage:
        (stage.root / "index.html").write_text("two")
    with pytest.raises(ZeroDivisionError), open_stage(output, tmp_path / "content") as stage:
        (stage.root / "index.html").write_text(str(1 // 0))
    assert content_of(tmp_path) == before


def test_a_second_build_is_told_at_once(tmp_path: Path) -> None:
    """Two builds never mix; the second hears who holds the folder and does not wait."""
    output = tmp_path / "site"
    (tmp_path / "content").mkdir()
    with open_stage(output, tmp_path / "content"):
        with pytest.raises(Busy) as busy, open_stage(output, tmp_path / "content"):
            pass
        assert busy.value.problem.code == "build-running"
        assert str(os.getpid()) in busy.value.problem.message
        with open_stage(tmp_path / "other", tmp_path / "content"):
            pass
    assert refusal(output, tmp_path / "content") == ""


def test_the_lock_holds_between_processes(tmp_path: Path) -> None:
    """A build in another process is seen."""
    (tmp_path / "content").mkdir()
    script = """
        import sys
        from pathlib import Path
        from generator.publish import Busy, open_stage
        try:
            with open_stage(Path(sys.argv[1]), Path(sys.argv[2])):
                pass
        except Busy:
            sys.exit(7)
    """
    arguments = [str(tmp_path / "site"), str(tmp_path / "content")]
    with open_stage(tmp_path / "site", tmp_path / "content"):
        assert run(script, *arguments).returncode == 7
    assert run(script, *arguments).returncode == 0


def test_dangerous_outputs_are_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The root of the disk, a home folder and what contains one are never replaced."""
    content = tmp_path / "content"
    content.mkdir()
    home = tmp_path / "people" / "anna"
    home.mkdir(parents=True)
    monkeypatch.setenv("HOME", str(home))
    assert refusal(Path("/"), content) == "output-is-home-or-root"
    assert refusal(home, content) == "output-is-home-or-root"
    assert refusal(home.parent, content) == "output-is-home-or-root"
    assert refusal(home / "site", content) == ""


def test_the_content_folder_is_never_replaced(tmp_path: Path) -> None:
    """An output inside the content, around it or equal to it is refused, by whatever name it is called."""
    content = tmp_path / "work" / "content"
    content.mkdir(parents=True)
    (tmp_path / "alias").symlink_to(content)
    for output in (
        content,
        content / "site",
        content / "a" / "b",
        tmp_path / "work",
        tmp_path / "alias" / "site",
        content / ".." / "content",
    ):
        assert refusal(output, content) == "output-in-content", output
    assert content_of(tmp_path) == {}


def test_a_foreign_folder_is_refused_and_untouched(tmp_path: Path) -> None:
    """A folder with files and without our manifest belongs to somebody else."""
    content = tmp_path / "content"
    content.mkdir()
    thesis = tmp_path / "documents"
    thesis.mkdir()
    (thesis / "thesis.odt").write_text("four years")
    assert refusal(thesis, content) == "output-not-ours"
    (thesis / "manifest.json").write_text('{"format": 3, "name": "an app"}')
    assert refusal(thesis, content) == "output-not-ours"
    assert (thesis / "thesis.odt").read_text() == "four years"


def test_files_added_to_a_site_by_hand_are_not_deleted(tmp_path: Path) -> None:
    """A server configuration put into the site would vanish at the next build: the build says so instead."""
    output = tmp_path / "site"
    publish(output, "one")
    (output / ".DS_Store").write_text("x")
    assert refusal(output, tmp_path / "content") == ""
    (output / "web.config").write_text("ours")
    assert refusal(output, tmp_path / "content") == "output-has-other-files"
    assert (output / "web.config").read_text() == "ours"


def test_places_that_are_no_folder_are_refused(tmp_path: Path) -> None:
    """A file, a missing parent and the top of a disk cannot be replaced as a folder."""
    content = tmp_path / "content"
    content.mkdir()
    (tmp_path / "file").write_text("x")
    assert refusal(tmp_path / "file", content) == "output-not-replaceable"
    assert refusal(tmp_path / "missing" / "site", content) == "output-not-replaceable"
    assert refusal(Path("/proc"), content) == "output-not-replaceable"
    assert not (tmp_path / "missing").exists()


def test_links_and_odd_names_are_not_published(tmp_path: Path) -> None:
    """A link in the built tree could lead out of the site; the old site stays."""
    output = tmp_path / "site"
    publish(output, "one")
    for spoil in (
        lambda root: (root / "a").symlink_to("/etc/passwd"),
        lambda root: (root / "a").symlink_to(root),
        lambda root: (root / "a:b.html").write_text("x"),
        lambda root: os.mkfifo(root / "a"),
    ):
        with open_stage(output, tmp_path / "content") as stage:
            spoil(stage.root)
            with pytest.raises(Refused) as refused:
                stage.publish()
        assert refused.value.problem.code == "output-odd-file"
    assert verify(output) == ()


def test_an_error_of_the_system_is_a_refusal_in_words(tmp_path: Path) -> None:
    """When the tree cannot be written the old site stays, and the system's reason is passed on."""
    output = tmp_path / "site"
    publish(output, "one")
    with open_stage(output, tmp_path / "content") as stage:
        (stage.root / "manifest.json").mkdir()
        with pytest.raises(Refused) as refused:
            stage.publish()
    assert refused.value.problem.code == "output-not-writable"
    assert verify(output) == ()


def test_only_our_own_leftovers_are_removed(tmp_path: Path) -> None:
    """Folders of a similar name that no build of this output made stay as they are."""
    (tmp_path / "content").mkdir()
    kept = [".site.staging-backup01", ".site.staging-", "xsite.staging-abcdefgh", ".site2.staging-abcdefgh"]
    for name in kept:
        (tmp_path / name).mkdir()
        (tmp_path / name / "notes.txt").write_text("mine")
    (tmp_path / ".site.staging-linklink").symlink_to(tmp_path / "content")
    ours = tmp_path / ".site.staging-abcdefgh"
    (ours / "site").mkdir(parents=True)
    (ours / "phasebook-staging.json").write_text('{"format": 1, "output": "site"}')
    (tmp_path / ".site.staging-justmade").mkdir()
    publish(tmp_path / "site", "one")
    left = {entry.name for entry in tmp_path.iterdir()}
    assert left == {*kept, ".site.staging-linklink", "content", "site"}


def run(script: str, *arguments: str) -> subprocess.CompletedProcess[str]:
    """Run a script in a Python of its own."""
    command = [sys.executable, "-c", textwrap.dedent(script), *arguments]
    return subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)


@pytest.mark.slow
@pytest.mark.parametrize("at_once", [True, False])
def test_a_build_killed_at_any_step_leaves_a_whole_site(tmp_path: Path, at_once: bool) -> None:
    """After kill -9 the output is whole, old or new; with two renames, once the next build has begun."""
    output, content = tmp_path / "site", tmp_path / "content"
    seen = set()
    for step in itertools.count(1):
        publish(output, "one")
        if not killed_at(step, STEPS, lambda: publish(output, "two", at_once=at_once)):
            break
        assert not at_once or output.is_dir()
        with open_stage(output, content):
            pass
        assert verify(output) == (), step
        seen.add((output / "index.html").read_text())
        assert {entry.name for entry in tmp_path.iterdir()} == {"site", "content"}, step
    assert step > 30
    assert seen == {"one", "two"}
