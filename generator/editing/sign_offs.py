"""Adds sign-offs to the ledger: the earlier ones stay as they are, and the file is whole at every moment."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from generator.catalogue.review import Ledger, SignOff
from generator.editing.files import change_files, create_file, hashes_as_read
from generator.editing.splice import with_lines
from generator.editing.yaml_text import Value, flow
from generator.problems import Problem
from generator.reading.schema_comment import schema_comment

_HEAD = f"""\
{schema_comment("reviews.yml")}
# Who read what, when, in which state. Written by: review sign. Nothing is ever deleted here.
# A fingerprint stands for the words, numbers, poses or evidence that were read; it ends when they change.
signed:
"""


def sign_offs_written(
    path: Path, ledger: Ledger, fresh: Sequence[SignOff], sources: Mapping[str, Sequence[str]]
) -> tuple[Problem, ...]:
    """Append sign-offs to the ledger at `path`; return why not, or nothing when it is done.

    ledger: as it was read. sources: the lines of all files as they were read.
    """
    values = [_typed(one) for one in fresh]
    if str(path) not in sources:
        lines = "".join(f"  - {flow(value)}\n" for value in values)
        return create_file(path, _HEAD + lines)
    edits = {path: lambda text: with_lines(text, ledger.at("signed"), values)}
    expected, problems = hashes_as_read(edits, sources)
    return problems or change_files(edits, expected)


def _typed(one: SignOff) -> Mapping[str, Value]:
    """Return a sign-off as the reader would read it."""
    optional = {
        "language": one.language,
        "document": one.document,
        "next-review": f"{one.next_review:%Y-%m}" if one.next_review else None,
        "initials": one.initials,
    }
    return {
        "item": one.item,
        "scope": one.scope.value,
        "role": one.role.value,
        "date": one.date.isoformat(),
        "fingerprint": one.fingerprint,
        **{key: value for key, value in optional.items() if value},
    }
