"""Keeps one language shown while its content is typed: makes what changed, marks what is wrong in place."""

from __future__ import annotations

import shutil
from collections.abc import Iterator, Mapping, Sequence
from difflib import SequenceMatcher
from pathlib import Path

from generator.catalogue.base import Text
from generator.catalogue.programme import Programme
from generator.catalogue.values import Catalogue
from generator.problems import Place, Problem, Rule, Severity, as_text
from generator.steps.languages import Spoken, texts_of
from generator.steps.pages import Site, write_sources
from generator.website.engine import build_languages
from generator.website.on_demand import OnDemand
from generator.website.pages import pages_to_come, write_pages
from generator.website.root import write_root
from generator.website.serve import Remark
from generator.website.values import PageFact, SiteInput

NOT_SPOKEN = Rule(
    "preview-language-unknown",
    "The language asked for cannot be shown.",
    "The clinic does not list it, or it is withheld.",
    "name one of the clinic's languages with --language",
)
RULES = (NOT_SPOKEN,)

Sources = Mapping[str, Sequence[str]]


class Preview:
    """The pages that are shown, and the state of the content from which they were made."""

    def __init__(self, output: Path) -> None:
        self.output = output
        self._pages: OnDemand | None = None
        self._language = ""
        self._catalogue: Catalogue | None = None
        self._sources: Sources = {}

    def show(self, site: Site, sources: Sources) -> tuple[Problem, ...]:
        """Take a state without errors; the first is made whole, later what changed, when it is asked for."""
        if self._pages is None:
            shutil.rmtree(self.output, ignore_errors=True)
        written = write_sources(site, self.output, _write_none if self._pages else write_pages)
        if self._pages is None:
            _, problems = build_languages(written.jobs, workers=1)
            if problems:
                return problems
            self._pages = OnDemand(written.jobs[0])
        write_root(written.inputs, written.assets, self.output)
        self._pages.renew(pages_to_come(written.inputs[0]))
        self._language = site.spoken[0].voice.code
        self._catalogue, self._sources = site.spoken[0].catalogue, dict(sources)
        return ()

    def make(self, path: str) -> None:
        """Make one page, a path below the site's root, if it is not as the content is now."""
        language, _, rest = path.partition("/")
        if self._pages is not None and language == self._language:
            self._pages.make(rest)

    def remarks(self, problems: Sequence[Problem], sources: Sources) -> tuple[Remark, ...]:
        """Return what is shown of findings; notes are left to ``check``.

        Each stands beside the sentence, exercise or phase that the shown pages have at its line.
        """
        shown = [one for one in problems if one.severity is not Severity.NOTE]
        return tuple(self._remark(one, sources) for one in shown)

    def _remark(self, problem: Problem, sources: Sources) -> Remark:
        place = problem.place
        lines = as_text(problem, sources)
        if self._catalogue is None:
            return Remark(lines)
        line = line_before(self._sources.get(place.path, ()), sources.get(place.path, ()), place.line)
        spot = Place(place.path, line, place.column)
        text, page = next(_spots(self._catalogue, spot), (None, ""))
        brief = f"{place}: {problem.message}; {problem.remedy}"
        return Remark(lines, brief, str(text) if text else "", f"{self._language}/{page}" if page else "")


def _write_none(_: SiteInput, folder: Path) -> Sequence[PageFact]:
    """Leave the pages to be made when they are asked for."""
    folder.mkdir(parents=True, exist_ok=True)
    return ()


def not_spoken(catalogue: Catalogue, language: str, spoken: Sequence[Spoken]) -> Iterator[Problem]:
    """Yield a finding where the language asked for is not among those that can be shown."""
    if language not in [one.voice.code for one in spoken]:
        there = ", ".join(catalogue.clinic.languages)
        message = f"'{language}' cannot be shown; the clinic lists: {there}"
        yield NOT_SPOKEN.at(catalogue.clinic.at("languages"), message)


def line_before(old: Sequence[str], new: Sequence[str], line: int) -> int:
    """Return the line that a line of a file had before the file was changed."""
    if old == new or not old:
        return line
    matcher = SequenceMatcher(None, old, new, autojunk=False)
    for _, old_start, old_end, new_start, new_end in matcher.get_opcodes():
        if new_start < line <= new_end:
            return min(old_start + line - new_start, max(old_end, old_start + 1))
    return line


def _spots(catalogue: Catalogue, place: Place) -> Iterator[tuple[Text, str]]:
    """Yield where a finding belongs, the nearest first: a text, and the only page meant ("": any)."""
    texts = [text for text in texts_of(catalogue) if text.place.path == place.path]
    exact = [text for text in texts if text.place.line == place.line]
    yield from ((text, "") for text in exact if text.place.column == place.column)
    yield from ((text, "") for text in exact)
    for folder, items in (("exercises", catalogue.exercises), ("daily-life", catalogue.daily_life)):
        for item in items.values():
            if item.place.path == place.path:
                yield item.name, f"{folder}/{item.id}.html"
    for programme in catalogue.programmes.values():
        if programme.place.path == place.path:
            yield from _in_programme(catalogue, programme, place.line)


def _in_programme(catalogue: Catalogue, programme: Programme, line: int) -> Iterator[tuple[Text, str]]:
    """Yield the use or the phase in which a line lies, else the programme itself."""
    for phase in reversed(programme.phases):
        page = f"programmes/{programme.id}/phase-{phase.number}.html"
        for use in reversed(phase.uses):
            if use.place.line <= line and phase.place.line <= line:
                yield catalogue.exercises[use.use].name, page
        if phase.place.line <= line:
            yield phase.name, page
    yield programme.name, f"programmes/{programme.id}/index.html"
