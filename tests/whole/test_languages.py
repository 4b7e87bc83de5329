"""A language is published whole, or with its gaps named: the site says so, paper is left out."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from babel.messages import Catalog
from babel.messages.pofile import read_po, write_po
from click.testing import CliRunner

from generator.cli import commands
from generator.wording.negations import denials
from tests.content import write_content
from tests.whole.command import phasebook
from tests.wording.pseudo import pseudo

LANGUAGE = "uk"
HOLE = "Lower slowly."


def spoken(words: str) -> str:
    """Return words in a pretend language that every face can print: accented, without brackets."""
    return pseudo(words).strip("⟦⟧ ~")


def filled(path: Path, *, without: tuple[str, ...] = (), refusal: str = " не") -> None:
    """Translate a whole PO file into the pretend language, as a translator would in an editor.

    refusal: a language says "not" in its own word; the pretend one borrows it, by default from Ukrainian.
    """
    with path.open("rb") as file:
        catalogue: Catalog = read_po(file)
    for message in catalogue:
        if isinstance(message.id, str):
            if message.id and message.id not in without:
                message.string = spoken(message.id) + (refusal if denials(message.id, "en") else "")
        else:
            message.string = tuple(spoken(message.id[1]) for _ in range(catalogue.num_plurals))
    with path.open("wb") as file:
        write_po(file, catalogue, width=0)


@pytest.mark.slow
def test_a_language_is_added_from_nothing(tmp_path: Path) -> None:
    """Ukrainian, which the generator does not speak: taken up, exported, translated, built, gap by gap.

    Without safety texts it is withheld (3) and its pages are not there; with one step missing its pages are
    published and the booklets with that step are left out (3); complete, everything is there (0).
    """
    content, site = write_content(tmp_path / "content"), tmp_path / "site"
    assert phasebook("new", "language", LANGUAGE, "--content", content).returncode == 0
    first = phasebook("build", "--content", content, "--output", site)
    assert first.returncode == 3, first.stdout + first.stderr
    assert f"without {LANGUAGE}" in first.stdout
    assert not (site / LANGUAGE).exists()

    path = content / "translations" / f"{LANGUAGE}.po"
    filled(path, without=(HOLE,))
    second = phasebook("build", "--content", content, "--output", site)
    assert second.returncode == 3, second.stdout + second.stderr
    assert "booklet-withheld" in second.stdout
    page = (site / LANGUAGE / "exercises" / "heel-raise.html").read_text(encoding="utf-8")
    assert '<span lang="en" dir="ltr">Lower slowly.</span>' in page
    english = {pdf.name for pdf in (site / "en" / "booklets").glob("*.pdf")}
    ukrainian = {pdf.name for pdf in (site / LANGUAGE / "booklets").glob("*.pdf")}
    # Large print and the pocket booklet are made in the source language only, unless all are asked for.
    usual = {name for name in english if not re.search("-(large|pocket|pocket-fold)[.]pdf$", name)}
    assert ukrainian < usual

    filled(path)
    third = phasebook("build", "--content", content, "--output", site)
    assert third.returncode == 0, third.stdout + third.stderr
    assert {pdf.name for pdf in (site / LANGUAGE / "booklets").glob("*.pdf")} == usual
    status = phasebook("translate", "status", LANGUAGE, "--content", content)
    assert "!" not in status.stdout


def test_check_says_before_a_build_which_paper_a_gap_leaves_out(tmp_path: Path) -> None:
    """A sentence that is not translated is told by ``check`` with the booklet it costs and what to run."""
    content = write_content(tmp_path / "content")
    runner, options = CliRunner(), ["--content", str(content)]
    assert runner.invoke(commands, ["new", "language", LANGUAGE, *options]).exit_code == 0
    filled(content / "translations" / f"{LANGUAGE}.po", without=(HOLE,))
    said = runner.invoke(commands, ["check", *options]).output
    assert f"tendon-repair phase 2 in '{LANGUAGE}' is left out" in said
    assert f"translate export {LANGUAGE}" in said
