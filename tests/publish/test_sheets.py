"""No printed sheet without its safety texts passes the audit; the sheets are real PDF files."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from types import MappingProxyType

import pikepdf
import pytest
import weasyprint

from generator.publish import Audit, Expected, ExpectedPdf, audit_tree
from tests.publish.sites import DEMONSTRATION, ENGLISH, NOTE, site, write

BOOKLET = "en/booklets/hip-phase-1.pdf"
EXPECTED = ExpectedPdf("en", "HIP-1-7K2M", "Page {page} of {pages}")
BREAK = '<p style="break-before: page">Second sheet.</p>'

pytestmark = pytest.mark.slow


def booklet(
    body: str = f"<p>First sheet. Do 3 × 10 a day.</p>{BREAK}",
    *,
    note: str = NOTE,
    clinic: str = ENGLISH.clinic_line,
    edition: str = EXPECTED.edition,
    number: str = '"Page " counter(page) " of " counter(pages)',
    head: str = "<title>Hip, phase 1</title>",
    style: str = "",
) -> str:
    """Return a booklet as its template writes it, with texts in the margin boxes of every page."""
    return f"""<html lang="en"><head>{head}<style>
    @page {{ size: A5; margin: 25mm 15mm;
      @top-left {{ content: "{DEMONSTRATION}"; font-size: 8pt }}
      @top-right {{ content: "{edition}"; font-size: 8pt }}
      @bottom-left {{ content: "{note}"; font-size: 8pt; width: 30mm }}
      @bottom-center {{ content: "{clinic}"; font-size: 8pt; width: 40mm }}
      @bottom-right {{ content: {number}; font-size: 8pt }} }}
    body {{ font-family: "DejaVu Sans" }} {style}</style></head><body>{body}</body></html>"""


def printed(root: Path, html: str, path: str = BOOKLET) -> Path:
    """Write a booklet into the site as a PDF file and return the file."""
    file = root / path
    file.parent.mkdir(parents=True, exist_ok=True)
    weasyprint.HTML(string=html).write_pdf(file, pdf_tags=True)
    return file


def codes(
    root: Path,
    pdfs: Mapping[str, ExpectedPdf],
    doses: Mapping[str, tuple[str, ...]] = MappingProxyType({}),
    required: Mapping[str, tuple[str, ...]] = MappingProxyType({}),
) -> list[str]:
    """Return the codes that the audit finds, all of them at the booklet."""
    audit = Audit((ENGLISH,), pdfs=pdfs, doses=doses, required=required)
    problems = audit_tree(write(root, site()), audit, workers=1)
    assert {problem.place.path for problem in problems} <= {BOOKLET}
    return [problem.code for problem in problems]


def test_a_whole_booklet_passes_in_silence(tmp_path: Path) -> None:
    """Texts broken over the lines of a narrow margin box are found all the same."""
    printed(tmp_path, booklet())
    assert codes(tmp_path, {BOOKLET: EXPECTED}) == []


@pytest.mark.parametrize(
    ("html", "found"),
    [
        (booklet(note="Take care."), ["sheet-without-note"] * 2),
        (booklet(note=NOTE.replace("before", "after")), ["sheet-without-note"] * 2),
        (booklet(clinic="Clinic: 0555 010 20-3"), ["sheet-without-telephone"] * 2),
        (booklet(number="counter(page)"), ["sheet-without-number"] * 2),
        (booklet(number='"Page 1 of " counter(pages)'), ["sheet-without-number"]),
        (booklet(edition="HIP-1-7K2N"), ["sheet-without-edition"] * 2),
        (booklet(edition="HIP-1-7K2M").replace(DEMONSTRATION, ""), ["sheet-without-note"] * 2),
        (booklet(head=""), ["pdf-without-title"]),
        (booklet().replace('lang="en"', 'lang="de"'), ["pdf-without-title"]),
        (booklet(style="@page :nth(2) { @bottom-left { content: none } }"), ["sheet-without-note"]),
        (booklet(style="@page :nth(2) { @bottom-left { margin-left: -200mm } }"), ["sheet-without-note"]),
    ],
)
def test_what_one_sheet_lacks_is_found(tmp_path: Path, html: str, found: list[str]) -> None:
    """A text missing, altered or off the edge of one single page is an error of that page."""
    printed(tmp_path, html)
    assert codes(tmp_path, {BOOKLET: EXPECTED}) == found


def test_the_page_is_named(tmp_path: Path) -> None:
    """The message says which page lacks what."""
    printed(tmp_path, booklet(style="@page :nth(2) { @top-right { content: none } }"))
    audit = Audit((ENGLISH,), pdfs={BOOKLET: EXPECTED})
    (problem,) = audit_tree(write(tmp_path, site()), audit)
    assert problem.message == "page 2 does not bear the edition code 'HIP-1-7K2M'"
    assert problem.safety


def test_an_empty_page_is_found(tmp_path: Path) -> None:
    """A page without any text is reported as empty, once."""
    file = printed(tmp_path, booklet())
    with pikepdf.open(file, allow_overwriting_input=True) as pdf:
        pdf.add_blank_page()
        pdf.save(file)
    expected = replace(EXPECTED, page_label=None)
    assert codes(tmp_path, {BOOKLET: expected}) == ["sheet-empty"]


def test_files_and_announcements_agree(tmp_path: Path) -> None:
    """A file nobody announced cannot be checked; one that was announced must be there."""
    assert codes(tmp_path, {BOOKLET: EXPECTED}) == ["pdf-missing"]
    printed(tmp_path, booklet())
    assert codes(tmp_path, {}) == ["pdf-unannounced"]


def test_a_damaged_file_is_found(tmp_path: Path) -> None:
    """A file cut short is an error and no crash."""
    file = printed(tmp_path, booklet())
    file.write_bytes(file.read_bytes()[:200])
    assert codes(tmp_path, {BOOKLET: EXPECTED}) == ["file-unreadable"]


def test_a_booklet_prints_the_doses_of_the_catalogue_and_no_other(tmp_path: Path) -> None:
    """The doses of a booklet are compared like those of a page."""
    printed(tmp_path, booklet())
    pdfs = {BOOKLET: EXPECTED}
    assert codes(tmp_path, pdfs, doses={BOOKLET: ("3 × 10",)}) == []
    assert codes(tmp_path, pdfs, doses={BOOKLET: ("3 × 12",)}) == ["dose-missing", "dose-not-in-catalogue"]
    assert codes(tmp_path, pdfs, required={BOOKLET: ("First sheet",)}) == []
    assert codes(tmp_path, pdfs, required={BOOKLET: ("Third sheet",)}) == ["text-missing"]


HEBREW = Expected("he", "rtl", ("שאלו את הפיזיותרפיסט לפני שמתחילים.",), None, "טלפון המרפאה: 0555 010 20-30")


def hebrew_codes(
    root: Path, dose: str, clinic: str = "0555 010 20-30", edition: str = "HIP-1-7K2M"
) -> list[str]:
    """Return what the audit finds on the sheet of a Hebrew booklet that prints this dose."""
    clinic = f"טלפון המרפאה: <bdi dir=ltr>{clinic}</bdi>"
    lines = (HEBREW.notes[0], clinic, f"חזרו {dose} פעמים ביום.", edition, "עמוד 1 מתוך 1")
    body = "".join(f"<p>{line}</p>" for line in lines)
    html = (
        '<html lang="he" dir="rtl"><head><title>ירך</title><style>@page { size: A5 } '
        f'body {{ font-family: "DejaVu Sans" }}</style></head><body>{body}</body></html>'
    )
    path = "he/booklets/hip-phase-1.pdf"
    printed(root, html, path)
    audit = Audit(
        (HEBREW,),
        pdfs={path: ExpectedPdf("he", "HIP-1-7K2M", "עמוד {page} מתוך {pages}")},
        doses={path: ("3 × 10",)},
    )
    return [problem.code for problem in audit_tree(root, audit, workers=1) if problem.place.path == path]


def test_right_to_left_sheets_are_judged_as_the_eye_sees_them(tmp_path: Path) -> None:
    """A dose kept left-to-right passes; left bare it is printed as 10 × 3 and is an error."""
    assert hebrew_codes(tmp_path, '<bdi dir="ltr">3 × 10</bdi>') == []
    assert hebrew_codes(tmp_path, "3 × 10") == ["dose-missing", "dose-not-in-catalogue"]


def test_right_to_left_sheets_still_need_every_text(tmp_path: Path) -> None:
    """The tolerance for the order of words does not let a wrong number or edition pass."""
    dose = '<bdi dir="ltr">3 × 10</bdi>'
    assert hebrew_codes(tmp_path, dose, clinic="0555 010 20-31") == ["sheet-without-telephone"]
    assert hebrew_codes(tmp_path, dose, clinic="010 0555 20-30") == ["sheet-without-telephone"]
    assert hebrew_codes(tmp_path, dose, edition="HIP-1-7K2N") == ["sheet-without-edition"]


def test_the_loose_comparison_is_only_used_when_declared(tmp_path: Path) -> None:
    """Words in another order are a finding, unless the file is declared as one whose text comes back so."""
    turned = " ".join(reversed(NOTE.split()))
    printed(tmp_path, booklet(note=turned))
    assert codes(tmp_path, {BOOKLET: EXPECTED}) == ["sheet-without-note"] * 2
    assert codes(tmp_path, {BOOKLET: replace(EXPECTED, loose=True)}) == []
    printed(tmp_path, booklet(note=turned.replace("surgeon", "friend")))
    assert codes(tmp_path, {BOOKLET: replace(EXPECTED, loose=True)}) == ["sheet-without-note"] * 2
