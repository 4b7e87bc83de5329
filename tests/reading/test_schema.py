"""Schema and reader say the same of good and bad files, and editors' programs find the schemas."""

from __future__ import annotations

import json
import random
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import jsonschema
import pytest
import yaml

from generator.cli.schema import schema_texts
from generator.reading.content import FILES as FILES_OF
from generator.reading.content import FOLDERS
from generator.reading.findings import ID_PATTERN, Findings
from generator.reading.nodes import Entries, Items, Node, Scalar, parse
from generator.reading.schema import schemas
from generator.reading.schema_comment import schema_comment
from generator.reading.table import Group, MapOf
from tests.content import FILES

PROJECT = Path(__file__).parents[2]
CONTENT = PROJECT / "content"
SCHEMAS = schemas()
TABLES = {**FILES_OF, **{folder: (table, False) for folder, table in FOLDERS.items()}}
# What a schema cannot see: ids that must differ, and braces that belong to no phrase.
BEYOND = ("duplicate-id", "bad-phrase")


def typed(node: Node | None) -> Any:
    """Return what an editor's program sees: plain scalars by the core schema (YAML 1.2.2, 10.3.2)."""
    if isinstance(node, Entries):
        return {key.text: typed(value) for key, value in node.entries}
    if isinstance(node, Items):
        return [typed(item) for item in node.items]
    assert isinstance(node, Scalar)
    text = node.text
    if node.quoted:
        return text
    if text in ("", "~", "null", "Null", "NULL"):
        return None
    if text.lower() in ("true", "false"):
        return text.lower() == "true"
    if re.fullmatch(r"[-+]?[0-9]+", text):
        return int(text)
    if re.fullmatch(r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?", text):
        return float(text)
    return text


def kind_of(path: str) -> str:
    """Return by what name the schema of a file is known."""
    return path.rpartition("/")[0] or path


def schema_accepts(path: str, text: str) -> bool:
    """Return whether an editor's program finds nothing wrong with a file."""
    root, problems = parse(path, text)
    assert not problems
    return bool(jsonschema.Draft202012Validator(SCHEMAS[kind_of(path)]).is_valid(typed(root)))


def reader_accepts(path: str, text: str) -> bool:
    """Return whether the reader finds nothing wrong with a file itself; a name must at least be one."""
    table, mapped = TABLES[kind_of(path)]
    root, problems = parse(path, text)
    assert root is not None
    assert not problems
    findings = Findings()
    given = {"id": "some-id"} if kind_of(path) in FOLDERS else {}
    MapOf(Group(table)).read(root, findings) if mapped else Group(table).read(root, findings, **given)
    named = all(re.fullmatch(ID_PATTERN, one.id) for one in findings.references)
    seen = (one for one in findings.problems if one.code not in BEYOND)
    # Nor can a schema see that one number lies between two others.
    return named and all("is not between from" in one.message for one in seen)


def ways(value: Any, way: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    """Yield the way to every value of a tree, groups and lists included."""
    if way:
        yield way
    if isinstance(value, dict):
        for key in value:
            yield from ways(value[key], (*way, key))
    elif isinstance(value, list):
        for position, item in enumerate(value):
            yield from ways(item, (*way, position))


# What an editor's slip puts where something else belongs.
SLIPS: tuple[Any, ...] = (
    "",
    "nonsense",
    "Some other words.",
    "less < more",
    "0",
    "3",
    "-1",
    "99999",
    "2.5",
    "3 s",
    "30 deg",
    "yes",
    "standing",
    "x" * 601,
    [],
    ["one"],
    {},
    {"key": "value"},
)


def slipped(tree: Any, way: tuple[Any, ...], chance: random.Random) -> Any:
    """Return a tree in which the value at a way is lost, renamed, or another one."""
    here, rest = way[0], way[1:]
    if isinstance(tree, list):
        if rest:
            return [slipped(item, rest, chance) if at == here else item for at, item in enumerate(tree)]
        return [chance.choice(SLIPS) if at == here else item for at, item in enumerate(tree)]
    if rest:
        return {key: slipped(item, rest, chance) if key == here else item for key, item in tree.items()}
    kind = chance.choice(("lost", "renamed", "other", "other", "other"))
    if kind == "lost":
        return {key: item for key, item in tree.items() if key != here}
    if kind == "renamed":
        return {f"{key}x" if key == here else key: item for key, item in tree.items()}
    return {key: chance.choice(SLIPS) if key == here else item for key, item in tree.items()}


class Plainly(yaml.SafeDumper):
    """Writes every text as an editor would, without quotation marks where none are needed."""


Plainly.add_representer(
    str,
    lambda dumper, text: dumper.represent_scalar(
        "tag:yaml.org,2002:str", text, style="'" if not text else None
    ),
)
Plainly.yaml_implicit_resolvers = {}


def files_of() -> list[tuple[str, Any]]:
    """Return all files of the small content and of the demonstration as trees of texts."""
    small = [(path, yaml.load(text, yaml.BaseLoader)) for path, text in FILES.items()]
    demo = [
        (path.relative_to(CONTENT).as_posix(), yaml.load(path.read_text(encoding="utf-8"), yaml.BaseLoader))
        for path in sorted(CONTENT.rglob("*.yml"))
        if kind_of(path.relative_to(CONTENT).as_posix()) in SCHEMAS
    ]
    return [*small, *demo]


def test_good_files_are_good_to_both() -> None:
    """No file of the demonstration and of the small content is refused by its schema or by the reader."""
    for path, tree in files_of():
        text = yaml.dump(tree, Dumper=Plainly, sort_keys=False, allow_unicode=True)
        assert schema_accepts(path, text), path
        assert reader_accepts(path, text), path


@pytest.mark.slow
def test_schema_and_reader_agree_on_spoilt_files() -> None:
    """Of 200 files with one slip each, drawn at random, both refuse the same ones."""
    chance, trees, both_bad = random.Random(8), files_of(), 0
    for _ in range(200):
        path, tree = chance.choice(trees)
        spoilt = slipped(tree, chance.choice(list(ways(tree))), chance)
        text = yaml.dump(spoilt, Dumper=Plainly, sort_keys=False, allow_unicode=True)
        schema, reader = schema_accepts(path, text), reader_accepts(path, text)
        assert schema == reader, f"{path}: schema {schema}, reader {reader}\n{text}"
        both_bad += not reader
    assert 100 < both_bad < 200


@pytest.mark.parametrize("kind", SCHEMAS)
def test_a_schema_holds_by_its_own_rules(kind: str) -> None:
    """Each schema is one by the metaschema of JSON Schema, draft 2020-12."""
    jsonschema.Draft202012Validator.check_schema(SCHEMAS[kind])


def test_schemas_lie_where_files_look_for_them() -> None:
    """What is kept beside the content is what the reader knows today: `docs` brings it up to date."""
    folder = CONTENT / ".schemas"
    wanted = {path.name: text for path, text in schema_texts(folder)}
    assert {path.name: path.read_text(encoding="utf-8") for path in folder.iterdir()} == wanted


def test_each_file_of_the_demonstration_names_its_schema() -> None:
    """The first line leads an editor's program to a schema that is there, and to the right one."""
    for path in sorted(CONTENT.rglob("*.yml")):
        name = path.relative_to(CONTENT).as_posix()
        if kind_of(name) in SCHEMAS:
            first = path.read_text(encoding="utf-8").splitlines()[0]
            assert first == schema_comment(name)
            target = (path.parent / first.partition("$schema=")[2]).resolve()
            assert json.loads(target.read_text(encoding="utf-8")) == SCHEMAS[kind_of(name)]
