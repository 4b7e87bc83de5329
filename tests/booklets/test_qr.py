"""The way from paper to the check page: only where it leads somewhere, and a telephone can read it."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pypdfium2
import pytest
import zxingcpp

from generator.booklets.make import make_booklet
from generator.booklets.qr import MODULE_MM, check_address, check_code
from generator.booklets.values import BookletJob
from generator.catalogue.terms import Reach
from tests.booklets.builders import EDITION, catalogue, clinic, job

ADDRESS = f"https://clinic.example/exercises/en/check.html#{EDITION}"
DOTS_AN_INCH = 300


def _reached(folder: Path = Path()) -> BookletJob:
    open_to_all = clinic(reach=Reach.PATIENTS, base_address="https://clinic.example/exercises/")
    return replace(job(folder / "qr.pdf"), catalogue=catalogue(clinic=open_to_all))


def test_the_code_leads_to_the_check_page_of_the_language() -> None:
    """The edition stands in the fragment, which no server sees."""
    assert check_address(_reached()) == ADDRESS


@pytest.mark.parametrize(
    ("reach", "address"),
    [(Reach.INTRANET, "https://clinic.example/"), (Reach.PATIENTS, None)],
)
def test_a_code_that_would_lead_nowhere_is_not_printed(reach: Reach, address: str | None) -> None:
    """Patients cannot open an intranet; they have the telephone line instead."""
    closed = catalogue(clinic=clinic(reach=reach, base_address=address))
    assert check_code(replace(job(), catalogue=closed)) is None


def test_modules_and_quiet_zone_are_large_enough() -> None:
    """A module of at least 0.5 mm, and four of them around (quiet zone, ISO/IEC 18004)."""
    code = check_code(_reached())
    assert code is not None
    assert MODULE_MM >= 0.5
    modules = code.side / MODULE_MM
    assert (round(modules) - 8 - 17) % 4 == 0


@pytest.mark.slow
def test_the_printed_code_is_read_back(tmp_path: Path) -> None:
    """zxing-cpp reads it on the finished sheet at 300 dots an inch, as an office printer prints it."""
    made = make_booklet(_reached(tmp_path))
    assert made.problems == ()
    read = [
        found.text
        for page in pypdfium2.PdfDocument(made.path)
        for found in zxingcpp.read_barcodes(page.render(scale=DOTS_AN_INCH / 72, grayscale=True).to_pil())
    ]
    assert read == [ADDRESS]
