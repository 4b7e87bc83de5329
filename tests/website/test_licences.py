"""The page about the publisher names every part by other makers with its licence, alike on every machine."""

from __future__ import annotations

import importlib.resources
import re
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont  # type: ignore[import-untyped]  # it ships no types

from generator.website.fonts import FACES
from tests.content import FILES
from tests.website.written import Written, written

LOCK = Path(__file__).parents[2] / ".locks" / "run.txt"


@pytest.fixture(scope="module")
def english(tmp_path_factory: pytest.TempPathFactory) -> Written:
    """Return the English pages of the small content."""
    return written(FILES, tmp_path_factory.mktemp("licences"))


def rows(pages: Written, table: int) -> dict[str, list[str]]:
    """Return the cells of a table of licences, by the name in each row."""
    found = pages.page("about.html").select("table.pb-table--licences")[table].select("tbody tr")
    cells = [[cell.get_text(" ", strip=True) for cell in row.select("th, td")] for row in found]
    return {name: rest for name, *rest in cells}


def test_every_locked_package_is_named_with_version_licence_and_purpose(english: Written) -> None:
    """What the lock installs is what the page names: no package more, none less, none without a licence."""
    locked = dict(re.findall(r"(?m)^([a-z0-9][a-z0-9.-]*)==(\S+)", LOCK.read_text(encoding="utf-8")))
    named = rows(english, 1)
    assert {name: cells[0] for name, cells in named.items()} == locked
    for name, (_, licence, purpose) in named.items():
        assert licence, f"{name}: type its licence into generator/website/licences.json"
        assert purpose not in ("", "Needed by:"), f"{name}: say what it is for in website/licences.py"


def test_what_the_program_asks_for_itself_says_what_for(english: Written) -> None:
    """Words for what the program itself uses, names of its users for the rest; licences as published."""
    named = rows(english, 1)
    assert named["weasyprint"][2] == "Printing the booklets"
    assert named["tinycss2"][2] == "Needed by: cssselect2, weasyprint"
    # Said by the projects' own pages on the package index: MIT, MPL-2.0, Apache-2.0 or BSD-2-Clause.
    assert named["mkdocs-material"][1] == "MIT"
    assert named["pikepdf"][1] == "MPL-2.0"
    assert named["packaging"][1] == "Apache-2.0 OR BSD-2-Clause"


def test_every_typeface_is_named_with_the_licence_that_its_file_states(english: Written) -> None:
    """The name table of each font file says family (ID 1) and licence (ID 13); the page says the same."""
    named = rows(english, 0)
    families = set()
    for face in FACES:
        files = importlib.resources.files(face.package).joinpath("files", face.file)
        with importlib.resources.as_file(files) as path:
            names = TTFont(path)["name"]
        families.add(names.getBestFamilyName())
        assert "SIL Open Font License" in names.getDebugName(13)
    assert set(named) == families
    assert {cells[1] for cells in named.values()} == {"OFL-1.1"}


def test_names_and_licences_keep_their_direction(english: Written) -> None:
    """A name, a version and a licence stay left to right and English on a page of any language."""
    for row in english.page("about.html").select("table.pb-table--licences tbody tr"):
        marked = [(part.get("dir"), part.get("lang", "en")) for part in row.select("bdi")]
        assert marked[:3] == [("ltr", "en")] * 3
        assert set(marked) == {("ltr", "en")}
