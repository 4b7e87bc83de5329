"""Refuses output folders whose replacement would delete something that no build made."""

from __future__ import annotations

import os
from pathlib import Path

from generator.problems import Place, Problem
from generator.publish import manifest
from generator.publish.refusals import (
    OUTPUT_ADDITIONS,
    OUTPUT_DANGEROUS,
    OUTPUT_FOREIGN,
    OUTPUT_OVER_CONTENT,
    OUTPUT_UNUSABLE,
    Refused,
)

_SHOWN = 5
# File managers drop these wherever they look; nobody misses them.
_LITTER = frozenset({".DS_Store", "Thumbs.db", "desktop.ini"})


def refuse_dangerous(output: Path, content: Path) -> Path:
    """Return the real path of `output`, or raise Refused where replacing it could never be right.

    Nothing is read from or written to the folder itself.
    """
    target = output.resolve()
    place = Place(str(output))
    if target == Path(target.anchor):
        raise Refused(OUTPUT_DANGEROUS.at(place, "this is the root of the disk"))
    if any(_within(home, target) for home in _homes()):
        raise Refused(OUTPUT_DANGEROUS.at(place, "this is a home folder or contains one"))
    source = content.resolve()
    if _within(target, source):
        raise Refused(OUTPUT_OVER_CONTENT.at(place, "the output lies inside the content folder"))
    if _within(source, target):
        raise Refused(OUTPUT_OVER_CONTENT.at(place, "the output contains the content folder"))
    if not target.parent.is_dir():
        raise Refused(OUTPUT_UNUSABLE.at(place, f"the folder {target.parent} does not exist"))
    if target.exists() and not target.is_dir():
        raise Refused(OUTPUT_UNUSABLE.at(place, "this is a file, not a folder"))
    if os.path.ismount(target):
        raise Refused(OUTPUT_UNUSABLE.at(place, "this is the top of a mounted disk"))
    return target


def refuse_foreign(target: Path) -> None:
    """Raise Refused unless `target` is absent, empty, or a site of ours without additions by others."""
    if not target.exists():
        return
    present = sorted(path for path, _ in manifest.entries(target) if path.rsplit("/", 1)[-1] not in _LITTER)
    if not present:
        return
    place = Place(str(target))
    known = manifest.read(target)
    if isinstance(known, Problem):
        raise Refused(OUTPUT_FOREIGN.at(place, f"the folder is not empty and not ours ({known.message})"))
    additions = [path for path in present if path != manifest.NAME and path not in known.files]
    if additions:
        more = f" and {len(additions) - _SHOWN} more" if len(additions) > _SHOWN else ""
        names = ", ".join(additions[:_SHOWN]).encode("utf-8", "replace").decode("utf-8")
        raise Refused(OUTPUT_ADDITIONS.at(place, f"no build wrote {names}{more}"))


def _homes() -> tuple[Path, ...]:
    """Return the home folder of whoever runs the build, as the environment and the system name it."""
    named = [os.environ.get("HOME"), os.environ.get("USERPROFILE")]
    named.append(os.path.expanduser(f"~{os.environ.get('SUDO_USER', '')}"))  # noqa: PTH111 - needs ~name
    return tuple(Path(home).resolve() for home in named if home and Path(home).is_absolute())


def _within(inner: Path, outer: Path) -> bool:
    """Return whether `inner` is `outer` or lies below it, also where two spellings name one folder."""
    chain = (inner, *inner.parents)
    return outer in chain or any(_same(folder, outer) for folder in chain)


def _same(one: Path, other: Path) -> bool:
    """Return whether two existing paths are one folder."""
    try:
        return one.samefile(other)
    except OSError:
        return False
