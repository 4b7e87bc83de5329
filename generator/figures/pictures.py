"""Holds finished pictures as text, for the rooms that set them into pages and sheets."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True)
class Pictures:
    """All pictures of one movement, each an SVG document.

    stills: one for each key pose, start first, in one box and one scale. strip: all of them side by side.
    moving: the movement played three times; None where there is only one pose.
    """

    stills: tuple[str, ...]
    strip: str
    moving: str | None


@dataclass(frozen=True)
class Shown:
    """Which pictures: of what, with which operated joint ringed (its English word, or none), which side."""

    item: str
    joint: str = ""
    left: bool = False


@dataclass(frozen=True)
class Gallery:
    """The pictures of a catalogue; what has none is in `without`, and is published as text.

    default_joint: by id of all that was to be drawn, the joint to ring where no programme is named: that of
    all programmes that use it. Only with this joint is a movement there to play.
    """

    pictures: Mapping[Shown, Pictures] = field(default_factory=dict)
    default_joint: Mapping[str, str] = field(default_factory=dict)
    without: tuple[str, ...] = ()

    def of(self, item: str, joint: str | None = None, *, left: bool = False) -> Pictures | None:
        """Return an item's pictures, ``exercise/variation`` for a variation; None where it has none.

        A variation without poses looks like its exercise. joint: of the programme they are shown in; None
        where no programme is named.
        """
        name = item.partition("/")[0]
        ringed = self.default_joint.get(item, "") if joint is None else joint
        return self.pictures.get(Shown(item, ringed, left)) or self.pictures.get(Shown(name, ringed, left))
