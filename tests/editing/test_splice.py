"""One value changes, and not one other character of the file does."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from generator.editing import with_entry, with_item, with_scalar
from generator.editing.yaml_text import Value, block_entry, flow
from generator.problems import Place, Problem
from generator.reading.nodes import Entries, Items, Node, Scalar, decode, parse
from generator.reading.spans import Span, spans
from tests.content import FILES

PATH = "sample.yml"
# One of everything an editor may have typed.
SAMPLE = """\
# How the file begins.

name: Heel raise   # an everyday name
plain-lines: one line
  and another
single: 'It''s here'
double: "a: b"  # why quoted
empty:
folded: >-  # folded on purpose
  The first line
  and the second.

kept: |
  Two
  lines
flow: [one, 'two', "three" ,four ] # four of them
group: {a: 1, b: {c: deep}, d: [x]}
list:
- first
- second  # the last one
# about the next
nested:
    - name: inner
      steps:
        - Lift.
        - Lower.
    - {name: other, steps: []}

last: end"""
TEXTS = st.text(st.characters(codec="utf-8"), max_size=60)
WORDS = st.text("abc :#,[]{}'\"-&*!|>%@é×0", min_size=1, max_size=30)


def scalars(text: str) -> list[Span]:
    """Return every scalar value of a text."""
    root = spans(PATH, text)
    assert root is not None
    return [span for span in root.all_values() if span.kind == "scalar"]


def places(node: Node) -> Iterator[tuple[Place, str]]:
    """Yield place and text of every value as the reader finds them."""
    if isinstance(node, Scalar):
        yield node.place, node.text
    elif isinstance(node, Items):
        for item in node.items:
            yield from places(item)
    elif isinstance(node, Entries):
        for _, value in node.entries:
            yield from places(value)


def read(text: str) -> Node:
    """Return what the reader makes of a text that it accepts."""
    decoded, problems = decode(PATH, text.encode("utf-8"))
    assert (problems, decoded is None) == ((), False)
    root, problems = parse(PATH, decoded or "")
    assert problems == ()
    assert root is not None
    return root


def shape(node: Node) -> object:
    """Return what a node says, without places and quotation marks."""
    if isinstance(node, Scalar):
        return node.text
    if isinstance(node, Items):
        return [shape(item) for item in node.items]
    assert isinstance(node, Entries)
    return {key.text: shape(value) for key, value in node.entries}


@pytest.mark.parametrize("text", [SAMPLE, *FILES.values()], ids=["sample", *FILES])
def test_places_are_the_readers(text: str) -> None:
    """A value is found at the place that the reader gives it, with the same text."""
    assert [(span.place, span.text) for span in scalars(text)] == list(places(read(text)))


@given(st.data(), st.sampled_from(["\n", "\r\n", "\r"]), st.one_of(TEXTS, WORDS))
def test_a_new_text_changes_nothing_else(data: st.DataObject, end: str, new: str) -> None:
    """What stands before and after a scalar stays byte for byte, and the reader reads the new text there."""
    text = SAMPLE.replace("\n", end)
    target = data.draw(st.sampled_from(scalars(text)))
    result = with_scalar(text, target.place, new)
    if isinstance(result, Problem):
        # Only what the reader refuses anywhere may be refused here.
        assert result.code == "text-not-writable"
        assert decode(PATH, new.encode())[1] or not new.isprintable()
        return
    assert result.startswith(text[: target.start])
    assert result.endswith(text[target.end :])
    before, after = list(places(read(text))), list(places(read(result)))
    at = [place for place, _ in before].index(target.place)
    assert [words for _, words in after] == [words for _, words in before[:at]] + [new] + [
        words for _, words in before[at + 1 :]
    ]


VALUES = st.recursive(
    WORDS,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(WORDS, inner, max_size=3),
    max_leaves=6,
)


@given(st.data(), st.sampled_from(["\n", "\r\n"]), VALUES)
def test_a_new_item_stands_last(data: st.DataObject, end: str, value: Value) -> None:
    """A list takes one more item of any shape; all that was there stays, character for character."""
    text = SAMPLE.replace("\n", end)
    root = spans(PATH, text)
    assert root is not None
    target = data.draw(st.sampled_from([span for span in root.all_values() if span.kind == "list"]))
    result = with_item(text, target.place, value)
    assert isinstance(result, str)
    added = len(result) - len(text)
    assert any(
        result[:at] == text[:at] and result[at + added :] == text[at:]
        for at in range(target.start, len(text) + 1)
    )


@given(st.data(), VALUES, WORDS)
def test_a_new_key_stands_last(data: st.DataObject, value: Value, key: str) -> None:
    """A group takes one more key with a value of any shape, and reads back with it."""
    root = spans(PATH, SAMPLE)
    assert root is not None
    target = data.draw(st.sampled_from([span for span in root.all_values() if span.kind == "group"]))
    assume(key not in {name.text for name, _ in target.entries})
    result = with_entry(SAMPLE, target.place, key, value)
    assert isinstance(result, str)
    assert set(SAMPLE.split("\n")) - set(result.split("\n")) <= {
        line for line in SAMPLE.split("\n") if "{" in line
    }
    assert isinstance(with_entry(result, target.place, key, value), Problem)


@given(VALUES, WORDS)
def test_written_values_read_back(value: Value, key: str) -> None:
    """A value written on one line and one written over several say the same to the reader."""
    over_lines = "\n".join(block_entry(key, value))
    in_line = "{" + flow(key) + ": " + flow(value) + "}"
    assert shape(read(over_lines)) == shape(read(in_line)) == {key: value}


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        ("Heel raise", "Toe raise", "name: Toe raise   # an everyday name"),
        ("Heel raise", "Raise: both", 'name: "Raise: both"   # an everyday name'),
        ("It's here", "It's there", "single: 'It''s there'"),
        ("a: b", "b", 'double: "b"  # why quoted'),
        ("", "told", "empty: told"),
        ("The first line and the second.", "One line.", "folded: >-  # folded on purpose\n  One line."),
        ("two", "2, zwei", "flow: [one, '2, zwei', \"three\" ,four ] # four of them"),
        ("one", "1, eins", 'flow: ["1, eins", \'two\', "three" ,four ] # four of them'),
        ("second", "next", "- next  # the last one"),
    ],
)
def test_style_is_kept(old: str, new: str, expected: str) -> None:
    """Quotation marks, folding and comments stay as the editor chose them."""
    (target,) = [span for span in scalars(SAMPLE) if span.text == old]
    result = with_scalar(SAMPLE, target.place, new)
    assert isinstance(result, str)
    assert expected in result


@pytest.mark.parametrize(
    ("before", "line", "value", "after"),
    [
        ("a: []\n", 1, "x", "a: [x]\n"),
        ("a: [x] # c\n", 1, "y", "a: [x, y] # c\n"),
        ("a: [x,]\n", 1, "y", "a: [x, y,]\n"),
        ("a:\n  - x # c\n# d\nb: z\n", 2, "y", "a:\n  - x # c\n  - y\n# d\nb: z\n"),
        ("a:\n- x", 2, {"k": "v", "l": ["m"]}, "a:\n- x\n- k: v\n  l: [m]"),
        ("a:\r\n- x\r\n", 2, "y", "a:\r\n- x\r\n- y\r\n"),
    ],
)
def test_where_an_item_goes(before: str, line: int, value: Value, after: str) -> None:
    """An item goes under the last one, as far in, before the comment of what follows."""
    column = before.split("\n")[line - 1].find("[") + 1 or before.split("\n")[line - 1].find("-") + 1
    assert with_item(before, Place(PATH, line, column), value) == after


def test_a_place_without_such_a_value_is_refused() -> None:
    """Where a list stands no text can be put, where nothing stands nothing can, and a key is no value."""
    for line, column in ((16, 7), (99, 1), (3, 1)):
        result = with_scalar(SAMPLE, Place(PATH, line, column), "new")
        assert isinstance(result, Problem)
        assert result.code == "nothing-there"
        assert result.place == Place(PATH, line, column)


@pytest.mark.parametrize("new", ["a\x00b", "a\u2066b", "a\x85b", "\ufeff"])
def test_what_no_file_may_hold_is_refused(new: str) -> None:
    """A text with invisible characters is not written, whatever quotation marks could hide it."""
    result = with_scalar(SAMPLE, scalars(SAMPLE)[0].place, new)
    assert isinstance(result, Problem)
    assert result.code == "text-not-writable"


def test_the_demonstration_can_be_edited() -> None:
    """In exercises of the demonstration a value can be changed and changed back."""
    for path in sorted((Path(__file__).parents[2] / "content" / "exercises").glob("*.yml"))[:3]:
        text = path.read_text(encoding="utf-8")
        for target in scalars(text)[::9]:
            there = with_scalar(text, target.place, "changed")
            assert isinstance(there, str)
            (back,) = [span for span in scalars(there) if span.place == target.place]
            again = with_scalar(there, back.place, target.text)
            assert isinstance(again, str)
            assert shape(read(again)) == shape(read(text))
