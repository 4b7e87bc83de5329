"""Writes a new content file from the field table: each key with its meaning above it and a valid example.

No key is typed here: what the reader knows, a new file shows. Keys that must stand are live, the others are
commented out, so that taking away the mark and the blank after it makes them live.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from textwrap import wrap

from generator.catalogue.unwritten import UNWRITTEN
from generator.catalogue.values import Catalogue
from generator.editing.examples import Examples, ids_of, usual_step
from generator.editing.yaml_text import Value, block_entry, scalar
from generator.reading.content import FOLDERS
from generator.reading.kinds import Kind, Words
from generator.reading.schema_comment import schema_comment
from generator.reading.table import Field, Group, ListOf, Numbered, Table, Tagged

_WIDTH = 92
_STEP = "  "


def new_file(folder: str, catalogue: Catalogue) -> str:
    """Return the text of a new file of one of the folders ``exercises``, ``programmes`` and ``daily-life``.

    It refers only to what the catalogue has, and reads without errors beside it.
    """
    table = FOLDERS[folder]
    examples = Examples(ids_of(catalogue), _of_programme(catalogue) if folder == "programmes" else {})
    head = [
        schema_comment(f"{folder}/new.yml"),
        *_comment(table.help),
        *_comment(
            f"Replace each text that begins with '{UNWRITTEN.strip()}', and each example by your own value. "
            "A line that begins with '# ' and a key may be left out: take '# ' away to use it."
        ),
        "",
    ]
    return "\n".join([*head, *_of_table(table, examples, "", "")]) + "\n"


def _of_programme(catalogue: Catalogue) -> Mapping[str, Value]:
    """Return what a first phase says that uses one of the exercises there are, with its usual dose."""
    chosen = catalogue.exercises.get(ids_of(catalogue).get("exercise", ""))
    if chosen is None:
        return {}
    return {
        "phases.demand": chosen.demand.value,
        "phases.uses.use": chosen.id,
        "phases.uses.dose-steps": [usual_step(chosen.dose)],
    }


def _of_table(table: Table, examples: Examples, path: str, indent: str) -> Iterator[str]:
    for item in table.fields:
        way = f"{path}.{item.key}".strip(".")
        yield from (f"{indent}{line}" for line in _comment(_meaning(item)))
        if item.required:
            yield from (f"{indent}{line}" for line in _required(item, examples, way))
        else:
            yield from (f"{indent}# {line}" for line in _optional(item, examples, way))
        if not path:
            yield ""


def _meaning(item: Field) -> str:
    """Return a key's help with its form; that a text is a text goes without saying."""
    kind = item.kind
    if isinstance(kind, Words | Group | Tagged):
        return item.help
    texts = isinstance(kind, ListOf) and isinstance(kind.item, Words)
    return f"{item.help} ({'a list of texts' if texts else kind.words()})"


def _required(item: Field, examples: Examples, way: str) -> Iterator[str]:
    """Yield the lines of a key that must stand, its own keys explained in turn."""
    kind = item.kind
    if item.example is not None or way in examples.given:
        yield from block_entry(item.key, examples.of(item, way))
    elif isinstance(kind, Group):
        yield f"{item.key}:"
        yield from _of_table(kind.table, examples, way, _STEP)
    elif isinstance(kind, Tagged):
        word, table = next(iter(kind.tables.items()))
        yield f"{item.key}:"
        yield from (f"{_STEP}{line}" for line in _comment(f"One of: {', '.join(kind.tables)}"))
        yield f"{_STEP}{kind.key}: {scalar(word)}"
        yield from _of_table(table, examples, way, _STEP)
    elif isinstance(kind, ListOf | Numbered) and kind.least and (inner := _group_in(kind)):
        yield f"{item.key}:"
        yield from _as_item(_of_table(inner.table, examples, way, ""))
    else:
        yield from block_entry(item.key, examples.of(item, way))
        if isinstance(kind, ListOf) and not kind.least:
            example = block_entry(item.key, [examples.item(kind, item.help, way)])
            yield from ("# for example:", *(f"# {line}" for line in example))


def _optional(item: Field, examples: Examples, way: str) -> Iterator[str]:
    """Yield the lines of a key that may be left out; a list shows one item."""
    kind = item.kind
    value = examples.of(item, way)
    if isinstance(kind, ListOf) and not value:
        value = [examples.item(kind, item.help, way)]
    if isinstance(kind, Group) and not value:
        value = examples.entries(kind.table, way, full=True)
    yield from block_entry(item.key, value)


def _group_in(kind: ListOf | Numbered) -> Group | None:
    inner: Kind = kind.item if isinstance(kind, ListOf) else kind.group
    return inner if isinstance(inner, Group) else None


def _as_item(lines: Iterator[str]) -> Iterator[str]:
    """Yield lines as a list's item: the dash stands before the first that is no comment."""
    started = False
    for line in lines:
        if started or line.startswith("#"):
            yield f"{_STEP}{_STEP}{line}" if started else f"{_STEP}{line}"
        else:
            yield f"{_STEP}- {line}"
            started = True


def _comment(words: str) -> list[str]:
    """Return words as comment lines; further lines are set in, so that none of them looks like a key."""
    lines = wrap(words, _WIDTH, subsequent_indent=_STEP, break_long_words=False, break_on_hyphens=False)
    return [f"# {line}" for line in lines]
