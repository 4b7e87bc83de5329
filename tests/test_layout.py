"""Holds the house in order: who may import whom, where libraries live, budgets, first words, who prints."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.layout import LIBRARIES, ROOMS, broken_rules, broken_rules_of, room_of

PROJECT = Path(__file__).parents[1]
WORDS = '"""Says why this module exists."""\n'


def test_the_house_is_in_order() -> None:
    """No module of the generator breaks a rule of the house."""
    assert broken_rules_of(PROJECT) == []


def test_every_room_has_a_rule() -> None:
    """Each folder and module of the generator is a room that the rules know, so that no new one escapes."""
    found = {room_of(path.relative_to(PROJECT).as_posix()) for path in PROJECT.glob("generator/**/*.py")}
    assert found <= set(ROOMS)


def test_website_and_booklets_never_meet() -> None:
    """Site and paper never import each other, and the problems import nothing."""
    assert "booklets" not in ROOMS["website"]
    assert "website" not in ROOMS["booklets"]
    assert ROOMS["problems"] == frozenset()
    assert {room for rooms in LIBRARIES.values() for room in rooms} <= set(ROOMS)


PLANTED = (
    (
        "generator/problems.py",
        "from generator.catalogue.base import Text\n",
        "problems may not import catalogue",
    ),
    ("generator/catalogue/x.py", "import generator.reading.nodes\n", "catalogue may not import reading"),
    ("generator/reading/x.py", "from generator import wording\n", "reading may not import wording"),
    (
        "generator/figures/x.py",
        "from generator.catalogue.base import Text\n",
        "figures may not import catalogue",
    ),
    (
        "generator/website/x.py",
        "from generator.booklets.html import page\n",
        "website may not import booklets",
    ),
    (
        "generator/booklets/x.py",
        "from generator.website.page import page\n",
        "booklets may not import website",
    ),
    ("generator/cli/x.py", "from generator.reading import read_content\n", "cli may not import reading"),
    ("generator/checks/x.py", "from generator.publish import audit\n", "checks may not import publish"),
    ("generator/__main__.py", "from generator.cli import main\n", "__main__ may not import cli"),
    ("generator/start/x.py", "from generator.problems import Rule\n", "start may not import problems"),
    ("generator/attic/x.py", "from generator.problems import Rule\n", "attic may not import problems"),
    ("generator/wording/x.py", "import yaml\n", "the library yaml does not live in wording"),
    (
        "generator/website/x.py",
        "from weasyprint import HTML\n",
        "the library weasyprint does not live in website",
    ),
    ("generator/pipeline.py", "import click\n", "the library click does not live in pipeline"),
    ("generator/catalogue/x.py", "import requests\n", "the library requests does not live in catalogue"),
    ("generator/body/x.py", "def f():\n    import yaml\n", "the library yaml does not live in body"),
    ("generator/body/x.py", "if x:\n    import yaml\n", "the library yaml does not live in body"),
    ("generator/body/x.py", "importlib.import_module('yaml')\n", "the library yaml does not live in body"),
    ("generator/body/x.py", "from . import motion\n", "body may not import the package itself"),
    ("generator/reading/x.py", "print('found')\n", "only the command line prints"),
    ("generator/reading/x.py", "import sys\nsys.stderr.write('x')\n", "only the command line prints"),
    ("generator/reading/x.py", "x = 1\n" * 300, "the module has 301 lines, the budget is 300"),
    ("generator/reading/x.py", "def f():\n" + "    x = 1\n" * 40, "f has 41 lines, the budget is 40"),
    ("generator/reading/x.py", "class C:\n    def f(self):\n" + "        x = 1\n" * 40, "f has 41 lines"),
)


@pytest.mark.parametrize(("path", "source", "message"), PLANTED)
def test_planted_violation_is_found(path: str, source: str, message: str) -> None:
    """Each broken rule is found at its line, and nothing else is."""
    (found,) = broken_rules(path, WORDS + source)
    assert found.startswith(f"{path}:")
    assert message in found


@pytest.mark.parametrize("source", ["", "x = 1\n", '"""helpers"""\n', "'''stuff\n'''\n"])
def test_module_without_first_words_is_found(source: str) -> None:
    """A module begins with a sentence; a word or two, or nothing, is found."""
    (found,) = broken_rules("generator/reading/x.py", source)
    assert (
        found == "generator/reading/x.py:1: the module does not begin with a sentence that says why it exists"
    )


@pytest.mark.parametrize(
    ("path", "source"),
    [
        ("generator/reading/x.py", "import re\nimport yaml\nfrom generator.reading.nodes import parse\n"),
        (
            "generator/progression/x.py",
            "from scipy import stats\nfrom generator.catalogue.base import Text\n",
        ),
        (
            "generator/checks/x.py",
            "from generator import checks\nfrom generator.progression.order import levels\n",
        ),
        ("generator/wording/x.py", "from markupsafe import Markup\n"),
        ("generator/pipeline.py", "from generator import reading, website, booklets\n"),
        ("generator/cli/x.py", "import click\nclick.echo('x')\nprint('x')\n"),
        ("generator/__main__.py", "from generator.start.command import main\nprint('x')\n"),
        ("generator/reading/x.py", "def f():\n" + "    x = 1\n" * 39),
        ("generator/reading/x.py", "x = 1\n" * 299),
    ],
)
def test_what_is_allowed_is_not_accused(path: str, source: str) -> None:
    """A room uses its own modules, its libraries and the rooms below it, up to the budgets."""
    assert broken_rules(path, WORDS + source) == []


def test_every_finding_of_a_module_comes_at_once() -> None:
    """All broken rules of a module are listed in the order of its lines."""
    source = f"{WORDS}import yaml\nfrom generator.cli import main\nprint(1)\n"
    assert [found.split(":")[1] for found in broken_rules("generator/body/x.py", source)] == ["2", "3", "4"]
