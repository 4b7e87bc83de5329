"""Marks a message where it stands, so that the extraction finds it and a table can look it up later."""

from __future__ import annotations

Marked = tuple[str, str]
"""Context and message."""


def mark(context: str, message: str) -> Marked:
    """Return both; ``Voice.pgettext`` says them."""
    return (context, message)
