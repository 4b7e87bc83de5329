"""Collects the generator's own words from code and templates, so that no message escapes translation.

The result holds no clock and no line numbers: it changes only when a message does.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

from babel import Locale
from babel.messages import Catalog
from babel.messages.extract import DEFAULT_KEYWORDS, extract_from_dir

from generator.wording.export import plural_notes, po_text
from generator.wording.voice import own_catalogue

GENERATOR = Path(__file__).parent.parent

_METHODS = [("**.py", "python"), ("**/templates/**.html", "jinja2"), ("**/templates/**.md", "jinja2")]
_OPTIONS = {
    # A template that cannot be parsed stops the extraction: its messages must not go missing.
    "**/templates/**": {"silent": "false", "newstyle_gettext": "true", "encoding": "utf-8"},
}
_KEYWORDS = {**DEFAULT_KEYWORDS, "mark": ((1, "c"), 2)}


@cache
def own_messages(root: Path = GENERATOR) -> Catalog:
    """Return every message in the code and the templates under `root`, read once; nobody may change it."""
    catalogue = Catalog(project="phasebook", fuzzy=False)
    for path, _, message, comments, context in extract_from_dir(
        root, _METHODS, _OPTIONS, _KEYWORDS, comment_tags=("Translators:",), strip_comment_tags=True
    ):
        place = (f"generator/{Path(path).as_posix()}", 1)
        ids = message if isinstance(message, str) else tuple(message)
        notes = (*comments, *plural_notes(ids))
        catalogue.add(message, locations=[place], auto_comments=notes, context=context)
    return catalogue


def extract_messages(root: Path = GENERATOR) -> str:
    """Return the template for translators (PO syntax) of all messages under `root`, sorted."""
    return _text(own_messages(root))


def updated_locale(language: str, root: Path = GENERATOR) -> str:
    """Return the PO text of a language with all messages of today; what it had stays."""
    catalogue = own_catalogue(language) or Catalog(locale=Locale.parse(language, sep="-"))
    catalogue.update(own_messages(root), no_fuzzy_matching=True)
    catalogue.obsolete.clear()
    return _text(catalogue)


def _text(catalogue: Catalog) -> str:
    # Sorted by message and without lines: the file changes only when a message does.
    return po_text(catalogue, lines=False, in_order_of_content=False)
