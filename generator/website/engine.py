"""Runs MkDocs, one fresh process per language, and turns everything it says into findings.

MkDocs keeps plugins, counters and caches in its process, so languages must not share one. It reports by log
records; silence is what a good build sounds like, and any record of weight becomes a `Problem`.
"""

from __future__ import annotations

import html
import json
import logging
import os
import re
import shutil
import sys
import warnings
from collections.abc import Sequence
from concurrent.futures import Future
from concurrent.futures.process import BrokenProcessPool
from dataclasses import dataclass
from pathlib import Path

from generator.pool import pool
from generator.problems import Place, Problem, Rule, in_order
from generator.shelf import Shelf
from generator.website.kept import depends_on, keep, taken

ENGINE_WARNING = Rule(
    code="site-engine-warning",
    symptom="The site builder complained about a page or its settings.",
    cause="A page, the menu or a setting is not as the builder expects it; a clean build is silent.",
    remedy="read the message; if content/ is sound, report it to whoever looks after the program",
)
ENGINE_LINK = Rule(
    code="site-page-link",
    symptom="A page links to another page that was not written.",
    cause="The page linked to was renamed, removed, or left out in this language.",
    remedy="name a page that exists, or remove the link",
)
ENGINE_FAILED = Rule(
    code="site-engine-failed",
    symptom="The site builder stopped before all pages of a language were written.",
    cause="A template or setting is broken, the process was killed, or the disk is full.",
    remedy="mend what the message names and build again; the published site is untouched",
)

SEARCH = Path("search", "search_index.json")
RULES = (ENGINE_WARNING, ENGINE_LINK, ENGINE_FAILED)

LINK_RECORD = re.compile(r"^Doc file '(?P<page>[^']+)' contains (?:a|an) .*link", re.DOTALL)
ENVIRONMENT = {
    "NO_MKDOCS_2_WARNING": "1",  # the theme's notice about its own future is no finding about this site
    "SOURCE_DATE_EPOCH": "0",  # no clock in any output
}


@dataclass(frozen=True)
class SiteJob:
    """One language to build: code, ``ltr`` or ``rtl``, written pages, where the HTML goes, configuration."""

    language: str
    direction: str
    pages: Path
    output: Path
    config: Path


def build_languages(
    jobs: Sequence[SiteJob], workers: int, shelf: Shelf | None = None
) -> tuple[tuple[str, ...], tuple[Problem, ...]]:
    """Build every language into its output folder; return which were built anew, and what went wrong, sorted.

    `workers` is the most processes at a time. Places name the page under its language. shelf: where languages
    whose pages would come out the same are taken from, and clean new ones are put.
    """
    names = {job: shelf.name(*depends_on(job.config, job.pages)) for job in jobs} if shelf else {}
    missing = [job for job in jobs if shelf is None or not taken(shelf, names[job], job.output)]
    problems = _built(missing, workers)
    if shelf and not problems:
        for job in missing:
            keep(shelf, names[job], job.output)
    return tuple(job.language for job in missing), problems


def _built(jobs: Sequence[SiteJob], workers: int) -> tuple[Problem, ...]:
    if not jobs:
        return ()
    with pool(max(1, min(workers, len(jobs))), fresh=True, task_each=True) as processes:
        running = [(job, processes.submit(_build, job)) for job in jobs]
        found = [problem for job, future in running for problem in _outcome(job, future)]
    return in_order(found)


def _outcome(job: SiteJob, future: Future[tuple[Problem, ...]]) -> tuple[Problem, ...]:
    try:
        return future.result()
    except BrokenProcessPool:
        return (ENGINE_FAILED.at(Place(job.language), "its process ended before it was done"),)


class _Listener(logging.Handler):
    """Keeps every record of weight, in order."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.messages: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.messages.append(record.getMessage())


def _build(job: SiteJob) -> tuple[Problem, ...]:
    """Build one language, in a process of its own, whose environment and logging it may change."""
    os.environ.update(ENVIRONMENT)
    listener = _Listener()
    logging.getLogger().addHandler(listener)
    logging.captureWarnings(True)
    warnings.simplefilter("default")
    stopped = ""
    try:
        _run_mkdocs(job)
    except SystemExit as stop:  # strict mode stops this way; what it counted has been heard already
        stopped = "" if listener.messages else str(stop)
    except Exception as error:  # a fault in a template or library is a finding here, never a traceback
        stopped = f"{type(error).__name__}: {error}"
    found = [_finding(job, message) for message in dict.fromkeys(listener.messages)]
    if stopped:
        found.append(ENGINE_FAILED.at(Place(job.language), stopped))
    return tuple(found)


def _run_mkdocs(job: SiteJob) -> None:
    from mkdocs.commands.build import build  # imported here: the environment must be set first
    from mkdocs.config import load_config

    with job.config.open("rb") as stream:
        config = load_config(stream, strict=True)
    config.plugins.on_startup(command="build", dirty=False)
    build(config)
    config.plugins.on_shutdown()
    # The theme's files of every language are the same; assets.py has put what is used at the root.
    shutil.rmtree(job.output / "assets")
    _escape_titles(job.output / SEARCH)
    sys.stdout.flush()


def _escape_titles(index: Path) -> None:
    """Escape the titles of the search index: the field shows them as markup, and its texts are escaped."""
    found = json.loads(index.read_text(encoding="utf-8"))
    for page in found["docs"]:
        page["title"] = html.escape(page["title"], quote=False)
    index.write_text(json.dumps(found, separators=(",", ":")), encoding="utf-8")


def _finding(job: SiteJob, message: str) -> Problem:
    link = LINK_RECORD.match(message)
    if link:
        return ENGINE_LINK.at(Place(f"{job.language}/{link['page']}"), message)
    return ENGINE_WARNING.at(Place(job.language), message)
