"""Draws each picture once: booklets print the same figures and marks many times, in every language.

The layout library walks through an SVG again for each place where it stands and writes its lines there in
six decimals. Here its operators are worked out once in each process; a file holds a figure once, however
often it is shown.
"""

from __future__ import annotations

import re
from hashlib import sha256
from typing import Any
from xml.etree import ElementTree

from weasyprint.images import SVGImage
from weasyprint.urls import URLFetcher

# Smaller than this, in bytes, a picture is written where it stands: a form of its own would be longer.
_SMALL = 900
# A hundredth of the unit in which our pictures are drawn is finer than any printer.
_DIGITS = 2
_MOST = 600
_KIND = "data:image/svg+xml"
# Shapes that differ by less than this are the same but for rounding.
_ALIKE = 0.005
_LINES = re.compile(rb"^([-\d. ]+) (m|l|c|re|w)$", re.MULTILINE)
_LONG = re.compile(rb"-?\d+\.\d{%d,}" % (_DIGITS + 1))


class Drawings(dict[str, Any]):
    """The pictures by address, as the library looks them up; SVG documents become drawings on first sight."""

    def __init__(self, fetcher: URLFetcher) -> None:
        super().__init__()
        self._fetcher = fetcher

    def __contains__(self, address: object) -> bool:
        """Return whether a picture is known; one inside the document is read now."""
        if super().__contains__(address):
            return True
        if not isinstance(address, str) or not address.startswith(_KIND):
            return False
        data = self._fetcher.fetch(address).read()
        try:
            tree = ElementTree.fromstring(data)
        except ElementTree.ParseError:
            # The library reads it again and complains.
            return False
        if len(self) >= _MOST:
            self.clear()
        super().__setitem__(address, Drawing(SVGImage(tree, address, self._fetcher, None), data))
        return True

    def __setitem__(self, address: str, image: Any) -> None:
        """Forget what the library read itself, so that it complains of a lost picture each time."""


class Drawing:
    """A picture as the library draws it, its operators worked out at the first time."""

    def __init__(self, image: SVGImage, data: bytes) -> None:
        self._image = image
        self._name = f"d{sha256(data).hexdigest()[:12]}"
        self._box = image._svg.get_viewbox()
        self._plain = True
        self._drawn: tuple[bytes, dict[str, Any]] | None = None

    def get_intrinsic_size(self, resolution: float, font_size: float) -> tuple[Any, Any, Any]:
        """Return width, height and their ratio, as far as the picture states them."""
        size: tuple[Any, Any, Any] = self._image.get_intrinsic_size(resolution, font_size)
        return size

    def draw(self, stream: Any, width: float, height: float, style: Any) -> None:
        """Draw the picture `width` by `height` px large into a stream of the PDF."""
        drawn = self._operators(stream) if self._keeps_shape(width, height) else None
        if drawn is None:
            self._image.draw(stream, width, height, style)
            return
        operators, states = drawn
        _, _, across, down = self._box
        with stream.stacked():
            stream.transform(a=width / across, d=height / down)
            if len(operators) < _SMALL:
                stream._resources["ExtGState"].update(states)
                stream.stream.append(operators)
                return
            forms = stream._resources["XObject"]
            if self._name not in forms:
                form = _group(stream, across, down)
                form.stream.append(operators)
                form._resources["ExtGState"].update(states)
                forms[self._name] = form
            stream.draw_x_object(self._name)

    def _keeps_shape(self, width: float, height: float) -> bool:
        """Return whether the picture is to be as wide for its height as it was drawn."""
        if not self._box or not self._box[2] or not self._box[3]:
            return False
        return bool(abs(width * self._box[3] / (height * self._box[2]) - 1) < _ALIKE)

    def _operators(self, stream: Any) -> tuple[bytes, dict[str, Any]] | None:
        """Return the operators that draw the picture in its own unit, and the transparencies they name.

        None for a picture with groups, patterns or gradients of its own, which belong to one file.
        """
        if self._drawn is None and self._plain:
            _, _, across, down = self._box
            group = _group(stream, across, down)
            self._image.draw(group, across, down, None)
            self._plain = not any(group._resources[kind] for kind in ("XObject", "Pattern", "Shading"))
            if self._plain:
                lines = (line if isinstance(line, bytes) else str(line).encode() for line in group.stream)
                self._drawn = _LINES.sub(_shorter, b"\n".join(lines)), dict(group._resources["ExtGState"])
        return self._drawn


def _group(stream: Any, across: float, down: float) -> Any:
    """Return a new form for a stream, not yet named in it."""
    group = stream.add_group(0, 0, across, down)
    del stream._resources["XObject"][group.id]
    return group


def _shorter(line: re.Match[bytes]) -> bytes:
    return _LONG.sub(_rounded, line[1]) + b" " + line[2]


def _rounded(number: re.Match[bytes]) -> bytes:
    return f"{float(number[0]):.{_DIGITS}f}".rstrip("0").rstrip(".").encode()
