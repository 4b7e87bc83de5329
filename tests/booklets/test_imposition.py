"""A booklet in A5 becomes sheets that fold into a book with its pages in order."""

from __future__ import annotations

import io

import pikepdf
import pypdfium2
import pytest
import weasyprint

from generator.booklets.imposition import FoldedSheet, impose, padding, saddle_order

# Reference 10.5: made by running pdfimpose 2.10.0 on numbered pages (outer sheet first: front, back). The
# tool showed left and right for 8 pages and the pairs for 16; 4 and 12 follow from its order by arithmetic.
PUBLISHED = {
    4: (((4, 1), (2, 3)),),
    8: (((8, 1), (2, 7)), ((6, 3), (4, 5))),
    12: (((12, 1), (2, 11)), ((10, 3), (4, 9)), ((8, 5), (6, 7))),
    16: (((16, 1), (2, 15)), ((14, 3), (4, 13)), ((12, 5), (6, 11)), ((10, 7), (8, 9))),
}


def numbered(count: int, word: str = "Page", language: str = "en") -> bytes:
    """Return a tagged A5 booklet whose pages say their number, with a note on each."""
    pages = "".join(f"<h1>{word} {number}</h1><p>Keep to the note.</p>" for number in range(1, count + 1))
    style = "<style>@page { size: A5 } h1 { break-before: page }</style>"
    head = f"<html lang='{language}'><head><title>Booklet</title>{style}</head>"
    return bytes(
        weasyprint.HTML(string=f"{head}<body>{pages}</body></html>").write_pdf(pdf_variant="pdf/ua-1")
    )


def printed(pdf: bytes) -> list[tuple[str, str]]:
    """Return what stands on the left and the right half of each page."""
    found = []
    for page in pypdfium2.PdfDocument(pdf):
        across, down = page.get_size()
        text = page.get_textpage()
        left = text.get_text_bounded(0, 0, across / 2, down)
        right = text.get_text_bounded(across / 2, 0, across, down)
        found.append((left.split("\r\n")[0].strip(), right.split("\r\n")[0].strip()))
    return found


@pytest.mark.parametrize("pages", PUBLISHED)
def test_the_order_is_the_published_one(pages: int) -> None:
    """4, 8, 12 and 16 pages stand where the reference tool puts them."""
    assert tuple((sheet.front, sheet.back) for sheet in saddle_order(pages)) == PUBLISHED[pages]


@pytest.mark.parametrize("pages", range(4, 84, 4))
def test_two_pages_of_a_side_sum_to_one_more_than_all(pages: int) -> None:
    """Reference 10.5's own check, and each page is printed once."""
    sides = [side for sheet in saddle_order(pages) for side in (sheet.front, sheet.back)]
    assert {sum(side) for side in sides} == {pages + 1}
    assert sorted(number for side in sides for number in side) == list(range(1, pages + 1))


def test_right_to_left_swaps_every_side() -> None:
    """A book in Arabic opens at the other edge (reference 10.5)."""
    assert saddle_order(8, right_to_left=True) == (
        FoldedSheet((1, 8), (7, 2)),
        FoldedSheet((3, 6), (5, 4)),
    )


@pytest.mark.parametrize("pages", [0, 1, 6, 10])
def test_pages_that_fill_no_sheet_are_refused(pages: int) -> None:
    """The order is defined for multiples of four only."""
    with pytest.raises(ValueError, match="multiple of 4"):
        saddle_order(pages)
    assert (pages + padding(pages)) % 4 == 0


def test_six_pages_are_filled_up_with_notes() -> None:
    """The two pages for notes become 7 and 8, and each keeps its note (reference 10.5: blanks land there)."""
    made = impose(numbered(6), numbered(3, "Notes"))
    assert printed(made) == [
        ("Notes 2", "Page 1"),
        ("Page 2", "Notes 1"),
        ("Page 6", "Page 3"),
        ("Page 4", "Page 5"),
    ]
    for page in pypdfium2.PdfDocument(made):
        assert page.get_textpage().get_text_range().count("Keep to the note.") == 2


def test_sheets_are_a4_across_and_pages_keep_their_size() -> None:
    """Two A5 pages lie side by side on A4 (ISO 216), none of them shrunk."""
    made = impose(numbered(4))
    (page, _) = pypdfium2.PdfDocument(made)
    assert page.get_size() == pytest.approx((841.89, 595.28), abs=0.1)
    with pikepdf.open(io.BytesIO(made)) as pdf:
        assert pdf.docinfo["/Title"] == "Booklet"
        assert pdf.Root.Lang == "en"
        shown = pdf.pages[0].Contents.read_bytes().decode("ascii")
    assert [line.split()[:5] for line in shown.splitlines()] == [["q", "1", "0", "0", "1"]] * 2


def test_too_few_pages_for_notes_are_refused() -> None:
    """A blank page without the note is never printed."""
    with pytest.raises(ValueError, match="2 pages for notes are needed"):
        impose(numbered(6), numbered(1, "Notes"))
    with pytest.raises(ValueError, match="0 are given"):
        impose(numbered(6))


def test_the_same_pages_give_the_same_bytes() -> None:
    """Output carries no clock."""
    pdf = numbered(4)
    assert impose(pdf) == impose(pdf)


def test_a_right_to_left_booklet_starts_at_the_left() -> None:
    """Page 1 stands on the left half of the outer sheet."""
    assert printed(impose(numbered(4, language="ar"), right_to_left=True)) == [
        ("Page 1", "Page 4"),
        ("Page 3", "Page 2"),
    ]
