"""Hands our own fonts to the PDF writer, so that a booklet looks the same on every machine.

Fonts come as pip packages. Digits and the signs of a dose are set in Noto Sans, whose zero is plain: the
text face, Atkinson Hyperlegible, slashes it. ``tokens.css`` names the families.
"""

from __future__ import annotations

from dataclasses import dataclass
from importlib.util import find_spec
from pathlib import Path
from urllib.parse import quote


@dataclass(frozen=True)
class Face:
    """One font file: the family the style sheets call it by, its package and file, weight, characters."""

    family: str
    package: str
    file: str
    weight: int
    characters: str = ""


# Digits, ×, − and – : what a dose, a range or a telephone number is made of.
_DOSE_SIGNS = "U+30-39, U+D7, U+2212, U+2013"
_NOTO = "NotoSans[wdth,wght].ttf"

FACES = (
    Face("Phasebook Digits", "fontpkg_noto_sans", _NOTO, 400, _DOSE_SIGNS),
    Face("Phasebook Digits", "fontpkg_noto_sans", _NOTO, 700, _DOSE_SIGNS),
    Face("Atkinson Hyperlegible", "fontpkg_atkinson_hyperlegible", "AtkinsonHyperlegible-Regular.ttf", 400),
    Face("Atkinson Hyperlegible", "fontpkg_atkinson_hyperlegible", "AtkinsonHyperlegible-Bold.ttf", 700),
    Face("Noto Sans", "fontpkg_noto_sans", _NOTO, 400),
    Face("Noto Sans", "fontpkg_noto_sans", _NOTO, 700),
    Face("Tajawal", "fontpkg_tajawal", "Tajawal-Regular.ttf", 400),
    Face("Tajawal", "fontpkg_tajawal", "Tajawal-Bold.ttf", 700),
)

FAMILIES = tuple(dict.fromkeys(face.family for face in FACES))


def font_folders() -> tuple[Path, ...]:
    """Return the folders of the installed font packages, the only files besides ours that may be read."""
    return tuple(sorted({path.parent for face in FACES if (path := font_path(face))}))


def font_path(face: Face) -> Path | None:
    """Return the file of a face, or None where its package is not installed."""
    spec = find_spec(face.package)
    if spec is None or spec.origin is None:
        return None
    path = Path(spec.origin).resolve().parent / "files" / face.file
    return path if path.is_file() else None


def font_rules() -> str:
    """Return ``@font-face`` rules for the faces that are installed, with file addresses."""
    return "\n".join(_rule(face, path) for face in FACES if (path := font_path(face)))


def _rule(face: Face, path: Path) -> str:
    characters = f" unicode-range: {face.characters};" if face.characters else ""
    return (
        f'@font-face {{ font-family: "{face.family}"; font-weight: {face.weight};'
        f' src: url("file://{quote(path.as_posix())}");{characters} }}'
    )
