"""Says which program is at work, so that nothing another one made is ever used again."""

from __future__ import annotations

import hashlib
import importlib.metadata
import sys
from functools import cache
from pathlib import Path

from generator.booklets.engine import text_engine

_GENERATOR = Path(__file__).parents[1]
_LEFT_OUT = frozenset(("__pycache__",))


@cache
def program_digest() -> str:
    """Return the SHA-256 of every file of the program, every installed library and the engine that sets text.

    Whatever a page, sheet or picture is made with is in it, so that what was made before is used again only
    where making it anew would give the same bytes.
    """
    digest = hashlib.sha256(f"{sys.version}\n{text_engine()}\n".encode())
    for one in sorted(
        f"{found.metadata['Name']}=={found.version}" for found in importlib.metadata.distributions()
    ):
        digest.update(one.encode() + b"\n")
    for path in sorted(_GENERATOR.rglob("*")):
        if path.is_file() and not _LEFT_OUT & set(path.parts):
            digest.update(path.relative_to(_GENERATOR).as_posix().encode() + b"\n")
            digest.update(hashlib.sha256(path.read_bytes()).digest())
    return digest.hexdigest()
