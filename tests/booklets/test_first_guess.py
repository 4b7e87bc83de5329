"""A booklet is guessed from its words before it is laid out; what is asked for then must be needed."""

from __future__ import annotations

from dataclasses import replace

import pytest
from bs4 import BeautifulSoup

from generator.booklets.first_guess import begin
from generator.booklets.html import letters_in_sections
from generator.booklets.layout import lay_out
from generator.booklets.values import Fit
from tests.booklets.builders import catalogue, in_words, job, safety


def test_letters_of_a_section_are_counted_as_a_parser_of_html_reads_them() -> None:
    """Reference: Beautiful Soup. Signs written as entities may count for more, by less than one in twenty."""
    html = begin(job()).html
    counted = letters_in_sections(html)
    soup = BeautifulSoup(html, "html.parser")
    for section in soup.select("section[data-sheet]"):
        read = len("".join(section.get_text().split()))
        assert read <= counted[str(section["data-sheet"])] <= 1.05 * read + 1


@pytest.mark.slow
def test_smaller_type_is_asked_for_at_once_only_where_the_usual_type_takes_a_sheet_more() -> None:
    """With few signs of warning they stand in the usual type; with very many never, and the guess knows."""
    usual = begin(job())
    assert "warnings" not in usual.fits
    wordy = safety(signs=safety().signs * 8)
    begun = begin(job(catalogue=in_words(replace(catalogue(), safety=wordy), "en")))
    assert begun.fits["warnings"] == Fit(tight=True)
    loose = begun.html.replace(' close" data-sheet="warnings"', '" data-sheet="warnings"')
    assert loose != begun.html
    assert lay_out(loose).sections["warnings"].pages > 2
