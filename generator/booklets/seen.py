"""Turns what was seen in a document laid out into findings, the same for booklets and protocols."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from generator.booklets import rules
from generator.booklets.layout import Laid
from generator.problems import Place, Problem


def seen_in_layout(laid: Laid, logged: Iterable[str], place: Place) -> Iterator[Problem]:
    """Yield what is wrong with a document as it was laid out.

    logged: what the library complained of while it wrote the file.
    """
    for message in (*laid.logged, *logged):
        yield rules.COMPLAINT.at(place, message)
    for far in laid.overflows:
        message = f"page {far.page}: {far.words!r} stands {far.by:.1f} mm beyond its box"
        yield rules.OVERFLOW.at(place, message)
    for hit in laid.collisions:
        yield rules.PRINTED_OVER.at(place, f"page {hit.page}: {hit.words!r} stands on {hit.under!r}")
    for odd in laid.misprints:
        message = f"page {odd.page}: {odd.printed!r} is printed where {odd.written!r} was written"
        yield rules.MISPRINT.at(place, message)
