"""A translator's file goes out, comes back whole or not at all, and the status says what is left."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from generator.cli import commands
from generator.cli.shared import DONE, NOT_STARTED, PROBLEMS
from tests.content import write_content

SENTENCE = 'msgid "Lower slowly."\nmsgstr ""\n'


def run(content: Path, *words: str) -> Result:
    """Return what a command prints and its exit code."""
    return CliRunner().invoke(
        commands, [*words, "--content", str(content)], catch_exceptions=False, standalone_mode=False
    )


@pytest.fixture
def content(tmp_path: Path) -> Path:
    """Return a content with German among its languages and nothing translated."""
    folder = write_content(tmp_path / "content")
    assert run(folder, "new", "language", "de").return_value == DONE
    return folder


def typed(content: Path, tmp_path: Path, words: str, before: str = SENTENCE) -> Path:
    """Return a translator's copy of the German file with one sentence translated."""
    text = (content / "translations" / "de.po").read_text(encoding="utf-8")
    assert before in text
    copy = tmp_path / "from-translator.po"
    copy.write_text(text.replace(before, before.replace('""', f'"{words}"')), encoding="utf-8")
    return copy


def test_a_new_language_is_listed_and_its_texts_lie_ready(content: Path) -> None:
    """The clinic's list keeps its comments and layout; a second time is no harm."""
    clinic = (content / "clinic.yml").read_text(encoding="utf-8")
    assert "languages: [en, de]" in clinic
    assert run(content, "new", "language", "de").return_value == DONE
    assert (content / "clinic.yml").read_text(encoding="utf-8") == clinic


@pytest.mark.parametrize(
    ("code", "said"), [("xx", "'xx' is not known"), ("en", "'en' is the language of the content itself")]
)
def test_a_code_that_is_none_is_refused(tmp_path: Path, code: str, said: str) -> None:
    """Nothing is written for a language nobody knows, nor for the content's own."""
    folder = write_content(tmp_path / "content")
    result = run(folder, "new", "language", code)
    assert result.return_value == NOT_STARTED
    assert said in result.output
    assert not (folder / "translations").exists()


def test_a_translation_comes_back_and_is_counted(content: Path, tmp_path: Path) -> None:
    """Import writes it, and status has one missing text fewer."""
    before = json.loads(run(content, "translate", "status", "--format", "json").output)["languages"]["de"]
    done = run(content, "translate", "import", "de", str(typed(content, tmp_path, "Langsam senken.")))
    assert done.return_value == DONE
    assert "1 entry changed" in done.output
    after = json.loads(run(content, "translate", "status", "--format", "json").output)["languages"]["de"]
    counts = {part["part"]: (part["translated"], part["missing"]) for part in before}
    for part in after:
        assert part["translated"] + part["missing"] == sum(counts[part["part"]])
    assert {part["part"]: part["translated"] for part in after}["all"] == 1


@pytest.mark.parametrize(
    ("words", "code"),
    [
        ("3-mal langsam senken.", "numbers-differ"),
        ("Langsam <b>senken</b>.", "markup-in-translation"),
        ("Langsam senken, {hold}.", "phrases-differ"),
    ],
)
def test_one_wrong_entry_keeps_everything_out(content: Path, tmp_path: Path, words: str, code: str) -> None:
    """The finding has file and line of the translator's copy, and the language's file stays as it was."""
    path = content / "translations" / "de.po"
    before = path.read_bytes()
    copy = typed(content, tmp_path, words)
    done = run(content, "translate", "import", "de", str(copy))
    assert done.return_value == PROBLEMS
    line = copy.read_text(encoding="utf-8").split('msgid "Lower slowly."')[0].count("\n") + 1
    assert f"{copy}:{line}:1: {code}" in done.output
    assert "Nothing was written." in done.output
    assert path.read_bytes() == before


def test_a_lost_prohibition_is_refused_with_its_line(content: Path, tmp_path: Path) -> None:
    """A safety text that no longer says "no" never gets in."""
    sentence = 'msgid "Call when you cannot breathe well."\nmsgstr ""\n'
    copy = typed(content, tmp_path, "Anrufen, wenn Sie gut atmen.", sentence)
    done = run(content, "translate", "import", "de", str(copy))
    assert done.return_value == PROBLEMS
    assert "negation-lost" in done.output


def test_a_file_that_is_not_there_is_said_plainly(content: Path, tmp_path: Path) -> None:
    """No traceback, exit code 1."""
    done = run(content, "translate", "import", "de", str(tmp_path / "nowhere.po"))
    assert done.return_value == PROBLEMS
    assert "it cannot be opened" in done.output


def test_check_reads_the_translations_too(content: Path, tmp_path: Path) -> None:
    """A number changed by hand in the language's file is an error of `check`."""
    path = content / "translations" / "de.po"
    path.write_text(typed(content, tmp_path, "3-mal senken.").read_text(encoding="utf-8"), encoding="utf-8")
    done = run(content, "check")
    assert done.return_value == PROBLEMS
    assert "numbers-differ" in done.output
