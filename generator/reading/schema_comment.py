"""Knows the comment by which an editor's program finds a content file's schema, and says when it is wrong.

Common editors complete and check while one types, when the file names its schema in a comment.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from generator.problems import Place, Problem
from generator.reading import rules

# Begins with a dot, so that it is no part of the content.
FOLDER = ".schemas"
_COMMENT = re.compile(r"^[ \t]*#[ \t]*yaml-language-server:[ \t]*\$schema=[ \t]*(\S*)", re.MULTILINE)


def schema_file(kind: str) -> str:
    """Return the name of the schema of a shared file (``clinic.yml``) or a folder's files (``exercises``)."""
    return f"{kind.removesuffix('.yml')}.schema.json"


def schema_comment(name: str) -> str:
    """Return the comment of a content file, such as ``exercises/clam.yml``, seen from its own place."""
    folder, _, base = name.rpartition("/")
    up = "../" if folder else ""
    return f"# yaml-language-server: $schema={up}{FOLDER}/{schema_file(folder or base)}"


def comment_problems(path: str, name: str, text: str) -> Iterator[Problem]:
    """Yield a finding for each comment that names the schema of another kind of file."""
    folder, _, base = name.rpartition("/")
    wanted = schema_file(folder or base)
    for match in _COMMENT.finditer(text):
        if match[1].rpartition("/")[2] != wanted:
            start = text.rfind("\n", 0, match.start(1)) + 1
            place = Place(path, text.count("\n", 0, match.start(1)) + 1, match.start(1) - start + 1)
            message = f"the file names the schema '{match[1]}', its own is '{wanted}'"
            yield rules.WRONG_SCHEMA.at(place, message, f"write: {schema_comment(name)}")
