"""Pictures are drawn again only when they can look otherwise."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path
from typing import Any

from generator.catalogue.terms import Posture
from generator.catalogue.values import Catalogue
from generator.figures.pictures import Gallery, Pictures, Shown
from generator.steps.drawn import gallery_of
from tests.content import catalogue_of
from tests.website.small_site import PROJECT

TOKENS = (PROJECT / "site_assets" / "tokens.css").read_text("utf-8")


class Pen:
    """Draws a word instead of a picture, and remembers what it was asked for."""

    def __init__(self) -> None:
        self.asked: list[str] = []

    def __call__(self, _: Catalogue, __: object, *, ids: Iterable[str], **___: Any) -> Gallery:
        """Return one picture for each id."""
        wanted = list(ids)
        self.asked += wanted
        pictures = {Shown(id_, "ankle"): Pictures((f"<svg>{id_}</svg>",), "", None) for id_ in wanted}
        return Gallery(pictures, dict.fromkeys(wanted, "ankle"))


def test_what_did_not_change_is_kept(tmp_path: Path) -> None:
    """A second build draws nothing and has the same pictures."""
    pen, catalogue = Pen(), catalogue_of()
    first = gallery_of(catalogue, TOKENS, tmp_path, 1, pen)
    assert pen.asked == ["ankle-pump", "heel-raise", "heel-raise/seated"]
    second = gallery_of(catalogue, TOKENS, tmp_path, 1, pen)
    assert len(pen.asked) == 3
    assert first == second
    assert first.default_joint["ankle-pump"] == "ankle"


def test_only_what_changed_is_drawn_again_and_what_is_stale_is_removed(tmp_path: Path) -> None:
    """Another posture gives another picture; the old one is of no use."""
    pen, catalogue = Pen(), catalogue_of()
    gallery_of(catalogue, TOKENS, tmp_path, 1, pen)
    pump = replace(catalogue.exercises["ankle-pump"], posture=Posture.SITTING)
    changed = replace(catalogue, exercises={**catalogue.exercises, "ankle-pump": pump})
    gallery_of(changed, TOKENS, tmp_path, 1, pen)
    assert pen.asked[3:] == ["ankle-pump"]
    assert len(list(tmp_path.glob("*.json"))) == 3


def test_other_colours_draw_everything_again(tmp_path: Path) -> None:
    """A picture carries the colours of the site."""
    pen, catalogue = Pen(), catalogue_of()
    gallery_of(catalogue, TOKENS, tmp_path, 1, pen)
    gallery_of(catalogue, TOKENS + "/* another */", tmp_path, 1, pen)
    assert len(pen.asked) == 6


def test_a_picture_half_written_is_drawn_again(tmp_path: Path) -> None:
    """A build killed while it wrote, or a full disk, leaves nothing that stops the next build."""
    pen, catalogue = Pen(), catalogue_of()
    first = gallery_of(catalogue, TOKENS, tmp_path, 1, pen)
    for damaged, text in zip(sorted(tmp_path.glob("*.json")), ("", '{"joint": "ank', "\x00"), strict=True):
        damaged.write_text(text)
    assert gallery_of(catalogue, TOKENS, tmp_path, 1, pen) == first
    assert len(pen.asked) == 6


def test_another_build_may_share_the_pictures(tmp_path: Path) -> None:
    """A build of other content that removes what it does not know, in the middle of ours, does no harm."""
    pen, catalogue = Pen(), catalogue_of()
    pump = replace(catalogue.exercises["ankle-pump"], posture=Posture.SITTING)
    changed = replace(catalogue, exercises={**catalogue.exercises, "ankle-pump": pump})
    first = gallery_of(catalogue, TOKENS, tmp_path, 1, pen)

    def meanwhile(*arguments: Any, **options: Any) -> Gallery:
        for file in tmp_path.glob("*.json"):
            file.unlink()
        return pen(*arguments, **options)

    second = gallery_of(changed, TOKENS, tmp_path, 1, meanwhile)
    assert second.pictures.keys() == first.pictures.keys()
