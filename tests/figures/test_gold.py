"""A handful of pictures stay as they were when somebody last looked at them."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.body.motion import move
from generator.body.pose import Side
from generator.figures.props import Band, Chair, Floor, Limit, Mat, Pillow, Prop, Step, Worktop
from generator.figures.scene import Scene, draw, drawn_strip
from tests.body.movements import MOVEMENTS
from tests.figures.gold import compare, difference
from tests.figures.palettes import PALETTE

AROUND: dict[str, tuple[Prop, ...]] = {
    "bridge": (Mat(), Pillow()),
    "side-lying": (Mat(), Pillow()),
    "squat": (Floor(), Worktop(), Band(Limit.THIGHS)),
    "sit to stand": (Floor(), Chair()),
    "step up": (Floor(), Step()),
    "knee straightening": (Floor(), Chair()),
}


@pytest.mark.parametrize("name", MOVEMENTS)
def test_a_picture_is_as_it_was(name: str, tmp_path: Path) -> None:
    """A drawing equals its gold picture; where it does not, a page shows both."""
    scene = Scene(move(MOVEMENTS[name]), AROUND[name], frozenset({(Side.OPERATED, "leg")}))
    assert (
        compare(name.replace(" ", "-"), drawn_strip(draw(scene, PALETTE), left=False, fine=1), tmp_path) == ""
    )


def test_the_comparer_sees_a_moved_point_a_lost_shape_and_a_new_colour() -> None:
    """The comparer can fail: a point moved by a unit, a path gone, a colour changed are all told."""
    gold = '<path d="M0 0L10 10" fill="#00aa00"/><path d="M1 1L2 2"/>'
    assert difference(gold, gold) == ""
    assert difference(gold, gold.replace("10 10", "10 10.1")) == ""
    assert "differ by up to 1" in difference(gold, gold.replace("10 10", "10 11"))
    assert difference(gold, gold.replace('<path d="M1 1L2 2"/>', "")) != ""
    assert difference(gold, gold.replace("00aa00", "00bb00")) != ""


def test_both_pictures_are_shown_on_failure(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The page of a failed comparison holds the drawn picture."""
    monkeypatch.delenv("PHASEBOOK_ACCEPT", raising=False)
    message = compare("no-such-gold", "<svg>drawn</svg>", tmp_path)
    assert str(tmp_path) in message
    assert "<svg>drawn</svg>" in (tmp_path / "no-such-gold.html").read_text(encoding="utf-8")
