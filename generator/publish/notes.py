"""Looks on every page for the texts that keep a patient safe: no page without them is ever published."""

from __future__ import annotations

from collections.abc import Iterator

from generator.problems import Place, Problem, Rule
from generator.publish.doses import shorten
from generator.publish.expected import Audit, Expected
from generator.publish.links import resolve
from generator.publish.pages import PageFacts
from generator.publish.text import plain

NO_NOTE = Rule(
    "page-without-note",
    "A page lacks a safety text, or hides it.",
    "The template of the page leaves the text out, or it stands in a hidden or closed part of the page.",
    "use the template block that prints the safety texts, in an open part of the page",
    safety=True,
)
NO_WAY_TO_WARNINGS = Rule(
    "page-without-warning-link",
    "A page has no link that leads straight to the warning signs.",
    "The template leaves the link out, hides it, or leads to another page or language.",
    "add the link to the warning signs to the template, where everybody sees it",
    safety=True,
)
WRONG_LANGUAGE = Rule(
    "page-language",
    "A page does not say its language, or says another one.",
    "The template does not set lang on the html element; a screen reader then mispronounces every word.",
    "set lang on the html element to the language of the page",
)
WRONG_DIRECTION = Rule(
    "page-direction",
    "A page is set in the wrong writing direction.",
    "The template does not set dir on the html element, or sets another one on the body.",
    "set dir on the html element to the direction of the language, and none on the body",
    safety=True,
)
HEADING = Rule(
    "page-main-heading",
    "A page has no main heading, or several.",
    "The template prints no h1, or the text of the page brings a second one.",
    "let exactly one visible h1 stand in each page",
)
NO_LANGUAGE = Rule(
    "page-without-language",
    "A page stands where no published language has its folder.",
    "It was written to a wrong folder, or its language is withheld; its safety texts cannot be checked.",
    "write the page into the folder of its language, or leave it out",
    safety=True,
)
NOT_ISOLATED = Rule(
    "number-not-isolated",
    "In a right-to-left page a number can change its order: 3 × 10 would be read as 10 × 3.",
    "The dose, range, angle or telephone number stands in the line without being kept left-to-right.",
    'print it through the one function that isolates it (bdi with dir="ltr")',
    safety=True,
)
NO_PAGE = Rule(
    "page-missing",
    "A page that has to exist is not in the site.",
    "It was not written, or under another name.",
    "build again; if it stays so, look at the page writer",
    safety=True,
)
UNREADABLE = Rule(
    "file-unreadable",
    "A file of the site cannot be read as what it claims to be.",
    "It is damaged, encrypted, or not UTF-8.",
    "look at the program that writes this file, and build again",
    safety=True,
)
RULES = (
    NO_NOTE,
    NO_WAY_TO_WARNINGS,
    WRONG_LANGUAGE,
    WRONG_DIRECTION,
    HEADING,
    NO_LANGUAGE,
    NOT_ISOLATED,
    NO_PAGE,
    UNREADABLE,
)


def check(facts: PageFacts, audit: Audit) -> Iterator[Problem]:
    """Yield what a page lacks of the safety texts of its language, or of every language if it serves all."""
    place = Place(facts.path)
    languages = audit.languages_of(facts.path)
    if not languages:
        yield NO_LANGUAGE.at(place, "no published language has this page")
        return
    yield from _frame(facts, languages, place)
    for language in languages:
        for wanted in language.everywhere:
            if plain(wanted) not in facts.shown:
                yield NO_NOTE.at(
                    place, f"the safety text {shorten(wanted)!r} ({language.language}) is missing"
                )
        warnings = f"{language.language}/{audit.warning_page}"
        if facts.path != warnings and not _leads_to(facts, warnings, audit.base_path):
            yield NO_WAY_TO_WARNINGS.at(place, f"no visible link leads to {warnings}")


def _frame(facts: PageFacts, languages: tuple[Expected, ...], place: Place) -> Iterator[Problem]:
    """Yield what is wrong with the language, direction and main heading of a page."""
    said = facts.language.lower()
    spoken = next((one for one in languages if one.language.lower() == said), None)
    if spoken is None:
        wanted = " or ".join(one.language for one in languages)
        yield WRONG_LANGUAGE.at(place, f"lang is {facts.language!r} and should be {wanted}")
        spoken = languages[0] if len(languages) == 1 else None
    if spoken is not None and (
        facts.direction != spoken.direction or facts.body_direction not in ("", spoken.direction)
    ):
        said = facts.direction if facts.direction != spoken.direction else facts.body_direction
        yield WRONG_DIRECTION.at(place, f"dir is {said!r} and should be {spoken.direction!r}")
    for signs, where in facts.fragile:
        yield NOT_ISOLATED.at(where, f"the number near {signs!r} is not kept left-to-right")
    if facts.headings != 1:
        yield HEADING.at(place, f"the page has {facts.headings} visible h1 elements")


def _leads_to(facts: PageFacts, target: str, base_path: str) -> bool:
    """Return whether a visible link of the page leads to a path of the tree."""
    return any(
        link.clickable and resolve(facts.path, link.target, base_path) == target for link in facts.links
    )
