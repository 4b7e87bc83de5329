"""Makes the typefaces a reader's machine may lack: text faces of several scripts, digits with a plain zero.

The text face was made for low vision and has a slashed zero, which a patient stumbles over in a dose. So the
digits and the multiplication sign come from a second face, cut out into a small font of its own and scaled to
the same height. A list of families does the rest, in browsers and in the PDF writer alike. A PC on an
intranet may have no Arabic, Greek or Cyrillic at all, so those come along, for pages with such letters.
"""

from __future__ import annotations

import hashlib
import importlib.resources
import os
import tempfile
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from fontTools import subset, version  # type: ignore[import-untyped]  # it ships no types
from fontTools.ttLib import TTFont  # type: ignore[import-untyped]
from fontTools.varLib import instancer  # type: ignore[import-untyped]

DIGITS = "Phasebook Digits"
TEXT = "Atkinson Hyperlegible"
DIGIT_SIGNS = "0123456789×"
ARABIC = "Tajawal"
OTHER = "Phasebook Text"
# Letters that the text face lacks. A browser fetches these files only for a page that has such letters.
_ARABIC_RANGE = "U+0600-06FF, U+0750-077F, U+08A0-08FF, U+FB50-FDFF, U+FE70-FEFC"
_OTHER_RANGE = "U+0370-052F"
_OTHER_SIGNS = "".join(map(chr, range(0x0370, 0x0530)))  # Greek and Cyrillic


@dataclass(frozen=True)
class Face:
    """One cut of a family: where its outlines come from and how they are prepared.

    characters: the only ones kept; empty keeps all. axes: the settings of a variable font.
    capitals: height that capitals get, in thousandths of the type size; 0 leaves them alone.
    only: the characters that a browser asks this face for, as CSS writes them; empty is all.
    """

    family: str
    weight: int
    italic: bool
    package: str
    file: str
    characters: str = ""
    axes: tuple[tuple[str, float], ...] = ()
    capitals: int = 0
    only: str = ""


@dataclass(frozen=True)
class FontFile:
    """A prepared face as files: WOFF2 for the site, TrueType for the PDF writer."""

    face: Face
    woff2: Path
    truetype: Path


def _text(weight: int, italic: bool, file: str) -> Face:
    return Face(TEXT, weight, italic, "fontpkg_atkinson_hyperlegible", f"AtkinsonHyperlegible-{file}.ttf")


def _digits(weight: int) -> Face:
    return Face(
        DIGITS,
        weight,
        False,
        "fontpkg_noto_sans",
        "NotoSans[wdth,wght].ttf",
        characters=DIGIT_SIGNS,
        axes=(("wght", weight), ("wdth", 100)),
        capitals=668,  # the text face's capitals
    )


def _arabic(weight: int, file: str) -> Face:
    return Face(ARABIC, weight, False, "fontpkg_tajawal", f"Tajawal-{file}.ttf", only=_ARABIC_RANGE)


def _other(weight: int) -> Face:
    return Face(
        OTHER,
        weight,
        False,
        "fontpkg_noto_sans",
        "NotoSans[wdth,wght].ttf",
        characters=_OTHER_SIGNS,
        axes=(("wght", weight), ("wdth", 100)),
        only=_OTHER_RANGE,
    )


FACES: tuple[Face, ...] = (
    _text(400, False, "Regular"),
    _text(400, True, "Italic"),
    _text(700, False, "Bold"),
    _text(700, True, "BoldItalic"),
    _digits(400),
    _digits(700),
    _arabic(400, "Regular"),
    _arabic(700, "Bold"),
    _other(400),
    _other(700),
)


def prepare_fonts(cache: Path, faces: Sequence[Face] = FACES) -> tuple[FontFile, ...]:
    """Return the prepared faces, made under `cache` on first use and byte-identical on every machine."""
    cache.mkdir(parents=True, exist_ok=True)
    return tuple(_prepare(face, cache) for face in faces)


def _prepare(face: Face, cache: Path) -> FontFile:
    source = importlib.resources.files(face.package).joinpath("files", face.file).read_bytes()
    key = hashlib.sha256(source + repr((face, version)).encode()).hexdigest()[:16]
    slug = face.family.lower().replace(" ", "-") + f"-{face.weight}{'-italic' if face.italic else ''}"
    ready = FontFile(face, cache / f"{slug}.{key}.woff2", cache / f"{slug}.{key}.ttf")
    if not (ready.woff2.exists() and ready.truetype.exists()):
        with importlib.resources.as_file(
            importlib.resources.files(face.package).joinpath("files", face.file)
        ) as path:
            font = _cut(face, path)
        for flavour, target in ((None, ready.truetype), ("woff2", ready.woff2)):
            font.flavor = flavour
            # Another build may prepare the same face meanwhile: each writes a file of its own.
            handle, part = tempfile.mkstemp(suffix=".part", dir=cache)
            os.close(handle)
            font.save(part)
            Path(part).replace(target)
    return ready


def _cut(face: Face, path: Path) -> TTFont:
    """Return the face reduced to its characters, weight and height; dates are kept from the source."""
    font = TTFont(path, recalcTimestamp=False)
    if not face.characters:
        return font
    options = subset.Options(layout_features=["tnum", "kern"], name_IDs=["*"], notdef_outline=True)
    cutter = subset.Subsetter(options)
    cutter.populate(text=face.characters)
    cutter.subset(font)
    if face.axes:
        instancer.instantiateVariableFont(font, dict(face.axes), inplace=True)
    if face.capitals:
        font["head"].unitsPerEm = round(1000 * font["OS/2"].sCapHeight / face.capitals)
    _rename(font, face)
    return font


def _rename(font: TTFont, face: Face) -> None:
    """Give the cut face a name of its own, so that no installed font answers in its place."""
    style = "Bold" if face.weight >= 700 else "Regular"
    names = font["name"]
    for number, text in {
        1: face.family,
        2: style,
        3: f"{face.family} {style}",
        4: f"{face.family} {style}",
        6: f"{face.family.replace(' ', '')}-{style}",
    }.items():
        names.setName(text, number, 3, 1, 0x409)
    for number in (16, 17, 25):
        names.removeNames(nameID=number)
    font["OS/2"].usWeightClass = face.weight


def font_faces(fonts: Sequence[FontFile], address: str) -> str:
    """Return the CSS that names the faces, each at `address` followed by its file name."""
    return "".join(
        f'@font-face {{ font-family: "{font.face.family}"; font-weight: {font.face.weight}; '
        f"font-style: {'italic' if font.face.italic else 'normal'}; font-display: swap; "
        f'src: url("{address}{font.woff2.name}") format("woff2");{_asked_for(font.face)} }}\n'
        for font in fonts
    )


def _asked_for(face: Face) -> str:
    return f" unicode-range: {face.only};" if face.only else ""
