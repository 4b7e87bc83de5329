"""Says what the finished files must show, so that the audit reads them against the catalogue."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from generator.publish import Audit, Expected, ExpectedPdf
from generator.publish.text import doses_in
from generator.steps.languages import Spoken
from generator.steps.paper import Sheets
from generator.website.root import base_path
from generator.website.values import PageFact
from generator.wording.isolation import plain
from generator.wording.phrases import page_of
from generator.wording.voice import Voice

# Two numbers that no page label repeats, so that they can be found again in its words.
_PAGE, _PAGES = 11, 22


def audit_of(
    spoken: Sequence[Spoken], pages: Mapping[str, Sequence[PageFact]], sheets: Sequence[Sheets]
) -> Audit:
    """Return what to look for; `pages` are the facts of each language's pages, by its code."""
    required: dict[str, tuple[str, ...]] = {}
    doses: dict[str, tuple[str, ...]] = {}
    for language, facts in pages.items():
        for fact in facts:
            path = f"{language}/{fact.path}" if language else fact.path
            required[path] = fact.required
            if fact.doses is not None:
                doses[path] = fact.doses
    voices = {one.voice.code: one.voice for one in spoken}
    for booklet in sheets:
        words = (text for sheet in booklet.result.sheets for text in sheet.required)
        required[booklet.path] = tuple(dict.fromkeys(plain(text) for text in words))
        # All that its sheets promise, so that a dose typed into a sentence is found on paper as on a page.
        doses[booklet.path] = tuple(
            dict.fromkeys(found for text in required[booklet.path] for found in doses_in(text))
        )
    return Audit(
        languages=tuple(_expected(one) for one in spoken),
        pdfs={
            booklet.path: ExpectedPdf(
                language=booklet.language,
                edition=booklet.job.edition,
                # Two pages stand on a side of a folded sheet, each with its number.
                page_label=None if booklet.folded else _page_label(voices[booklet.language]),
                loose=voices[booklet.language].direction == "rtl",
            )
            for booklet in sheets
        },
        required=required,
        doses=doses,
        base_path=base_path(spoken[0].catalogue.clinic),
        choice_pages=frozenset(f"{one.voice.code}/check.html" for one in spoken),
    )


def _expected(spoken: Spoken) -> Expected:
    safety, clinic = spoken.catalogue.safety, spoken.catalogue.clinic
    return Expected(
        language=spoken.voice.code,
        direction=spoken.voice.direction,
        notes=(plain(str(safety.deferral)),),
        demonstration=plain(str(safety.demonstration)) if clinic.demo else None,
        clinic_line=clinic.telephone.clinic,
    )


def _page_label(voice: Voice) -> str:
    words = plain(page_of(voice, _PAGE, _PAGES))
    return words.replace(str(_PAGES), "{pages}").replace(str(_PAGE), "{page}")
