"""``docs``: rewrites what is made from the code: the map, the codes, the words to translate, the licences."""

from __future__ import annotations

import ast
from pathlib import Path

import click

from generator.cli.licences import FILE as LICENCES
from generator.cli.licences import licences_text
from generator.cli.schema import schema_texts
from generator.cli.shared import DONE, PROBLEMS, ROOT
from generator.steps.all_rules import ALL_RULES
from generator.steps.offers import SCHEMA_FOLDER, TEMPLATE, extract_messages, updated_locale

FILE = ROOT / "DEVELOPERS.md"


@click.command()
@click.option("--check", is_flag=True, help="Change nothing; fail where a file is out of date.")
def docs(check: bool) -> int:
    """Bring what is made from the code up to date."""
    stale = [path for path, wanted in wanted_files() if path.read_text(encoding="utf-8") != wanted]
    if check and stale:
        click.echo(f"out of date: {', '.join(path.name for path in stale)}; run: phasebook docs")
        return PROBLEMS
    for path, wanted in wanted_files():
        path.write_text(wanted, encoding="utf-8", newline="\n")
    click.echo("up to date")
    return DONE


def wanted_files() -> tuple[tuple[Path, str], ...]:
    """Return each file that holds something made from the code, with the text it should have."""
    locales = ((path, updated_locale(path.stem)) for path in sorted(TEMPLATE.parent.glob("*.po")))
    schema_files = schema_texts(ROOT / "content" / SCHEMA_FOLDER)
    made = (
        (FILE, renewed(FILE.read_text(encoding="utf-8"))),
        (TEMPLATE, extract_messages()),
        (LICENCES, licences_text()),
    )
    return (*made, *locales, *schema_files)


def renewed(text: str) -> str:
    """Return `text` with the parts between its marks made again from the code."""
    for name, part in (("map", _map(ROOT / "generator")), ("codes", _codes())):
        before, start, rest = text.partition(f"<!-- {name}: start -->\n")
        _, end, after = rest.partition(f"<!-- {name}: end -->")
        text = before + start + part + end + after
    return text


def _map(package: Path) -> str:
    """Return a list of all modules with the first sentence of each."""
    lines = []
    for path in sorted(package.rglob("*.py"), key=lambda item: (item.parent, item.name)):
        words = ast.get_docstring(ast.parse(path.read_text(encoding="utf-8"))) or ""
        first = " ".join(words.split("\n\n")[0].split())
        name = path.relative_to(package.parent).as_posix()
        lines.append(f"- `{name}`: {first}\n")
    return "".join(lines)


def _codes() -> str:
    """Return a table of all codes."""
    lines = ["| code | weight | what you see | what to do |\n", "|---|---|---|---|\n"]
    lines += [
        f"| `{rule.code}` | {rule.severity.value}{', safety' if rule.safety else ''} "
        f"| {rule.symptom} | {rule.remedy} |\n"
        for rule in ALL_RULES
    ]
    return "".join(lines)
