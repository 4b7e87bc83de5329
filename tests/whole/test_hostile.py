"""What is typed or asked for never becomes code: sixty payloads in every field, translation, id and address.

The policy is the one that a clinic is told to serve under (site_assets/nginx.conf). The reader refuses angle
brackets; here they are let in behind its back, so that the writers of pages and paper stand alone.
"""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path
from typing import Any
from urllib.parse import quote

import pikepdf
import pytest

from generator.catalogue.base import Text
from generator.pipeline import Request, build_site
from generator.problems import as_text
from generator.reading import kinds
from generator.steps.kinds import Kinds
from generator.wording import soundness
from tests.browsing import served
from tests.content import FILES, findings_of
from tests.whole.command import PROJECT
from tests.whole.hostile import PAYLOADS, at_last, write_hostile

# Said by the page where something was loaded, refused or begun that is none of ours.
LISTEN = (
    "window.told = []; window.alert = () => told.push('executed');"
    "addEventListener('securitypolicyviolation', event => told.push('refused: ' + event.violatedDirective))"
)
RUNS = re.compile("^/(JS|JavaScript|OpenAction|AA|Launch|SubmitForm|EmbeddedFile|RichMedia)$")


@pytest.fixture
def gate_open(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let angle brackets pass the reader of the content and of translations."""
    words, plain = kinds.Words.read, kinds.Plain.read

    def read_words(self: kinds.Words, node: Any, findings: Any) -> Any:
        read = words(self, node, findings)
        return replace(read, source=at_last(read.source)) if isinstance(read, Text) else read

    def read_plain(self: kinds.Plain, node: Any, findings: Any) -> Any:
        read = plain(self, node, findings)
        return at_last(read) if isinstance(read, str) else read

    monkeypatch.setattr(kinds.Words, "read", read_words)
    monkeypatch.setattr(kinds.Plain, "read", read_plain)
    monkeypatch.setattr(soundness, "_TAG", re.compile("(?!)"))


@pytest.mark.slow
@pytest.mark.usefixtures("gate_open")
def test_sixty_payloads_stay_words_on_every_page_and_sheet(tmp_path: Path, browser: Any) -> None:
    """Each page is opened in Chromium with two more as query and fragment: nothing runs or is loaded."""
    assert len(set(PAYLOADS)) == 60
    texts, entries = write_hostile(tmp_path / "content")
    assert (texts > 100, entries > 80) == (True, True)
    request = Request(
        tmp_path / "content", tmp_path / "site", PROJECT, PROJECT / ".phasebook", 2, Kinds.STANDARD
    )
    outcome = build_site(request, lambda _: None)
    assert outcome.published, "\n".join(map(as_text, outcome.problems))
    assert not outcome.withheld
    pages = sorted(path.relative_to(request.output).as_posix() for path in request.output.rglob("*.html"))
    assert len(pages) == 40
    with served(request.output) as site:
        assert opened(browser, site, pages) == []
    booklets = list(request.output.rglob("*.pdf"))
    assert len(booklets) == 6
    assert [name for path in booklets for name in runs(path)] == []


def opened(browser: Any, site: str, pages: list[str]) -> list[str]:
    """Return what went wrong on any page: code that ran, what was refused, asked for elsewhere, or broken."""
    found: list[str] = []
    tab = browser.new_page()
    tab.on("pageerror", lambda error: found.append(f"{tab.url}: {error}"))
    tab.on("dialog", lambda dialog: found.append(f"{tab.url}: {dialog.type}"))
    tab.on("request", lambda asked: found.extend([asked.url][: not asked.url.startswith((site, "data:"))]))
    tab.add_init_script(LISTEN)
    for number, page in enumerate(pages):
        query, fragment = (quote(PAYLOADS[at % len(PAYLOADS)]) for at in (number, number + 30))
        tab.goto(f"{site}{page}?q={query}#{fragment}", wait_until="load")
        found += [f"{page}: {one}" for one in tab.evaluate("() => told")]
        if not tab.locator("h1").count():
            found.append(f"{page}: broken")
    tab.close()
    return found


def runs(path: Path) -> list[str]:
    """Return the keys by which a PDF file runs or sends something, and links that are no address."""
    found: list[str] = []
    with pikepdf.open(path) as pdf:
        objects: Any = pdf.objects
        for thing in objects:
            if isinstance(thing, pikepdf.Dictionary):
                found += [str(key) for key in thing if RUNS.match(str(key))]
                if "/URI" in thing and not re.match("https://|tel:", str(thing["/URI"])):
                    found.append(str(thing["/URI"]))
    return found


@pytest.mark.parametrize("payload", PAYLOADS)
def test_no_payload_is_an_id_or_a_file_name(payload: str) -> None:
    """As id of an entry, as name of a file, and as key: refused at its place, and never a path."""
    name = payload.replace("/", "")
    for files in (
        {**FILES, "glossary.yml": f"{payload!r}:\n  term: Tendon\n  meaning: A cord.\n"},
        {**FILES, f"exercises/{name}.yml": FILES["exercises/ankle-pump.yml"]},
        {**FILES, "clinic.yml": f"{FILES['clinic.yml']}{payload!r}: x\n"},
    ):
        found = [one for one in findings_of(files) if one.severity.value == "error"]
        assert found
        assert all(one.place.path in files for one in found)
