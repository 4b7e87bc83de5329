"""The preview finds the sentence that a finding is about, on the page that is shown."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.pipeline import Request, preview_site
from generator.steps.previewing import Preview, line_before
from generator.website.serve import Remark
from tests.content import FILES, with_change, write_content
from tests.website.small_site import PROJECT

HEEL = "exercises/heel-raise.yml"
PROGRAMME = "programmes/tendon-repair.yml"
pytestmark = pytest.mark.slow


@pytest.fixture(scope="module")
def world(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Preview, Request]:
    """Return the content folder, a preview that shows it, and the request to renew it."""
    folder = tmp_path_factory.mktemp("preview")
    content = write_content(folder / "content")
    request = Request(content, folder / "work" / "site", PROJECT, folder / "work")
    preview = Preview(request.output)
    assert preview_site(request, None, preview).published
    return content, preview, request


def remarks(world: tuple[Path, Preview, Request], path: str, old: str, new: str) -> tuple[Remark, ...]:
    """Change one thing, return what the preview remarks, and change it back."""
    content, preview, request = world
    write_content(content, with_change(FILES, path, old, new))
    outcome = preview_site(request, None, preview)
    found = preview.remarks(outcome.problems, outcome.sources)
    write_content(content)
    preview_site(request, None, preview)
    return found


def test_a_mistake_in_a_sentence_stands_beside_it(world: tuple[Path, Preview, Request]) -> None:
    """The sentence is named as the page still shows it, though its line moved down since."""
    old = next(line for line in FILES[HEEL].splitlines() if line.startswith("start: "))
    found = remarks(world, HEEL, old, f"# one\n# two\n{old} {{hodl}}")
    assert [one.words for one in found] == [old.removeprefix("start: ")]
    assert "heel-raise.yml" in found[0].brief


def test_a_mistake_in_a_dose_stands_beside_the_exercise_in_its_phase(
    world: tuple[Path, Preview, Request],
) -> None:
    """A dose is no sentence; its finding stands beside the exercise on the page of the phase."""
    found = remarks(world, PROGRAMME, "[2 x 8, 3 x 8, 3 x 10, ", "[2 x 8, 3 x 8, 9 x 10, ")
    pages = {(one.words, one.page) for one in found}
    assert pages == {("Heel raise with both legs", "en/programmes/tendon-repair/phase-2.html")}


def test_a_changed_sentence_is_on_its_page(world: tuple[Path, Preview, Request]) -> None:
    """The page shows the new sentence once it is asked for."""
    content, preview, request = world
    page = request.output / "en/exercises/heel-raise.html"
    write_content(content, with_change(FILES, HEEL, "name: Heel raise with both legs", "name: Heels up"))
    assert preview_site(request, None, preview).published
    preview.make("en/exercises/heel-raise.html")
    assert "Heels up" in page.read_text(encoding="utf-8")
    write_content(content)
    preview_site(request, None, preview)


def test_a_language_that_is_not_there_is_told(world: tuple[Path, Preview, Request]) -> None:
    """``--language xx`` names the languages that can be shown."""
    _, preview, request = world
    outcome = preview_site(request, "xx", preview)
    assert not outcome.published
    told = [one.message for one in outcome.problems if one.code == "preview-language-unknown"]
    assert told == ["'xx' cannot be shown; the clinic lists: en"]


@pytest.mark.parametrize(
    ("old", "new", "line", "before"),
    [
        (["a", "b", "c"], ["a", "b", "c"], 2, 2),
        (["a", "b", "c"], ["x", "a", "b", "c"], 3, 2),
        (["a", "b", "c"], ["a", "B", "c"], 2, 2),
        (["a", "b", "c"], ["a", "c"], 2, 3),
        ([], ["a"], 1, 1),
    ],
)
def test_a_line_is_followed_through_a_change(old: list[str], new: list[str], line: int, before: int) -> None:
    """Lines that were added or taken out above a sentence do not part it from its finding."""
    assert line_before(old, new, line) == before
