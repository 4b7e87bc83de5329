"""Hands the command line what it shows of other rooms: schemas, words to translate, the preview's server."""

from __future__ import annotations

from generator.publish.manifest import verify
from generator.reading.schema import schemas
from generator.reading.schema_comment import FOLDER as SCHEMA_FOLDER
from generator.reading.schema_comment import schema_file
from generator.website.serve import PreviewServer, Shown
from generator.wording.extract import extract_messages, updated_locale
from generator.wording.own_words import TEMPLATE

__all__ = [
    "SCHEMA_FOLDER",
    "TEMPLATE",
    "PreviewServer",
    "Shown",
    "extract_messages",
    "schema_file",
    "schemas",
    "updated_locale",
    "verify",
]
