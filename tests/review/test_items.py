"""Items cover the content, and their fingerprints change with the meaning and with nothing else."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.body.shown import with_angles
from generator.catalogue.editorial import Scope
from generator.catalogue.values import Catalogue
from generator.review.items import items_of
from generator.wording.messages import translatable
from tests.content import FILES, catalogue_of, read, with_change

CATALOGUE = catalogue_of()
State = dict[tuple[str, Scope], str]


def state_of(catalogue: Catalogue) -> State:
    """Return every fingerprint that needs no translation."""
    return {
        (item.id, scope): item.fingerprint(scope)
        for item in items_of(catalogue).values()
        for scope in Scope
        if item.has(scope)
    }


def changed(files: dict[str, str]) -> set[tuple[str, str]]:
    """Return which items changed in which scope, seen from the small content."""
    before, after = state_of(CATALOGUE), state_of(catalogue_of(files))
    return {
        (name, scope.value)
        for name, scope in before | after
        if before.get((name, scope)) != after.get((name, scope))
    }


def test_every_text_belongs_to_an_item() -> None:
    """Whatever is translated is also read by somebody: no text lies outside all items."""
    held = {key for item in items_of(CATALOGUE).values() for key in item.texts}
    assert held == {message.key for message in translatable(CATALOGUE)}


def test_items_have_the_ids_of_the_command_line() -> None:
    """An item's id says what it is, and where it stands."""
    assert list(items_of(CATALOGUE)) == [
        "safety",
        "words",
        "programme/tendon-repair",
        "phase/tendon-repair/1",
        "use/tendon-repair/1/ankle-pump",
        "phase/tendon-repair/2",
        "use/tendon-repair/2/heel-raise",
        "exercise/ankle-pump",
        "exercise/heel-raise",
        "study/invented-2001",
    ]


RAISE = "exercises/heel-raise.yml"
REPAIR = "programmes/tendon-repair.yml"


@pytest.mark.parametrize(
    ("path", "old", "new", "wanted"),
    [
        (
            RAISE,
            "Lower slowly.",
            "Sink slowly.",
            {("exercise/heel-raise", "content"), ("exercise/heel-raise", "language")},
        ),
        (RAISE, "hold: 3 s", "hold: 4 s", {("exercise/heel-raise", "content")}),
        (RAISE, "mean: 34.5", "mean: 34.6", {("exercise/heel-raise", "evidence")}),
        (RAISE, "read: [mean, sd]", "read: [mean]", {("exercise/heel-raise", "evidence")}),
        (
            RAISE,
            "demand: lying or sitting",
            "demand: standing on two legs",
            {("exercise/heel-raise", "content")},
        ),
        (
            "studies.yml",
            "normalisation: mvic",
            "normalisation: mvic\n  doi: 10.1000/1",
            {("study/invented-2001", "evidence")},
        ),
        (REPAIR, "days-a-week: 3", "days-a-week: 2", {("use/tendon-repair/2/heel-raise", "content")}),
        (
            REPAIR,
            "      during: 3",
            "      during: 2",
            {("phase/tendon-repair/2", "content"), ("phase/tendon-repair/2", "evidence")},
        ),
        (REPAIR, "aim: protects", "aim: trains", {("programme/tendon-repair", "content")}),
        (
            REPAIR,
            "limit: 0 deg",
            "limit: 5 deg",
            {("programme/tendon-repair", "content"), ("programme/tendon-repair", "evidence")},
        ),
        ("clinic.yml", 'emergency: "112"', 'emergency: "999"', {("safety", "content")}),
        ("clinic.yml", "paper: A4", "paper: Letter", set()),
        (
            "safety.yml",
            "Call the clinic today.",
            "Call the clinic now.",
            {("safety", "content"), ("safety", "language"), ("safety", "evidence")},
        ),
        ("glossary.yml", "ties a muscle", "joins a muscle", {("words", "content"), ("words", "language")}),
    ],
)
def test_a_change_ends_exactly_what_it_touches(
    path: str, old: str, new: str, wanted: set[tuple[str, str]]
) -> None:
    """What an editor changes alters the fingerprints of its own item and scope, and no others."""
    assert changed(with_change(FILES, path, old, new)) == wanted


TREES: dict[str, Any] = {path: yaml.load(text, yaml.BaseLoader) for path, text in FILES.items()}
# What takes no part in any item: how and where the site is published.
ELSEWHERE = {"paper", "reach", "demo", "languages"}


def shuffled(value: Any, draw: st.DrawFn) -> Any:
    """Return a value with its keys in another order; the order of a list is kept."""
    if isinstance(value, dict):
        return {key: shuffled(value[key], draw) for key in draw(st.permutations(list(value)))}
    return [shuffled(item, draw) for item in value] if isinstance(value, list) else value


@st.composite
def other_layouts(draw: st.DrawFn) -> dict[str, str]:
    """Return the small content with comments, keys in another order and another layout."""
    comment = "# " + draw(st.text("abc: -", max_size=20)) + "\n\n"
    return {
        path: comment + yaml.safe_dump(shuffled(tree, draw), sort_keys=False, allow_unicode=True)
        for path, tree in TREES.items()
    }


@settings(max_examples=25, deadline=None)
@given(other_layouts())
def test_comments_and_order_of_keys_change_nothing(files: dict[str, str]) -> None:
    """A fingerprint is the same whatever the file looks like, as long as it says the same."""
    assert state_of(catalogue_of(files)) == state_of(CATALOGUE)


def leaves(value: Any, way: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    """Yield the way to every single value of a tree."""
    if isinstance(value, str):
        yield way
        return
    for key, item in value.items() if isinstance(value, dict) else enumerate(value):
        yield from leaves(item, (*way, key))


LEAVES = [
    (path, way) for path, tree in TREES.items() for way in leaves(tree) if not (way and way[0] in ELSEWHERE)
]


def replaced(value: Any, way: tuple[Any, ...], new: str) -> Any:
    """Return a tree with one single value replaced."""
    if not way:
        return new
    items = value.items() if isinstance(value, dict) else enumerate(value)
    changed_items = [(key, replaced(item, way[1:], new) if key == way[0] else item) for key, item in items]
    return dict(changed_items) if isinstance(value, dict) else [item for _, item in changed_items]


def value_at(path: str, way: tuple[Any, ...]) -> str:
    """Return the single value at a way."""
    value = TREES[path]
    for key in way:
        value = value[key]
    return str(value)


OTHERS = [*sorted({value_at(path, way) for path, way in LEAVES}), "1", "2", "4", "7", "Other words."]


@pytest.mark.slow
@settings(max_examples=300, deadline=None)
@given(st.sampled_from(LEAVES), st.sampled_from(OTHERS))
def test_any_change_of_meaning_changes_a_fingerprint(leaf: tuple[str, tuple[Any, ...]], new: str) -> None:
    """Whatever single value of the content says something else, some fingerprint is another one."""
    path, way = leaf
    tree = replaced(TREES[path], way, new)
    files = {**FILES, path: yaml.safe_dump(tree, sort_keys=False, allow_unicode=True)}
    found = read(files)
    if found.catalogue is None or found.problems:
        return
    same = found.catalogue == CATALOGUE
    assert (state_of(found.catalogue) == state_of(CATALOGUE)) is same


def test_what_the_program_works_out_takes_no_part() -> None:
    """Angles read from poses change with the program; what was typed is what was signed."""
    assert state_of(with_angles(CATALOGUE)) == state_of(CATALOGUE)
