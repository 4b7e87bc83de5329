"""Reads a finished site again and compares it with the catalogue alone, asking nothing that made the site.

The audit looks for what pages and booklets say that they hold. Here the doses come from the uses in the
catalogue and the safety texts from its own file, so that whatever is lost or changed on the way is noticed.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path

from generator.catalogue.dose import DoseKind, DoseStep
from generator.catalogue.programme import Use
from generator.catalogue.values import Catalogue
from generator.publish import manifest, pages, sheets
from generator.publish.text import doses_in, holds_token, plain, squeezed

_IN_SETS = (DoseKind.REPETITIONS, DoseKind.HOLDS)
# Larger numbers are grouped in the way of a language.
_MOST = 999
# The page about the pages explains a dose by one that is nobody's.
_EXAMPLE = frozenset({"3×10"})


def differences(site: Path, catalogue: Catalogue) -> Iterator[str]:
    """Yield what the site lacks of safety texts, and each dose that differs, in every language that is there.

    Doses are read as the eye meets them, also from right to left. Texts are compared in the language of the
    content.
    """
    said = _said(catalogue)
    everything = frozenset(dose for steps in said.values() for dose in _figures(steps)) | _EXAMPLE
    for path in sorted(path for path, _ in manifest.entries(site) if path.endswith((".html", ".pdf"))):
        language, _, name = path.partition("/")
        if not name:
            continue
        seen, parts = _read(site / path, path)
        if language == catalogue.source_language:
            yield from (f"{path}: {what}" for part in parts for what in _unsaid(part, catalogue))
        steps = said.get(name)
        if not name.startswith("editors/"):
            strange = frozenset(_bare(seen)) - (everything if steps is None else frozenset(_figures(steps)))
            yield from (f"{path}: the dose {dose} is not in the catalogue" for dose in sorted(strange))
        for number in sorted(frozenset(_numbers(steps or ()))):
            if not holds_token(seen, number):
                yield f"{path}: the dose {number} is missing"
    yield from _absent(site, catalogue, said)


def _said(catalogue: Catalogue) -> Mapping[str, tuple[DoseStep, ...]]:
    """Return the dose steps of each phase, programme and exercise by the file that must print them."""
    found: dict[str, tuple[DoseStep, ...]] = {}
    for programme in catalogue.programmes.values():
        for phase in programme.phases:
            steps = _steps(phase.uses)
            found[f"programmes/{programme.id}/phase-{phase.number}.html"] = steps
            found[f"booklets/{programme.id}-phase-{phase.number}.pdf"] = steps
        found[f"booklets/{programme.id}-protocol.pdf"] = _steps(
            use for phase in programme.phases for use in phase.uses
        )
    for exercise in catalogue.exercises:
        uses = (use for _, _, use in catalogue.uses_of(exercise))
        found[f"exercises/{exercise}.html"] = _steps(uses)
    return found


def _steps(uses: Iterable[Use]) -> tuple[DoseStep, ...]:
    return tuple(step for use in uses for step in use.dose_steps)


def _figures(steps: Iterable[DoseStep]) -> Iterator[str]:
    yield from (f"{step.sets}×{step.count}" for step in steps if step.kind in _IN_SETS)


def _numbers(steps: Iterable[DoseStep]) -> Iterator[str]:
    """Yield what must be read of dose steps: sets and repetitions together, other counts by themselves."""
    for step in steps:
        if step.kind in _IN_SETS:
            yield f"{step.sets}×{step.count}"
        elif step.count <= _MOST:
            yield str(step.count)


def _bare(text: str) -> Iterator[str]:
    yield from ("".join(dose.split()) for dose in doses_in(text))


def _read(file: Path, path: str) -> tuple[str, tuple[str, ...]]:
    """Return what the eye meets in a file, and what is read on the page or on each of its sheets."""
    if path.endswith(".pdf"):
        facts = sheets.read(file, path, visual=True)
        return facts.visual, tuple(sheet.reading for sheet in facts.sheets)
    page = pages.gather(pages.parse(file.read_text(encoding="utf-8")), path)
    return page.reachable, (page.shown,)


def _unsaid(part: str, catalogue: Catalogue) -> Iterator[str]:
    """Yield the safety texts that a page or a sheet lacks."""
    safety, clinic = catalogue.safety, catalogue.clinic
    wanted = [safety.deferral.source, clinic.telephone.clinic]
    if clinic.demo:
        wanted.append(safety.demonstration.source)
    there = squeezed(part)
    yield from (f"the text {plain(text)!r} is missing" for text in wanted if squeezed(text) not in there)


def _absent(site: Path, catalogue: Catalogue, said: Mapping[str, tuple[DoseStep, ...]]) -> Iterator[str]:
    """Yield what is not there at all in the language of the content."""
    for name in (*said, "index.html", "warning-signs.html"):
        if not (site / catalogue.source_language / name).is_file():
            yield f"{catalogue.source_language}/{name} is missing"
