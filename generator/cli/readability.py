"""``readability``: prints how hard each text for patients is, with the sentences to begin with."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import click

from generator.cli.shared import (
    DONE,
    NOT_STARTED,
    PROBLEMS,
    content_option,
    format_option,
    print_json,
    print_problems,
)
from generator.pipeline import check_catalogue
from generator.steps.plain_language import Measured, measure_texts


@click.command()
@content_option
@click.option("--language", help="Language code; the content's own where left out.")
@format_option
def readability(content: Path, language: str | None, form: str) -> int:
    """Measure how hard the texts for patients are to read, hardest first."""
    checked = check_catalogue(content)
    if checked.catalogue is None:
        print_problems(checked.problems, checked.sources, form)
        return PROBLEMS
    chosen = language or checked.catalogue.source_language
    if chosen not in checked.catalogue.clinic.languages:
        listed = ", ".join(checked.catalogue.clinic.languages)
        click.echo(f"The clinic has no language '{chosen}'; name one of: {listed}", err=True)
        return NOT_STARTED
    found = measure_texts(checked.catalogue, content, chosen)
    if found.problems and not found.levels:
        print_problems(found.problems, checked.sources, form)
        return PROBLEMS
    if form == "json":
        print_json(_as_json(found))
    else:
        click.echo("\n".join(_as_text(found)))
    return DONE


def _as_text(found: Measured) -> list[str]:
    if found.measure is None:
        return [f"'{found.language}' puts no spaces between words, so no formula can count them."]
    if not found.levels:
        return [f"There are no texts in '{found.language}' yet."]
    side = "at most" if found.measure.rising else "at least"
    lines = [
        f"{found.measure.name} in '{found.language}', wanted is {side} {found.measure.target:g}. "
        "Words that the glossary explains count as easy; 'all' counts every word as it is.",
        "",
        f"{'':2}{'what':44} {'value':>6} {'all':>6} {'LIX':>6} {'words':>6}",
    ]
    for level in found.levels:
        mark = "! " if found.measure.too_hard(level.value) else "  "
        name = f"{level.kind} {level.id}" if level.kind != level.id else level.kind
        figures = f"{level.value:6.1f} {level.unexplained:6.1f} {level.lix:6.1f} {level.counts.words:6}"
        lines.append(f"{mark}{name:44} {figures}")
    lines += ["", "The hardest sentences:"]
    for level in found.levels:
        # A booklet's sentences are those of its phase and its exercises.
        if level.kind == "booklet":
            continue
        lines.append(f"{level.kind} {level.id}")
        lines += [f"  {item.value:5.1f}  {item.place}: {item.words}" for item in level.hardest]
    return lines


def _as_json(found: Measured) -> dict[str, Any]:
    measure = found.measure
    return {
        "format": 1,
        "language": found.language,
        "measure": measure.name if measure else None,
        "target": measure.target if measure else None,
        "items": [
            {
                "kind": level.kind,
                "id": level.id,
                "value": round(level.value, 2),
                "all_words": round(level.unexplained, 2),
                "lix": round(level.lix, 2),
                "beside": {name: round(value, 2) for name, value in level.beside.items()},
                "words": level.counts.words,
                "sentences": level.counts.sentences,
                "above_target": bool(measure and measure.too_hard(level.value)),
                "hardest": [
                    {
                        "words": item.words,
                        "value": round(item.value, 2),
                        "path": item.place.path,
                        "line": item.place.line,
                        "column": item.place.column,
                    }
                    for item in level.hardest
                ],
            }
            for level in found.levels
        ],
    }
