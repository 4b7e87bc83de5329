"""Measures how much of a build is made again: where nothing has changed, and after one sentence."""

from __future__ import annotations

import re
import tempfile
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path

from generator.catalogue.values import Catalogue
from generator.steps.excerpt import write_files
from generator.steps.one_build import Built, build_once


@dataclass(frozen=True)
class Again:
    """Builds in a row: from nothing, of the same content, with another sentence in one language."""

    full: Built
    unchanged: Built
    sentence: Built


def measure_again(
    files: Mapping[str, bytes], catalogue: Catalogue, root: Path, say: Callable[[str], None]
) -> Again:
    """Build a content from nothing, again, and after a change.

    Raises RuntimeError where no sentence can be changed, or a build fails: there is nothing to compare then.
    """
    name, changed = other_sentence(files, catalogue)
    with tempfile.TemporaryDirectory(prefix="phasebook-again-") as made:
        folder = Path(made)
        content = write_files(files, folder / "content")
        say("Building from nothing ...")
        full = build_once(content, folder, root)
        say("Building again ...")
        unchanged = build_once(content, folder, root)
        say(f"Building with another sentence in {name} ...")
        (content / name).write_bytes(changed)
        return Again(full, unchanged, build_once(content, folder, root))


def other_sentence(files: Mapping[str, bytes], catalogue: Catalogue) -> tuple[str, bytes]:
    """Return a file in which what an exercise is good for ends with another sign, in the last language.

    Raises RuntimeError where no exercise says it on one line.
    """
    language = catalogue.clinic.languages[-1]
    for exercise in catalogue.exercises.values():
        purpose = exercise.purpose.source
        if language == catalogue.source_language:
            name, sought = f"exercises/{exercise.id}.yml", re.escape(purpose.removesuffix("."))
        else:
            name = f"translations/{language}.po"
            sought = rf'\nmsgid "{re.escape(purpose)}"\nmsgstr "[^"\n]+?'
        text = files.get(name, b"").decode("utf-8")
        if len(found := list(re.finditer(rf"{sought}(?=\.)", text))) == 1:
            end = found[0].end()
            return name, f"{text[:end]}!{text[end + 1 :]}".encode()
    raise RuntimeError("no exercise has what it is good for on one line")
