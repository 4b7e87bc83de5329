"""Fetches the one tool for tests that neither pip nor the operating system brings: npm's HTML checker."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

from generator.start.environment import fingerprint, write_last
from generator.start.machine import Machine, NotStartedError


def html_checker(root: Path) -> Path:
    """Return where the HTML checker's Java archive lies once it is fetched."""
    return root / ".phasebook" / "tools" / "node_modules" / "vnu-jar" / "build" / "dist" / "vnu.jar"


def fetch_tools(root: Path, machine: Machine, say: Callable[[str], None]) -> None:
    """Fetch the pinned HTML checker, checked against its hash, unless the stamp says it is there.

    Raises NotStartedError with the remedy when npm cannot fetch it.
    """
    pinned, folder = root / ".locks" / "npm", root / ".phasebook" / "tools"
    stamp, wanted = folder / "stamp.txt", fingerprint(pinned / "package-lock.json")
    if stamp.exists() and stamp.read_text() == wanted and html_checker(root).exists():
        return
    say("Fetching the HTML checker for the tests.")
    folder.mkdir(parents=True, exist_ok=True)
    for name in ("package.json", "package-lock.json"):
        shutil.copyfile(pinned / name, folder / name)
    command: list[str | Path] = [
        "npm",
        "ci",
        "--prefix",
        folder,
        "--ignore-scripts",
        "--no-audit",
        "--no-fund",
        "--loglevel=error",
    ]
    if machine.run(command) or not html_checker(root).exists():
        raise NotStartedError(
            "The HTML checker could not be fetched with npm.\n"
            "Remedy: see that the network reaches the npm registry, or leave out --install to skip its tests."
        )
    write_last(stamp, wanted)
