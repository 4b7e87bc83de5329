"""Builds a site beside the old one and replaces the old one only when everything is done.

Beside the output folder ``<name>`` live, while a build runs, the lock ``.<name>.lock`` and a workshop
``.<name>.staging-<random>`` that holds the growing site. Nothing else is ever created or removed there.
"""

from __future__ import annotations

import errno
import json
import os
import re
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, replace
from pathlib import Path

from generator.problems import Place
from generator.publish import manifest
from generator.publish.kept import keep_assets
from generator.publish.lock import locked
from generator.publish.places import refuse_dangerous, refuse_foreign
from generator.publish.refusals import NOT_A_FILE, Refused, from_system
from generator.publish.swap import SITE, repair, swap

MARKER = "phasebook-staging.json"
_OF_THE_DISK = frozenset(
    (errno.ENOSPC, errno.EDQUOT, errno.EFBIG, errno.EROFS, errno.EACCES, errno.EPERM, errno.EIO)
)


@dataclass(frozen=True)
class Stage:
    """A site in the making: write below `root`, then `publish`."""

    root: Path
    """The folder that becomes the site; empty at first."""
    workshop: Path
    """The folder around it, ours alone, removed at the end."""
    output: Path
    """The folder that patients read."""

    def publish(self, *, at_once: bool = True) -> None:
        """Write the manifest and put the new site in the place of the old one.

        Refused when the tree holds something else than plain files or the system refuses to write;
        the old site is then untouched. `at_once` false forces the way of two renames.
        """
        _refuse_odd_entries(self.root)
        try:
            kept = keep_assets(self.output, self.root)
            _make_readable(self.root)
            text = manifest.to_text(replace(manifest.describe(self.root), kept=kept))
            listing = self.root / manifest.NAME
            listing.write_text(text, encoding="utf-8", newline="\n")
            listing.chmod(0o644)
            # After a power cut the new name must not point at files that never reached the disk.
            os.sync()
            swap(self.workshop, self.output, at_once=at_once)
        except OSError as error:
            raise from_system(error, self.output) from error


@contextmanager
def open_stage(output: Path, content: Path) -> Iterator[Stage]:
    """Yield an empty stage for `output`; on leaving, published or not, the stage is gone.

    Refused when the output is dangerous, foreign or not writable; Busy when another build holds it.
    Leftovers of a killed build are repaired and removed first. Leaving without `Stage.publish` leaves
    the old site byte for byte.
    """
    target = refuse_dangerous(output, content)
    with locked(target):
        try:
            clean(target)
            refuse_foreign(target)
            stage = _prepare(target)
        except OSError as error:
            raise from_system(error, target) from error
        try:
            yield stage
        except OSError as error:
            # A full or read-only disk stops a build anywhere; any other error is a fault of ours.
            if error.errno not in _OF_THE_DISK:
                raise
            raise from_system(error, target) from error
        finally:
            # The swap is done or never happens: what cannot be removed now waits for the next start.
            with suppress(OSError):
                _remove(stage.workshop)


def clean(output: Path) -> None:
    """Repair and remove what killed builds left beside `output`; the lock must be held.

    Only folders that carry our name pattern and our marker are touched, and those of that name with
    nothing or half a marker inside, which a build killed in its first instant leaves.
    """
    pattern = re.compile(re.escape(_prefix(output)) + r"[a-z0-9_]{8}")
    for workshop in sorted(output.parent.iterdir()):
        if not pattern.fullmatch(workshop.name) or workshop.is_symlink() or not workshop.is_dir():
            continue
        if _is_ours(workshop, output):
            repair(workshop, output)
            _remove(workshop)
        elif all(entry.name == MARKER for entry in workshop.iterdir()):
            shutil.rmtree(workshop)


def _remove(workshop: Path) -> None:
    """Remove a workshop, its marker last: a build killed meanwhile leaves something still known as ours."""
    for entry in workshop.iterdir():
        if entry.is_dir():
            shutil.rmtree(entry)
        elif entry.name != MARKER:
            entry.unlink()
    shutil.rmtree(workshop)


def _prefix(output: Path) -> str:
    """Return how the name of every workshop of `output` begins."""
    return f".{output.name}.staging-"


def _prepare(output: Path) -> Stage:
    """Create the marked workshop with the empty, world-readable site folder."""
    workshop = Path(tempfile.mkdtemp(prefix=_prefix(output), dir=output.parent))
    marker = json.dumps({"format": 1, "output": output.name}) + "\n"
    (workshop / MARKER).write_text(marker, encoding="utf-8", newline="\n")
    root = workshop / SITE
    root.mkdir()
    root.chmod(0o755)
    return Stage(root, workshop, output)


def _is_ours(workshop: Path, output: Path) -> bool:
    """Return whether a folder carries the marker of a build of `output`."""
    try:
        marker = json.loads((workshop / MARKER).read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return False
    return bool(marker == {"format": 1, "output": output.name})


def _refuse_odd_entries(root: Path) -> None:
    """Refuse a tree with links, devices or names that a manifest cannot hold."""
    for path, entry in manifest.entries(root):
        if not entry.is_file(follow_symlinks=False) or not manifest.stays_inside(path):
            shown = path.encode("utf-8", "replace").decode("utf-8")
            raise Refused(NOT_A_FILE.at(Place(shown), "this is not a plain file with a portable name"))


def _make_readable(root: Path) -> None:
    """Let everybody read the tree, whatever umask the build ran under: a web server is another user."""
    root.chmod(0o755)
    for folder, folders, files in os.walk(root):
        for name in folders:
            Path(folder, name).chmod(0o755)
        for name in files:
            Path(folder, name).chmod(0o644)
