"""The generator's own words reach their translators, all of them and unchanged by the clock."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

from generator.wording.extract import GENERATOR, extract_messages, own_messages, updated_locale
from generator.wording.own_words import TEMPLATE
from tests.wording.pseudo import pseudo_voice


def test_the_committed_template_is_current() -> None:
    """A message that changed in code or templates changed for the translators too."""
    assert TEMPLATE.read_text(encoding="utf-8") == extract_messages()


def test_messages_are_found_in_code_and_in_templates(tmp_path: Path) -> None:
    """Every way to write a message is collected, with its context."""
    (tmp_path / "site" / "templates").mkdir(parents=True)
    (tmp_path / "site" / "code.py").write_text(
        'voice.gettext("one")\nvoice.npgettext("where", "{n} two", "{n} twos", n)\nmark("kind", "three")\n',
        encoding="utf-8",
    )
    (tmp_path / "site" / "templates" / "page.html").write_text(
        '{{ _("four") }}{% trans n=n %}five {{ n }}{% endtrans %}{{ pgettext("where", "six") }}',
        encoding="utf-8",
    )
    found = {(message.context, message.id) for message in own_messages(tmp_path) if message.id}
    assert found == {
        (None, "one"),
        ("where", ("{n} two", "{n} twos")),
        ("kind", "three"),
        (None, "four"),
        (None, "five %(n)s"),
        ("where", "six"),
    }


def test_both_forms_of_a_message_hold_the_same_values() -> None:
    """Ukrainian uses the first form for 21 as well (CLDR): a number left out of it would be lost."""
    value = re.compile(r"\{[a-z_]+\}|%\([a-z_]+\)s")
    plurals = [message.id for message in own_messages() if isinstance(message.id, tuple)]
    assert plurals
    assert [forms for forms in plurals if set(value.findall(forms[0])) != set(value.findall(forms[1]))] == []


def test_a_new_language_starts_with_every_message_and_its_plural_forms() -> None:
    """A translator gets one empty form for each that CLDR names; Arabic has six."""
    text = updated_locale("ar")
    assert "Language: ar\\n" in text
    assert "nplurals=6" in text
    assert 'msgstr[5] ""' in text
    assert "-Date:" not in text


def test_the_pretend_language_speaks_own_messages() -> None:
    """A page in it that shows plain English shows words that nobody can translate."""
    pretended = pseudo_voice("ar")
    assert pretended.gettext("every day").startswith("⟦")
    assert "{number}" in pretended.ngettext("{number} page", "{number} pages", 7)


def test_every_message_stands_in_the_call_that_speaks_it() -> None:
    """A message kept in a variable is never found by the extraction, so no translator would ever see it."""
    asked = [place for path in sorted(GENERATOR.rglob("*.py")) for place in unseen_messages(path)]
    # These pass on what is marked elsewhere.
    assert [place for place in asked if place not in ("jinja.py", "voice.py", "terms.py")] == []


def unseen_messages(path: Path) -> Iterator[str]:
    """Yield the file for each call whose messages are not typed out."""
    messages = {"gettext": 1, "ngettext": 2, "pgettext": 2, "npgettext": 3}
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr in messages:
            typed = node.args[: messages[node.func.attr]]
            if not all(isinstance(item, ast.Constant) for item in typed):
                yield path.name
