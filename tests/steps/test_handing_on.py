"""Written pages build elsewhere: with plain MkDocs and with the engine that succeeds it, and read alike."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from click.testing import CliRunner

from generator.cli.export import export
from tests.content import write_content

ENGINES = {
    "mkdocs": ("mkdocs", "build", "-q", "-f", "en.yml"),
    "zensical": ("zensical", "build", "-f", "en.yml"),
}


def handed_on(content: Path, output: Path) -> str:
    """Run ``export pages`` and return what it says."""
    done = CliRunner().invoke(
        export, ["pages", "--content", str(content), str(output)], standalone_mode=False
    )
    return f"{done.return_value}: {done.output}"


def built(folder: Path, engine: str) -> dict[str, BeautifulSoup]:
    """Build the pages in `folder` with an engine that knows nothing of this program."""
    # Neither this checkout nor its settings may help: the folder must hold all that is needed.
    environment = {key: value for key, value in os.environ.items() if not key.startswith("PYTHON")}
    command = [sys.executable, "-m", *ENGINES[engine]]
    done = subprocess.run(
        command,
        cwd=folder,
        env={**environment, "NO_MKDOCS_2_WARNING": "1"},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    root = folder / "site" / "en"
    return {
        file.relative_to(root).as_posix(): BeautifulSoup(file.read_text("utf-8"), "html.parser")
        for file in sorted(root.rglob("*.html"))
    }


@pytest.mark.slow
def test_the_pages_read_alike_in_the_engine_that_succeeds_mkdocs(tmp_path: Path) -> None:
    """Zensical 0.0.73 writes every page with the same words, anchors, safety texts and frame as MkDocs 1.6.1.

    What differs is listed in DEVELOPERS.md, 'Another engine'; the reference is MkDocs's own output.
    """
    content = write_content(tmp_path / "content")
    trees = {}
    for engine in ENGINES:
        said = handed_on(content, tmp_path / engine)
        assert said.startswith("0: Written"), said
        trees[engine] = built(tmp_path / engine, engine)
    # The one page more is the engine's own for what is not found; ours lies above the languages.
    assert set(trees["zensical"]) - set(trees["mkdocs"]) <= {"404.html"}
    assert len(trees["mkdocs"]) > 10
    for name, page in trees["mkdocs"].items():
        other = trees["zensical"][name]
        for part in ("header", "main", "footer"):
            words = [list(one.find(part).stripped_strings) for one in (page, other)]  # type: ignore[union-attr]
            assert words[0] == words[1], (name, part)
        anchors = [[mark["id"] for mark in one.find_all(id=True)] for one in (page, other)]
        assert anchors[0] == anchors[1], name
        links = [
            [str(a["href"]).removeprefix("./") for a in one.find_all("a", href=True)] for one in (page, other)
        ]
        assert links[0] == links[1], name


def test_nothing_is_written_into_a_folder_that_holds_something(tmp_path: Path) -> None:
    """A folder with a file of somebody's is refused before reading, with exit code 2; it stays as it is."""
    mine = tmp_path / "mine.txt"
    mine.write_text("mine", encoding="utf-8")
    said = handed_on(tmp_path / "no-content", tmp_path)
    assert said.startswith("2: Not written"), said
    assert "not empty; choose a new folder" in said
    assert [entry.name for entry in tmp_path.iterdir()] == ["mine.txt"]
