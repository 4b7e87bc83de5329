"""The main job on the demonstration: every address is there, safe, and as the catalogue says."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from generator.catalogue.values import Catalogue
from generator.progression import arrange
from generator.progression.session import whole_session
from generator.publish import verify
from generator.reading import read_content
from tests.content import write_content
from tests.whole.command import PROJECT, bytes_of, phasebook
from tests.whole.test_languages import filled

pytestmark = pytest.mark.slow


@pytest.fixture(scope="module")
def catalogue() -> Catalogue:
    """Return the demonstration's catalogue."""
    found = read_content(PROJECT / "content").catalogue
    assert found is not None
    return found


def test_every_pinned_address_is_there(demo: Path, catalogue: Catalogue) -> None:
    """Each programme, phase, exercise and booklet has its page in every language, and links keep working."""
    wanted = {"index.html", "404.html", "manifest.json"}
    for language in (folder.name for folder in demo.iterdir() if (folder / "index.html").exists()):
        pages = ["index", "warning-signs", "glossary", "about", "exercises/index"]
        pages += [f"exercises/{id_}" for id_ in catalogue.exercises]
        for id_, programme in catalogue.programmes.items():
            pages += [f"programmes/{id_}/index", f"clinicians/{id_}"]
            pages += [f"programmes/{id_}/phase-{phase.number}" for phase in programme.phases]
            wanted |= {f"{language}/booklets/{id_}-phase-{phase.number}.pdf" for phase in programme.phases}
            wanted.add(f"{language}/booklets/{id_}-protocol.pdf")
        wanted |= {f"{language}/{page}.html" for page in pages}
    assert wanted - set(bytes_of(demo)) == set()
    assert any(path.startswith("en/") for path in wanted)


def test_the_manifest_names_every_file(demo: Path) -> None:
    """The manifest's sums are those of the files, no file is missing and none is extra."""
    assert verify(demo) == ()
    assert json.loads((demo / "manifest.json").read_text(encoding="utf-8"))["format"] == 1


def test_orders_on_pages_are_the_computed_ones(demo: Path, catalogue: Catalogue) -> None:
    """A phase page follows its session, the clinicians' page the order of introduction."""
    for id_, order in arrange(catalogue).items():
        session = [
            place.exercise
            for phase in catalogue.programmes[id_].phases
            for place in whole_session(catalogue, order, phase).places
        ]
        introduced = [placed.exercise for window in order.windows for placed in order.of_phase(window.phase)]
        phases = [f"programmes/{id_}/phase-{window.phase}.html" for window in order.windows]
        listed = [one for page in phases for one in _exercises_on(demo / "en" / page, ".pb-do__name a")]
        # What is done all through the day has no turn.
        assert [one for one in listed if one in session] == session
        rows = "#order th[scope=row] a"
        assert _exercises_on(demo / "en" / "clinicians" / f"{id_}-order.html", rows) == introduced


def _exercises_on(page: Path, links: str) -> list[str]:
    """Return the exercises that links of a page lead to, in the order of the page."""
    soup = BeautifulSoup(page.read_text(encoding="utf-8"), "html.parser")
    return [Path(str(link["href"]).split("#")[0]).stem for link in soup.select(links)]


def test_no_prerequisite_stands_after_what_needs_it(catalogue: Catalogue) -> None:
    """Common practice, no source: what must be mastered first is introduced first."""
    for order in arrange(catalogue).values():
        first: dict[str, int] = {}
        for place, placed in enumerate(order.places):
            first.setdefault(placed.exercise, place)
        for id_, place in first.items():
            for needed in catalogue.exercises[id_].requires:
                assert first.get(needed, -1) < place


def test_the_same_catalogue_gives_the_same_bytes(tmp_path: Path) -> None:
    """Another path, another process, another time zone and another hash seed change not one byte.

    Nor does it matter whether something is made or taken from an earlier build. Two languages of the small
    content: the demonstration in five would take minutes.
    """
    content = write_content(tmp_path / "content")
    assert phasebook("new", "language", "de", "--content", content).returncode == 0
    filled(content / "translations" / "de.po", refusal=" nicht")
    environment = {"TZ": "Asia/Tokyo", "PYTHONHASHSEED": "7", "LC_ALL": "C.UTF-8"}
    copied = shutil.copytree(content, tmp_path / "elsewhere" / "content")
    sites = []
    for where, workers, around in ((content, "2", {}), (copied, "1", environment)):
        sites.append(where.parent / "site")
        done = phasebook(
            *("build", "--anew", "--content", where, "--output", sites[-1], "--workers", workers),
            environment=around,
        )
        assert done.returncode == 0, done.stdout + done.stderr
    sites.append(tmp_path / "taken")
    done = phasebook("build", "--explain", "--content", content, "--output", sites[-1])
    assert "Nothing was made anew." in done.stdout, done.stdout + done.stderr
    assert (sites[0] / "de" / "booklets" / "tendon-repair-phase-1.pdf").exists()
    assert bytes_of(sites[0]) == bytes_of(sites[1]) == bytes_of(sites[2])
