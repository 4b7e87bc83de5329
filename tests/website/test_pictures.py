"""Pictures stand where they help, with words for those who cannot see them; nothing moves unasked.

Sources: WCAG 2.2 success criteria 1.1.1 (text alternatives) and 2.2.2 (what moves can be stopped).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

import pytest

from generator.website.figure_files import FigureFact, write_figures
from generator.website.pages import write_pages
from tests.content import FILES
from tests.website.small_site import (
    GALLERY,
    HEEL_RAISE,
    PHASE_1,
    PHASE_2,
    STAIRS,
    START,
    real_life,
    site_inputs,
)
from tests.website.written import Written


@pytest.fixture(scope="module")
def figures(tmp_path_factory: pytest.TempPathFactory) -> Mapping[str, FigureFact]:
    """Write the pictures of the small site."""
    return write_figures(GALLERY, tmp_path_factory.mktemp("assets"))


@pytest.fixture(scope="module")
def drawn(figures: Mapping[str, FigureFact], tmp_path_factory: pytest.TempPathFactory) -> Written:
    """Write English pages with pictures of some items."""
    folder = tmp_path_factory.mktemp("drawn")
    one = replace(site_inputs(real_life(FILES), ("en",))[0], figures=figures)
    return Written(folder, write_pages(one, folder))


def test_each_picture_is_written_once_with_its_fingerprint(tmp_path: Path) -> None:
    """All languages share it; a changed picture has another name."""
    facts = write_figures(GALLERY, tmp_path)
    fact = facts["heel-raise"]
    assert (tmp_path / fact.stills[0]).read_text("utf-8") == START + "\n"
    assert (fact.width, fact.height) == (40, 20)
    assert fact.stills[0].startswith("assets/figures/heel-raise-1.")
    assert len({*fact.stills, fact.moving}) == 3
    assert set(facts) == {"heel-raise", "heel-raise/seated", "stairs"}


def test_start_and_finish_are_shown_with_what_they_show(drawn: Written) -> None:
    """The words are the start position and what the last picture shows (WCAG 2.2, 1.1.1)."""
    pictures = drawn.page(HEEL_RAISE).select(".pb-sheet__figures figure")
    assert [picture.get_text(strip=True) for picture in pictures] == ["Start", "Finish"]
    assert [picture.img["alt"] for picture in pictures if picture.img] == [
        "Stand with your feet as wide as your hips.",
        "Push up onto your toes.",
    ]
    assert pictures[0].img is not None
    assert (pictures[0].img["width"], pictures[0].img["height"]) == ("40", "20")


def test_the_movement_is_a_file_to_open_until_a_script_offers_to_play_it(drawn: Written) -> None:
    """Nothing moves unasked, with or without a script (WCAG 2.2, 2.2.2)."""
    moving = drawn.page(HEEL_RAISE).select(".pb-moving")
    assert len(moving) == 1
    assert moving[0].select("img") == []
    assert "-moving." in str(moving[0].select("a")[0]["href"])


def test_a_form_with_a_picture_of_its_own_shows_it(drawn: Written) -> None:
    """Beside its words, and a position has neither start nor finish."""
    form = drawn.page(HEEL_RAISE).select(".pb-pair .pb-figures")
    assert len(form) == 1
    assert form[0].get_text(strip=True) == ""


def test_where_nothing_was_drawn_the_page_says_so(drawn: Written, tmp_path: Path) -> None:
    """Unless nothing at all was drawn: then nobody misses a picture."""
    words = "There is no picture of this yet."
    assert words in drawn.words("exercises/ankle-pump.html")
    without = Written(tmp_path, write_pages(site_inputs(FILES, ("en",))[0], tmp_path))
    assert words not in without.words("exercises/ankle-pump.html")


def test_a_session_shows_start_and_finish_of_each_exercise(drawn: Written) -> None:
    """Both are said in words for those who cannot see them; where nothing was drawn there is no gap."""
    both = drawn.page(PHASE_2).select(".pb-do__stills figure")
    assert [figure.get_text() for figure in both] == ["Start", "Finish"]
    assert all(figure.img is not None and figure.img["alt"] for figure in both)
    assert drawn.page(PHASE_1).select(".pb-do__figure") == []


def test_daily_life_shows_its_picture(drawn: Written) -> None:
    """With its name as words."""
    pictures = drawn.page(STAIRS).select(".pb-figures img")
    assert [picture["alt"] for picture in pictures] == ["Stairs one at a time"]
