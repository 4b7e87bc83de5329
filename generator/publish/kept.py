"""Keeps the assets of the edition before for one build, so that a page opened before it still finds its own.

Whoever has a page open while a new edition is swapped in asks for the style, script or picture that this page
names. Their names carry a fingerprint, so those of two editions lie side by side and never take each other's
place. What was kept once is not kept again.
"""

from __future__ import annotations

import shutil
from pathlib import Path

from generator.problems import Problem
from generator.publish import manifest

FOLDER = "assets/"


def keep_assets(output: Path, fresh: Path) -> tuple[str, ...]:
    """Copy into the tree `fresh` the assets that only the site `output` has; return their paths, sorted.

    A file that is not as it was built is left behind. OSError where the system refuses to read or write.
    """
    before = manifest.read(output)
    if isinstance(before, Problem):
        return ()
    kept = []
    for path in sorted(set(before.files) - set(before.kept)):
        source, target = output / path, fresh / path
        if not path.startswith(FOLDER) or target.exists() or source.is_symlink() or not source.is_file():
            continue
        if manifest.checksum(source) == before.files[path]:
            target.parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(source, target)
            kept.append(path)
    return tuple(kept)
