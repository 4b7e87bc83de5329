"""Makes the quiet pages: the words explained, and who publishes all this and how to read it."""

from __future__ import annotations

from generator.catalogue.dose import Dose, DoseKind, DoseStep, Span
from generator.website.addresses import ABOUT, CODES, FIELDS, GLOSSARY, clinicians_page
from generator.website.frame import clinic_line, emergency_line, telephone_line
from generator.website.licences import packages, typefaces
from generator.website.page import Page
from generator.website.shared import untranslated
from generator.website.values import SiteInput
from generator.wording.doses import DosePhrase, dose
from generator.wording.voice import Voice
from generator.wording.weeks import from_week, full_weeks

# A week and a dose to explain by; they are nobody's.
_WEEK = 6
_SETS, _REPETITIONS = 3, 10


def glossary_page(site: SiteInput) -> Page:
    """Return the glossary, sorted by the word in this language."""
    terms = site.catalogue.glossary.values()
    return Page(
        path=GLOSSARY,
        template="glossary.html",
        title=site.voice.gettext("Words explained"),
        description=site.voice.gettext("What the words on these pages mean"),
        values={
            "terms": tuple(sorted(terms, key=lambda one: str(one.term).casefold())),
            "untranslated": untranslated(tuple(terms)),
        },
        required=tuple(str(one.meaning) for one in terms),
    )


def about_page(site: SiteInput) -> Page:
    """Return the page about the publisher, with the ways to the pages for clinicians and editors."""
    catalogue, voice = site.catalogue, site.voice
    clinic, safety = catalogue.clinic, catalogue.safety
    programmes = catalogue.programmes.values()
    closed = telephone_line(voice.gettext("At other times"), clinic.telephone.out_of_hours)
    example = _example(voice)
    return Page(
        path=ABOUT,
        template="about.html",
        title=voice.gettext("About these pages"),
        description=str(clinic.about),
        values={
            "clinic": clinic,
            "safety": safety,
            "lines": (clinic_line(catalogue, voice), closed, emergency_line(catalogue, voice)),
            "example": example,
            "week": voice.opening(from_week(voice, _WEEK)),
            "full_weeks": full_weeks(voice, _WEEK),
            "clinicians": tuple((one.name, clinicians_page(one.id)) for one in programmes),
            "editors": (CODES, FIELDS) if site.for_editors else (),
            "licences": (
                (voice.gettext("Typefaces"), typefaces(voice)),
                (voice.gettext("Parts of the program"), packages(voice)),
            ),
            "untranslated": untranslated(clinic, safety),
        },
        doses=(example.big,),
        required=(str(clinic.about), str(safety.deferral_full)),
    )


def _example(voice: Voice) -> DosePhrase:
    kind = DoseKind.REPETITIONS
    ranges = Dose(
        kind=kind, sets=Span(_SETS, _SETS, _SETS), count=Span(_REPETITIONS, _REPETITIONS, _REPETITIONS)
    )
    return dose(voice, DoseStep(kind, _SETS, _REPETITIONS), ranges)
