"""Keeps finished pictures between builds, so that only what was changed is drawn again."""

from __future__ import annotations

import hashlib
import json
import os
import tempfile
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any

from generator.body.from_catalogue import Posed, posed_items
from generator.catalogue.fingerprints import fingerprint
from generator.catalogue.values import Catalogue
from generator.figures.palette import Palette
from generator.figures.pictures import Gallery, Pictures, Shown
from generator.steps.figures import draw_all, palette_of

Draw = Callable[..., Gallery]
# The right side is operated in every picture but those of a booklet for one patient.
SIDES = (False,)
_GENERATOR = Path(__file__).parents[1]
_DRAWING = ("body/*.py", "figures/*.py", "steps/figures.py", "catalogue/pose.py", "catalogue/terms.py")


def gallery_of(
    catalogue: Catalogue, tokens: str, cache: Path, workers: int, draw: Draw = draw_all
) -> Gallery:
    """Return the pictures of a catalogue; those that `cache` holds are not drawn again.

    tokens: the style sheet with the colours. A picture counts as the same while its poses, the programmes
    that use it, the colours and the program that draws it are the same.
    """
    cache.mkdir(parents=True, exist_ok=True)
    files = {key: cache / f"{code}.json" for key, code in _codes(catalogue, tokens).items()}
    # Another build may share the cache and remove what it does not know: nothing is read twice.
    known = {item: kept for item, file in files.items() if (kept := _kept(file)) is not None}
    missing = [item for item in files if item not in known]
    if missing:
        known |= _draw(catalogue, palette_of(tokens), missing, files, workers, draw)
        known = {item: known[item] for item in files}
    for stale in set(cache.glob("*.json")) - set(files.values()):
        stale.unlink(missing_ok=True)
    pictures = {key: found for item, kept in known.items() for key, found in _pictures(item, kept)}
    drawn = {shown.item for shown in pictures}
    return Gallery(
        pictures,
        {item: kept["joint"] for item, kept in known.items()},
        # A variation without poses looks like its exercise.
        tuple(item for item in known if not drawn & {item, item.partition("/")[0]}),
    )


def _codes(catalogue: Catalogue, tokens: str) -> Mapping[str, str]:
    """Return for each item a code that changes when its pictures may change."""
    program = hashlib.sha256(tokens.encode("utf-8"))
    for pattern in _DRAWING:
        for path in sorted(_GENERATOR.glob(pattern)):
            program.update(path.read_bytes())
    return {item.id: _code(catalogue, item, program.hexdigest()) for item in posed_items(catalogue)}


def _code(catalogue: Catalogue, item: Posed, program: str) -> str:
    name = item.id.partition("/")[0]
    joints = [
        programme.joint.value
        for programme in catalogue.programmes.values()
        if any(
            name in phase.daily_life or any(use.use == name for use in phase.uses)
            for phase in programme.phases
        )
    ]
    shown = (item.id, item.specs, item.figure, item.posture, item.operated_leg, item.other_leg)
    return fingerprint(program, *shown, joints, SIDES)


def _draw(
    catalogue: Catalogue,
    palette: Palette,
    missing: list[str],
    files: Mapping[str, Path],
    workers: int,
    draw: Draw,
) -> dict[str, Any]:
    """Draw what is missing, keep it, and return it as it is kept."""
    gallery = draw(catalogue, palette, ids=missing, lefts=SIDES, workers=workers)
    kept: dict[str, list[dict[str, Any]]] = {item: [] for item in missing}
    for shown, found in gallery.pictures.items():
        own = {"joint": shown.joint, "left": shown.left}
        kept[shown.item].append({**own, "stills": found.stills, "strip": found.strip, "moving": found.moving})
    drawn = {item: {"joint": gallery.default_joint.get(item, ""), "pictures": kept[item]} for item in missing}
    for item, value in drawn.items():
        _keep(files[item], json.dumps(value, ensure_ascii=False))
    return drawn


def _kept(file: Path) -> Any:
    """Return what is kept in a file, or None where nothing whole is."""
    try:
        return json.loads(file.read_text("utf-8"))
    except (OSError, ValueError):
        return None


def _keep(file: Path, text: str) -> None:
    """Write a file that is there whole or not at all, also when the build is killed meanwhile."""
    handle, name = tempfile.mkstemp(prefix=file.stem[:12], suffix=".part", dir=file.parent)
    with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as part:
        part.write(text)
    Path(name).replace(file)


def _pictures(item: str, kept: Mapping[str, Any]) -> Iterator[tuple[Shown, Pictures]]:
    for one in kept["pictures"]:
        found = Pictures(tuple(one["stills"]), one["strip"], one["moving"])
        yield Shown(item, one["joint"], one["left"]), found
