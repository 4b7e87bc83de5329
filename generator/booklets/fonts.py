"""Hands our own fonts to the PDF writer, so that a booklet looks the same on every machine.

Fonts come as pip packages. Digits and the signs of a dose are set in Noto Sans, whose zero is plain: the
text face, Atkinson Hyperlegible, slashes it. ``tokens.css`` names the families.
"""

from __future__ import annotations

from base64 import b64encode
from dataclasses import dataclass
from functools import cache
from importlib.util import find_spec
from io import BytesIO
from pathlib import Path
from urllib.parse import quote

from fontTools.subset import Options, Subsetter  # type: ignore[import-untyped]  # it ships no types
from fontTools.ttLib import TTFont  # type: ignore[import-untyped]
from fontTools.varLib.instancer import instantiateVariableFont  # type: ignore[import-untyped]


@dataclass(frozen=True)
class Face:
    """One font file: the family the style sheets call it by, its package and file, weight, characters.

    characters: the face is cut down to these; none means that it stays whole.
    """

    family: str
    package: str
    file: str
    weight: int
    characters: str = ""


# What a dose, a range or a telephone number is made of; a line that begins with a blank takes its first face.
_DOSE_SIGNS = "0123456789×−– \u00a0"
TEXT_FACE = "Atkinson Hyperlegible"
# Where a font file states how high its lines are: tables and fields of the OpenType specification.
_HEIGHTS = tuple(
    (table, key)
    for table, keys in (
        ("hhea", ("ascent", "descent", "lineGap")),
        ("OS/2", ("sTypoAscender", "sTypoDescender", "sTypoLineGap", "usWinAscent", "usWinDescent")),
    )
    for key in keys
)
_NOTO = "NotoSans[wdth,wght].ttf"

FACES = (
    Face("Phasebook Digits", "fontpkg_noto_sans", _NOTO, 400, _DOSE_SIGNS),
    Face("Phasebook Digits", "fontpkg_noto_sans", _NOTO, 700, _DOSE_SIGNS),
    Face(TEXT_FACE, "fontpkg_atkinson_hyperlegible", "AtkinsonHyperlegible-Regular.ttf", 400),
    Face(TEXT_FACE, "fontpkg_atkinson_hyperlegible", "AtkinsonHyperlegible-Bold.ttf", 700),
    # By its own name this face would be taken for the digits, which are cut from the same file.
    Face("Phasebook Text", "fontpkg_noto_sans", _NOTO, 400),
    Face("Phasebook Text", "fontpkg_noto_sans", _NOTO, 700),
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


@cache
def drawn() -> frozenset[int]:
    """Return the code points that the installed faces can draw, those for digits alone left aside."""
    found: set[int] = set()
    for path in {path for face in FACES if not face.characters and (path := font_path(face))}:
        with TTFont(path, lazy=True) as font:
            found |= font.getBestCmap().keys()
    return frozenset(found)


def font_rules() -> str:
    """Return ``@font-face`` rules for the faces that are installed, with file addresses."""
    return "\n".join(_rule(face, path) for face in FACES if (path := font_path(face)))


def _rule(face: Face, path: Path) -> str:
    source = f"file://{quote(path.as_posix())}"
    if face.characters:
        source = _cut(path, face.characters, face.weight)
    return f'@font-face {{ font-family: "{face.family}"; font-weight: {face.weight}; src: url("{source}"); }}'


def _set_as_high(font: TTFont) -> None:
    """Give a face the height of the text face: else each line with a digit or a blank is taller."""
    text = font_path(next(face for face in FACES if face.family == TEXT_FACE))
    if text is None:
        return
    with TTFont(text) as other:
        scale = font["head"].unitsPerEm / other["head"].unitsPerEm
        for table, key in _HEIGHTS:
            setattr(font[table], key, round(getattr(other[table], key) * scale))


@cache
def _cut(path: Path, characters: str, weight: int) -> str:
    """Return a variable face at one weight with nothing but `characters`, as a data address.

    A unicode-range would do in a browser. Here the list of faces is trimmed by what their files hold: a
    whole file in the first place hides every later one that has no further letters, Cyrillic included.
    """
    font = TTFont(BytesIO(_subset(path, characters)), recalcTimestamp=False)
    instantiateVariableFont(font, {"wght": weight, "wdth": 100}, inplace=True)
    _set_as_high(font)
    return f"data:font/ttf;base64,{b64encode(_saved(font)).decode('ascii')}"


@cache
def _subset(path: Path, characters: str) -> bytes:
    """Return a variable face with nothing but `characters`; reading the whole face takes half a second."""
    font = TTFont(path, recalcTimestamp=False)
    cutter = Subsetter(Options(layout_features=["tnum", "kern"], notdef_outline=True))
    cutter.populate(text=characters)
    cutter.subset(font)
    return _saved(font)


def _saved(font: TTFont) -> bytes:
    buffer = BytesIO()
    font.save(buffer)
    return buffer.getvalue()
