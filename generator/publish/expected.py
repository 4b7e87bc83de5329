"""Says what the audit has to find in the finished site: values, handed over by whoever knows the texts."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Literal

from generator.problems import NOWHERE, Place, Problem, Rule

NOTHING_EXPECTED = Rule(
    "nothing-to-audit",
    "The audit was given nothing to look for.",
    "A safety text is empty in some language; an empty text would be found on every page.",
    "translate or restore the safety text named here",
    safety=True,
)
RULES = (NOTHING_EXPECTED,)

Direction = Literal["ltr", "rtl"]


@dataclass(frozen=True)
class Expected:
    """The safety texts of one language; every page and every sheet of that language carries all `notes`."""

    language: str
    """BCP 47 tag; also the first folder of the pages of this language."""
    direction: Direction
    """Writing direction."""
    notes: tuple[str, ...]
    """Texts that stand, readable without opening anything, on every page and every sheet."""
    demonstration: str | None
    """The line "demonstration, not for treatment" where the clinic is invented, else nothing."""
    clinic_line: str
    """The telephone line as printed; on every sheet of paper."""

    @property
    def everywhere(self) -> tuple[str, ...]:
        """Return the texts that stand on every page and every sheet."""
        return self.notes if self.demonstration is None else (*self.notes, self.demonstration)


@dataclass(frozen=True)
class ExpectedPdf:
    """What one PDF file carries on every page besides the texts of its language."""

    language: str
    """BCP 47 tag; one of the languages of the audit."""
    edition: str
    """The edition code, on every page."""
    page_label: str | None = "{page} / {pages}"
    """How a page is numbered, ``{page}`` and ``{pages}`` standing for the numbers; none on folded sheets."""
    loose: bool = False
    """Accept a note whose words all stand on the page in any order (some right-to-left fonts need it)."""


@dataclass(frozen=True)
class Audit:
    """Everything the audit expects of a tree of files; paths are relative to its root, with ``/``."""

    languages: tuple[Expected, ...]
    """One for each published language."""
    pdfs: Mapping[str, ExpectedPdf] = field(default_factory=dict)
    """Every PDF file of the tree, and no other, by path."""
    required: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """Texts that a page or PDF must hold somewhere, by path."""
    doses: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """All doses a page or PDF prints, by path: each is there, and no other ``n × n`` is."""
    exempt: frozenset[str] = frozenset()
    """Pages that need no safety text, such as an immediate redirect; none by default."""
    choice_pages: frozenset[str] = frozenset()
    """Pages whose script reads the #fragment as a choice, so that it need not be an id."""
    warning_page: str = "warning-signs.html"
    """The page of warning signs within each language folder."""
    shared_pages: frozenset[str] = frozenset({"index.html", "404.html"})
    """Pages for all languages at once; each carries the texts of every language."""
    base_path: str = "/"
    """The path of the site on its server; only 404.html may use addresses that begin with it."""

    def languages_of(self, path: str) -> tuple[Expected, ...]:
        """Return the languages whose texts the page at `path` must carry; none if it belongs nowhere."""
        if path in self.shared_pages:
            return self.languages
        folder, separator, _ = path.partition("/")
        return tuple(one for one in self.languages if separator and one.language == folder)

    def shortcomings(self) -> Iterator[Problem]:
        """Yield the problems of expectations that would let any page pass."""
        if not self.languages:
            yield NOTHING_EXPECTED.at(NOWHERE, "no language is expected")
        for one in self.languages:
            place = Place(one.language)
            if not one.notes:
                yield NOTHING_EXPECTED.at(place, f"no safety note is given for {one.language}")
            if any(not text.strip() for text in (*one.everywhere, one.clinic_line)):
                yield NOTHING_EXPECTED.at(place, f"an empty safety text is given for {one.language}")
        for group in (self.required, self.doses):
            for path, texts in group.items():
                if any(not text.strip() for text in texts):
                    yield NOTHING_EXPECTED.at(Place(path), "an empty text is required here")
        for path, pdf in self.pdfs.items():
            if not pdf.edition.strip():
                yield NOTHING_EXPECTED.at(Place(path), "no edition code is given")
            if all(one.language != pdf.language for one in self.languages):
                yield NOTHING_EXPECTED.at(Place(path), f"no texts are given for its language {pdf.language}")
