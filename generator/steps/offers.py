"""Hands the command line what it shows of other rooms: schemas, words to translate, the preview's server."""

from __future__ import annotations

from generator.publish.manifest import verify
from generator.reading.schema import schemas
from generator.website.serve import PreviewServer
from generator.wording.extract import extract_messages, updated_locale
from generator.wording.own_words import TEMPLATE

__all__ = ["TEMPLATE", "PreviewServer", "extract_messages", "schemas", "updated_locale", "verify"]
