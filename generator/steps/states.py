"""Brings a state of the content back: a folder, or what version control keeps of it, without a network."""

from __future__ import annotations

import io
import subprocess
import tarfile
from pathlib import Path

from generator.problems import Place, Problem, Rule

NO_CONTENT = Rule(
    "state-without-content",
    "A folder or revision holds no content.",
    "Another folder was named, or the content lay elsewhere at that time.",
    "name a folder with a clinic.yml in it, or a revision that has one",
)
NO_REVISION = Rule(
    "revision-unknown",
    "There is no such folder, and version control knows no such revision.",
    "The name is misspelt, or the revision is not in this copy.",
    "see the revisions with: git log --oneline",
)
NO_GIT = Rule(
    "no-version-control",
    "A revision is named, but the content is not under version control.",
    "The content was copied without its history, or git is not installed.",
    "name two folders instead",
)
RULES = (NO_CONTENT, NO_REVISION, NO_GIT)

_MARK = "clinic.yml"


def state_folder(named: str, content: Path, fresh: Path) -> Path | Problem:
    """Return a folder with the content in the state `named`, a folder or a revision of `content`.

    fresh: an empty folder that takes what a revision holds.
    """
    folder = Path(named)
    if folder.is_dir():
        return _content_in(folder, named)
    place = Place(named)
    top = _git(content, "rev-parse", "--show-toplevel")
    if top is None:
        return NO_GIT.at(place, f"there is no folder '{named}', and {content} has no history")
    commit = _git(content, "rev-parse", "--verify", "--quiet", "--end-of-options", f"{named}^{{commit}}")
    if commit is None:
        return NO_REVISION.at(place, f"there is no folder and no revision '{named}'")
    inside = content.resolve().relative_to(Path(top.decode().strip()).resolve()).as_posix()
    packed = _git(
        Path(top.decode().strip()), "archive", "--format=tar", commit.decode().strip(), "--", inside
    )
    if packed is None:
        return NO_CONTENT.at(place, f"revision '{named}' holds no {inside}/")
    with tarfile.open(fileobj=io.BytesIO(packed)) as tar:
        tar.extractall(fresh, filter="data")
    return _content_in(fresh / inside, named)


def _content_in(folder: Path, named: str) -> Path | Problem:
    for found in (folder, folder / "content"):
        if (found / _MARK).is_file():
            return found
    return NO_CONTENT.at(Place(named), f"'{named}' holds no {_MARK}, so it is no content")


def _git(folder: Path, *arguments: str) -> bytes | None:
    """Return what git says in a folder; None where it fails or is not there."""
    if not folder.is_dir():
        return None
    try:
        done = subprocess.run(
            ["git", "-C", str(folder), *arguments], capture_output=True, check=True, timeout=60
        )
    except (OSError, subprocess.SubprocessError):
        return None
    return done.stdout
