"""README, DEVELOPERS and the words to translate say what the code says."""

from __future__ import annotations

import re
import shlex

import click

from generator.catalogue.fingerprints import is_edition_code
from generator.cli import commands
from generator.cli.docs import wanted_files
from generator.steps.all_rules import ALL_RULES
from tests.whole.command import PROJECT


def test_what_is_made_from_the_code_is_up_to_date() -> None:
    """The map and codes of DEVELOPERS.md and the template for translators have not drifted."""
    stale = [path.name for path, wanted in wanted_files() if path.read_text(encoding="utf-8") != wanted]
    assert stale == []


def test_every_code_is_unique_and_in_words() -> None:
    """A code stands for one rule, reads as words, and has symptom, cause and remedy."""
    codes = [rule.code for rule in ALL_RULES]
    assert len(set(codes)) == len(codes)
    assert [code for code in codes if not re.fullmatch(r"[a-z]+(-[a-z0-9]+)*", code)] == []
    assert all(rule.symptom and rule.cause and rule.remedy for rule in ALL_RULES)


def test_every_command_is_in_the_documents() -> None:
    """README or DEVELOPERS names each command of the command line."""
    text = "".join((PROJECT / name).read_text(encoding="utf-8") for name in ("README.md", "DEVELOPERS.md"))
    assert [name for name in commands.commands if f"phasebook {name}" not in text] == []


def test_the_first_paragraph_states_the_job() -> None:
    """README opens with what the program does for whom, before any command."""
    first = (PROJECT / "README.md").read_text(encoding="utf-8").split("\n\n")[1]
    assert all(word in first for word in ("catalogue", "patient", "booklets", "phase", "physiotherapist"))


def test_every_code_speaks_the_same_way() -> None:
    """What one sees is a sentence; what to do follows a semicolon: it begins small, without a full stop."""
    assert [rule.code for rule in ALL_RULES if not rule.symptom[0].isupper()] == []
    assert [rule.code for rule in ALL_RULES if not rule.symptom.endswith(".")] == []
    assert [rule.code for rule in ALL_RULES if rule.remedy[0].isupper() or rule.remedy.endswith(".")] == []


def test_every_example_of_an_edition_code_could_be_one() -> None:
    """A reader who types a code from the documents or from a help text is not told of a typing error."""
    files = [PROJECT / "README.md", PROJECT / "DEVELOPERS.md", *(PROJECT / "generator").rglob("*.py")]
    files += [*(PROJECT / "generator").rglob("*.html"), *(PROJECT / "content").glob(".schemas/*.json")]
    text = "".join(path.read_text(encoding="utf-8") for path in files)
    codes = set(re.findall(r"(?<![\w+-])(?=\S*\d)(?=\S*[A-Z])[0-9A-Z]{4}-[0-9A-Z]{4}(?![\w-])", text))
    assert codes
    assert [code for code in codes if not is_edition_code(code)] == []


def test_every_command_in_the_documents_exists_as_it_is_typed() -> None:
    """Each command of README and DEVELOPERS has its subcommand and every option that is shown with it."""
    text = "".join((PROJECT / name).read_text(encoding="utf-8") for name in ("README.md", "DEVELOPERS.md"))
    blocks = "".join(re.findall(r"^```.*?\n(.*?)^```$", text.replace("\\\n", ""), re.MULTILINE | re.DOTALL))
    typed = re.findall(r"^phasebook (.+?)(?:  +#.*)?$", blocks, re.MULTILINE)
    assert typed
    typed += [" ".join(one.split()) for one in re.findall(r"`phasebook ([^`]+)`", text)]
    assert len(typed) > 30
    assert [line for line in typed if _unknown(shlex.split(line))] == []


def _unknown(words: list[str]) -> list[str]:
    """Return what of a command line no command knows."""
    command: click.Command | None = commands
    while words and isinstance(command, click.Group):
        name, *words = words
        command = command.commands.get(name)
        if command is None:
            return [name]
    assert command is not None
    known = {name for parameter in command.params for name in (*parameter.opts, *parameter.secondary_opts)}
    known.add("--help")
    return [word for word in words if word.startswith("--") and word.partition("=")[0] not in known]
