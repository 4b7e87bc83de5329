"""Measures how cost and memory grow with the catalogue, on copies of one of its own programmes."""

from __future__ import annotations

import tempfile
import time
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from generator.catalogue.values import Catalogue
from generator.pipeline import check_catalogue
from generator.reading.nodes import Entries, Items, Node, Scalar, parse
from generator.steps.excerpt import excerpt, write_files
from generator.steps.one_build import Built, build_once

_COPIED = ("exercises", "programmes", "daily-life")
# Under these keys stand words of the trade and things to draw, some of them spelt like an id.
_NO_IDS = frozenset({"role", "figure"})


@dataclass(frozen=True)
class Grown:
    """A catalogue of `times` programmes: its build from nothing, and seconds of processor to check it."""

    times: int
    built: Built
    check: float


def measure_growth(
    files: Mapping[str, bytes],
    catalogue: Catalogue,
    sizes: Sequence[int],
    root: Path,
    say: Callable[[str], None],
) -> tuple[Grown, ...]:
    """Build catalogues of so many copies of the shortest programme, in the editor's language alone.

    Raises RuntimeError where a build fails.
    """
    small = excerpt(files, catalogue)
    return tuple(_grown(copied(small, times), times, root, say) for times in sizes)


def _grown(files: Mapping[str, bytes], times: int, root: Path, say: Callable[[str], None]) -> Grown:
    say(f"Building {times} programmes ...")
    with tempfile.TemporaryDirectory(prefix="phasebook-growth-") as folder:
        content = write_files(files, Path(folder) / "content")
        started = time.process_time()
        check_catalogue(content)
        check = time.process_time() - started
        return Grown(times, build_once(content, Path(folder), root), check)


def copied(files: Mapping[str, bytes], times: int) -> dict[str, bytes]:
    """Return the files with `times` of each programme, exercise and activity, each naming its own."""
    own = frozenset(name.rpartition("/")[2].removesuffix(".yml") for name in files if _is_copied(name))
    found = dict(files)
    for number in range(2, times + 1):
        for name, data in files.items():
            if _is_copied(name):
                found[f"{name.removesuffix('.yml')}-{number}.yml"] = _renamed(name, data, own, f"-{number}")
    return found


def _is_copied(name: str) -> bool:
    return name.partition("/")[0] in _COPIED


def _renamed(name: str, data: bytes, own: frozenset[str], more: str) -> bytes:
    """Return a file in which every id of `own` is longer by `more`."""
    text = data.decode("utf-8")
    root, _ = parse(name, text)
    lines = text.split("\n")
    spots = [one for one in _scalars(root) if one.text.partition("/")[0] in own]
    for spot in sorted(spots, key=lambda one: (one.place.line, one.place.column), reverse=True):
        id_, line = spot.text.partition("/")[0], lines[spot.place.line - 1]
        end = line.index(id_, spot.place.column - 1) + len(id_)
        lines[spot.place.line - 1] = line[:end] + more + line[end:]
    return "\n".join(lines).encode()


def _scalars(node: Node | None) -> Iterator[Scalar]:
    if isinstance(node, Scalar):
        yield node
    elif isinstance(node, Items):
        for item in node.items:
            yield from _scalars(item)
    elif isinstance(node, Entries):
        for key, value in node.entries:
            if key.text not in _NO_IDS:
                yield key
                yield from _scalars(value)
