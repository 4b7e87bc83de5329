"""Pages are printed by a real browser, and what came out on paper is read back sheet by sheet.

What each sheet must carry is common practice, no source. PDFium reads the text of the sheets.
"""

from __future__ import annotations

import itertools
from pathlib import Path
from typing import Any

import pypdfium2
import pytest

from tests.website.small_site import EVIDENCE, HEEL_RAISE, ORDER, PATIENT_2, PHASE_2, PREFIX, PROGRAMME

pytestmark = pytest.mark.slow
NOTE = "Do these exercises only as your physiotherapist has told you."


# Twelve more exercises, as a programme of a real clinic has them.
LONGER = """(list) => {
    const cards = [...document.querySelectorAll(list)].filter((one) => !one.hidden && one.checkVisibility());
    for (let more = 0; more < 12; more += 1) cards.at(-1).after(cards[more % cards.length].cloneNode(true));
}"""


def laid_over(file: Path) -> list[tuple[int, str]]:
    """Return sheet and words of what is printed over other words: boxes share a third of their height."""
    found = []
    with pypdfium2.PdfDocument(file) as sheets:
        for number, sheet in enumerate(sheets, 1):
            read = sheet.get_textpage()
            boxes = [read.get_rect(place) for place in range(read.count_rects())]
            lines = [
                (left, low, right, top) for left, low, right, top in boxes if right - left > 4 < top - low
            ]
            for one, other in itertools.combinations(lines, 2):
                wide = min(one[2], other[2]) - max(one[0], other[0])
                high = min(one[3], other[3]) - max(one[1], other[1])
                if wide > 2 and high > min(one[3] - one[1], other[3] - other[1]) / 3:
                    found.append((number, read.get_text_bounded(*one)))
    return found


def printed(tab: Any, folder: Path) -> list[str]:
    """Print a page on A4 and return the words of each sheet."""
    file = folder / "printed.pdf"
    tab.pdf(path=str(file), format="A4")
    sheets = pypdfium2.PdfDocument(file)
    found = [" ".join(sheet.get_textpage().get_text_range().split()) for sheet in sheets]
    sheets.close()
    return found


@pytest.mark.parametrize("page", ["index.html", PROGRAMME, PHASE_2, HEEL_RAISE, EVIDENCE])
def test_every_sheet_carries_note_telephone_demonstration_line_and_address(
    visit: Any, tmp_path: Path, page: str
) -> None:
    """A sheet that is parted from the others says whom to call, what it is, and where its page stands."""
    tab = visit(f"en/{page}")
    assert not tab.locator(".pb-footer__page").is_visible()
    for sheet in printed(tab, tmp_path):
        for words in (NOTE, "0555 010 200", "Demonstration, not for treatment."):
            assert words in sheet, words
        assert f"https://clinic.example/{PREFIX}/en/{page}" in sheet.replace(" ", ""), "address"


def test_the_address_is_printed_from_left_to_right(visit: Any, tmp_path: Path) -> None:
    """In a right-to-left line an address would be torn apart at its signs; PDFium reads in visual order."""
    sheets = printed(visit(f"ar/{HEEL_RAISE}"), tmp_path)
    assert all(f"https://clinic.example/{PREFIX}/ar/{HEEL_RAISE}" in sheet for sheet in sheets)


@pytest.mark.parametrize(
    ("page", "cards"), [(PATIENT_2, ".pb-one"), (PHASE_2, ".pb-do"), (EVIDENCE, "#evidence > details")]
)
def test_nothing_is_printed_over_anything_else(visit: Any, tmp_path: Path, page: str, cards: str) -> None:
    """Browsers have laid out long pages one part over another; a warning would be illegible."""
    tab = visit(f"en/{page}")
    tab.evaluate(LONGER, cards)
    assert len(printed(tab, tmp_path)) > 3
    assert laid_over(tmp_path / "printed.pdf") == []


def test_pictures_dose_and_warning_share_the_first_sheet(visit: Any, tmp_path: Path) -> None:
    """Start, finish, dose, stop rule and caution stand together, so that one sheet can lie beside the bed."""
    first = printed(visit(f"en/{HEEL_RAISE}"), tmp_path)[0]
    for words in ("Start", "Finish", "2×8", "Stop", "Caution"):
        assert words in first.replace(" × ", "×"), words


def test_what_is_folded_on_the_screen_is_whole_on_paper(visit: Any, tmp_path: Path) -> None:
    """Tables for clinicians and exercises that wait are printed, and stand folded again afterwards."""
    tab = visit(f"en/{EVIDENCE}")
    row = tab.locator(".pb-table--evidence tbody th").first
    assert not row.is_visible()
    assert " ".join(row.text_content().split()) in " ".join(printed(tab, tmp_path))
    assert not row.is_visible()
    tab = visit(f"en/{PHASE_2}")
    assert "2 sets of 8 repetitions" in " ".join(printed(tab, tmp_path))


def test_without_scripts_folded_tables_are_printed_as_well(browser: Any, site: str, tmp_path: Path) -> None:
    """The style sheet alone opens them on paper."""
    context = browser.new_context(java_script_enabled=False)
    tab = context.new_page()
    tab.goto(f"{site}en/{ORDER}")
    name = tab.locator(".pb-table--order tbody th").first.text_content()
    assert " ".join(name.split()) in " ".join(printed(tab, tmp_path))
    context.close()
