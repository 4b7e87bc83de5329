"""Takes a figure's colours from the look's tokens, so that a picture never has a colour of its own."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields


@dataclass(frozen=True)
class Palette:
    """Colours as CSS writes them; each is the token of the same name after ``--pb-figure-``.

    line: outlines. skin, shirt, shorts, hair: the body; `far` ones lighter, for limbs behind.
    work: the limb that works (`work_far`: away from the viewer); work_shade: its hatching. ground: what shows
    behind the picture. prop, prop_side, prop_line: things around. band: elastic bands.
    """

    line: str
    far_line: str
    skin: str
    skin_far: str
    shirt: str
    shirt_far: str
    shorts: str
    shorts_far: str
    hair: str
    work: str
    work_far: str
    work_shade: str
    ground: str
    prop: str
    prop_side: str
    prop_line: str
    band: str

    @classmethod
    def from_tokens(cls, tokens: Mapping[str, str]) -> Palette:
        """Return the palette held by tokens such as ``--pb-figure-skin-far``; a missing one is a KeyError."""
        return cls(
            **{item.name: tokens["--pb-figure-" + item.name.replace("_", "-")] for item in fields(cls)}
        )
