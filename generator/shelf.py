"""Keeps finished work between builds: what would come out the same is taken, never made twice.

Work is asked for by all that it depends on. What is taken is compared with its own fingerprint first, so a
torn or changed file counts as not there. A shelf may be deleted at any time; several builds may share one.
"""

from __future__ import annotations

import hashlib
import json
import os
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

MOST_BYTES = 1_500_000_000
"""What a shelf holds at most; the longest unused goes first."""

_FORMAT = 1
_DIGEST = 64


@dataclass(frozen=True)
class Shelf:
    """A folder of finished work.

    program: fingerprint of everything that makes it. anew: nothing is taken, all is made and put again.
    """

    folder: Path
    program: str
    anew: bool = False

    def name(self, *parts: Any) -> str:
        """Return the name of a work by all that it depends on, in JSON types."""
        text = json.dumps([_FORMAT, self.program, *parts], ensure_ascii=False)
        return hashlib.sha256(text.encode("utf-8")).hexdigest()

    def take(self, name: str) -> bytes | None:
        """Return a work; None where it is not kept, or not whole."""
        kept = self.folder / name
        if self.anew:
            return None
        try:
            content = kept.read_bytes()
            os.utime(kept)
        except OSError:
            return None
        digest, work = content[:_DIGEST], content[_DIGEST:]
        return work if digest == _digest(work) else None

    def put(self, name: str, work: bytes) -> None:
        """Keep a work; it is there whole or not at all, also when the build is killed meanwhile."""
        self.folder.mkdir(parents=True, exist_ok=True)
        handle, part = tempfile.mkstemp(suffix=".part", dir=self.folder)
        try:
            with os.fdopen(handle, "wb") as stream:
                stream.write(_digest(work) + work)
            Path(part).replace(self.folder / name)
        finally:
            # On a full disk the part would take the room that is left.
            Path(part).unlink(missing_ok=True)

    def tidy(self, most: int = MOST_BYTES) -> None:
        """Remove what was longest unused until at most `most` bytes are kept."""
        room = most
        for _, size, path in sorted(self._listed(), reverse=True):
            room -= size
            if room < 0:
                # Another build may tidy the same shelf: what is gone already is no matter.
                path.unlink(missing_ok=True)

    def _listed(self) -> Iterator[tuple[int, int, Path]]:
        """Yield when each work was last used, its size and its file."""
        for path in self.folder.iterdir() if self.folder.is_dir() else ():
            try:
                seen = path.stat()
            except FileNotFoundError:
                continue
            yield seen.st_mtime_ns, seen.st_size, path


def _digest(work: bytes) -> bytes:
    return hashlib.sha256(work).hexdigest().encode("ascii")
