"""Makes a booklet from start to end: render, lay out, fit, write, examine."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from generator.booklets import rules
from generator.booklets.booklet_view import Booklet, booklet_view
from generator.booklets.engine import no_collecting
from generator.booklets.every_sheet import expected
from generator.booklets.examine import examine
from generator.booklets.exercise_sheet import sheet_key
from generator.booklets.first_guess import (
    FEW_SHEETS,
    HELPER_SHEET,
    MOST_SHEETS,
    PHASE_SHEET,
    Begun,
    begin,
    better,
)
from generator.booklets.formats import STANDARD
from generator.booklets.html import NOTES, SESSION_SHEET, frame_html, sections_html
from generator.booklets.kept import keep, taken
from generator.booklets.layout import Laid, Section, joined, lay_out, page_name
from generator.booklets.pdf import write
from generator.booklets.seen import seen_in_layout
from generator.booklets.values import NO_FITS, BookletJob, BookletResult, Fit, Fits, SheetFact
from generator.problems import Place, Problem, in_order
from generator.shelf import Shelf

CLINICIAN_SHEET = "clinician"
_END = "end"

GROWING = ("cover", SESSION_SHEET, "diary")
"""Sections whose lines and rows grow into what is left of their sheet."""

LEAST_GROWTH_MM = 10.0
"""Less than this left on a sheet is not worth laying it out again."""


def make_booklet(job: BookletJob, shelf: Shelf | None = None) -> BookletResult:
    """Write one booklet to its output and return what came of it.

    shelf: where it is taken from if it would be the same, and put otherwise.
    """
    begun = begin(job)
    if shelf is None:
        return _printed(job, begun)
    name = shelf.name(*_depends_on(job, begun))
    if (found := taken(shelf, name, job.output)) is not None:
        return found
    result = _printed(job, begun)
    keep(shelf, name, result)
    return result


def _depends_on(job: BookletJob, begun: Begun) -> tuple[str, ...]:
    """Return all that decides how a booklet comes out: its words as first laid out, and its margins.

    Lengths in the editor's language decide the first guess, which is part of these words.
    """
    guess = sorted((key, fit.split, fit.tight) for key, fit in begun.fits.items())
    said = (begun.html, frame_html(job, [""]))
    return (*said, repr(guess), job.kind, repr(sorted(job.two_sheets)), repr(sorted(job.sheets.items())))


# What the library has made is let go first: only its cycles are left to be collected.
@no_collecting()
def _printed(job: BookletJob, begun: Begun) -> BookletResult:
    fits, laid = _fitted(job, begun)
    pdf, logged = write(laid, job.format.zoom)
    job.output.parent.mkdir(parents=True, exist_ok=True)
    job.output.write_bytes(pdf)
    view = booklet_view(job, fits)
    sheets = tuple(_facts(view, laid))
    wanted = expected(view, laid.pages, sheets)
    found = (*_seen_in_layout(view, laid, logged), *examine(pdf, wanted, job.format.least))
    two = frozenset(sheet.exercise.id for sheet in view.exercises if sheet.fit.split)
    return BookletResult(job.output, laid.pages, sheets, in_order(found), two, _taken(laid))


def fitted(job: BookletJob) -> tuple[Fits, Laid]:
    """Return how the sections sit on paper, and the document laid out that way.

    What does not fit one sheet is parted with a heading of its own on the second. An exercise with much to
    say is parted from the start. Only what has to sit otherwise is laid out again: each section begins a
    sheet, so the others stay as they are. The margins with their page numbers come last, once it is known
    how many sheets there are.
    """
    return _fitted(job, begin(job))


def _fitted(job: BookletJob, begun: Begun) -> tuple[Fits, Laid]:
    fits, parts = begun.fits, _Parts()
    parts.take(lay_out(begun.html))
    exercises = (sheet_key(use.use) for use in job.stage.uses)
    fitting = {*FEW_SHEETS, HELPER_SHEET, *exercises} & set(parts.sections)
    # One column flows on to the next page where it must; nothing is gained by smaller type.
    while not job.format.narrow:
        laid = {key: parts.sections[key] for key in fitting}
        closer = {
            key: better(key, fits.get(key, Fit()), one.pages, carried=one.carried)
            for key, one in laid.items()
        }
        changed = frozenset(key for key, fit in closer.items() if fit != fits.get(key, Fit()))
        if not changed:
            break
        was, fits, pages = fits, {**fits, **closer}, dict(parts.pages)
        parts.take(lay_out(sections_html(job, fits, changed)))
        for key in changed:
            # Uneven columns part worse where their first box is tall; then it sits as it did.
            if fits[key].uneven and parts.sections[key].pages > laid[key].pages:
                parts.sections[key], parts.pages[key] = laid[key], pages[key]
                fits = {**fits, key: was[key]}
                fitting.discard(key)
    fits = {key: _filled(fits.get(key, Fit()), one) for key, one in parts.sections.items()}
    growing = frozenset(key for key in GROWING if key in fits and fits[key].spare)
    if growing:
        parts.take(lay_out(sections_html(job, fits, growing)))
    _fill_up(job, parts)
    leaves = parts.leaves()
    return fits, joined(frame_html(job, [page_name(leaf) for leaf in leaves]), leaves, parts.logged)


@dataclass
class _Parts:
    """The sections laid out so far, each as it was last: where it stood, and its pages."""

    sections: dict[str, Section] = field(default_factory=dict)
    pages: dict[str, list[Any]] = field(default_factory=dict)
    logged: list[str] = field(default_factory=list)

    def take(self, laid: Laid) -> None:
        """Keep the sections of a document in place of what they were."""
        for key, section in laid.sections.items():
            self.sections[key] = section
            self.pages[key] = laid.document.pages[section.first - 1 : section.first - 1 + section.pages]
        self.logged.extend(laid.logged)

    def leaves(self) -> list[Any]:
        """Return the pages of all sections in their order."""
        return [page for pages in self.pages.values() for page in pages]


def _fill_up(job: BookletJob, parts: _Parts) -> None:
    """Add sheets for notes: after sections that take more sheets in other languages, and at the end.

    A booklet that is folded needs a whole number of folded sheets.
    """
    missing = {key: job.sheets.get(key, 0) - section.pages for key, section in parts.sections.items()}
    short = [key for key, count in missing.items() for _ in range(count)]
    short += [_END] * (-(len(parts.leaves()) + len(short)) % job.format.whole)
    if not short:
        return
    named = {f"{NOTES}{number:02}": key for number, key in enumerate(short)}
    laid = lay_out(sections_html(job, NO_FITS, frozenset(named)))
    for name, key in named.items():
        page = laid.document.pages[laid.sections[name].first - 1]
        parts.pages.setdefault(key, []).append(page)


def _taken(laid: Laid) -> Mapping[str, int]:
    """Return how many sheets each section takes, with the sheets for notes that follow it."""
    taken: dict[str, int] = {}
    last = ""
    for key, section in laid.sections.items():
        last = last if key.startswith(NOTES) else key
        taken[last] = taken.get(last, 0) + section.pages
    return taken


def _filled(fit: Fit, section: Section) -> Fit:
    """Return a fit with the space left, where the section takes the sheets it was meant for."""
    roomy = section.pages == 1 + fit.split and section.spare > LEAST_GROWTH_MM
    spare = section.spare if roomy else 0.0
    return replace(fit, spare=spare, lines=section.lines)


def _facts(view: Booklet, laid: Laid) -> Iterator[SheetFact]:
    exercises = {sheet.key: sheet for sheet in view.exercises}
    by_section = {**_required(view), **{key: sheet.required for key, sheet in exercises.items()}}
    for key, section in laid.sections.items():
        exercise = exercises[key].exercise.id if key in exercises else None
        wanted = by_section.get(key, ())
        pages = range(section.first, section.first + section.pages)
        standing = {words: laid.page_with(words, pages) for words in wanted}
        for page in pages:
            yield SheetFact(exercise, page, tuple(words for words in wanted if standing[words] == page))


def _required(view: Booklet) -> dict[str, tuple[str, ...]]:
    """Return what the audit must find in the sections besides the exercises."""
    safety = view.job.catalogue.safety
    gate = (str(safety.start_only),) if view.job.phase > 1 else ()
    signs = tuple(str(sign.act) for group in view.signs for sign in group.signs)
    return {
        "cover": (*gate, str(safety.stay)),
        PHASE_SHEET: (
            *(str(words) for group in view.forbidden.all for words in group.words),
            *view.pain.sentences,
            *(sheet.doses[0] for sheet in view.exercises),
            *(str(note) for sheet in view.exercises for note in sheet.entry.notes),
        ),
        SESSION_SHEET: view.session.required if view.session else (),
        "life": tuple(words for one in view.life for words in one.required),
        "helper": view.helper.required if view.helper else (),
        "warnings": (
            *(group.call for group in view.signs if group.call),
            *signs,
            str(safety.working_area),
            str(safety.deferral_full),
        ),
        "diary": tuple(str(act) for level in view.worse for act in level.acts),
        CLINICIAN_SHEET: view.job.patient.required if view.job.patient else (),
        "milestones": (
            *(str(one.milestone.passed) for one in view.milestones),
            *(str(act) for act in safety.fall),
        ),
    }


def _seen_in_layout(view: Booklet, laid: Laid, logged: tuple[str, ...]) -> Iterator[Problem]:
    place = Place(view.job.output.as_posix())
    yield from seen_in_layout(laid, logged, place)
    for sheet in view.exercises if view.job.kind == STANDARD else ():
        pages = laid.sections[sheet.key].pages
        if pages > MOST_SHEETS:
            yield rules.LONG_EXERCISE.at(place, f"exercise {sheet.exercise.id} takes {pages} sheets")
