"""Names the choices that only editors and reviewers see: what a sign-off covers, what may be published."""

from __future__ import annotations

from enum import Enum


class Scope(Enum):
    """What a reviewer has read: the content itself, one translation of it, or the evidence behind it."""

    CONTENT = "content"
    LANGUAGE = "language"
    EVIDENCE = "evidence"


class Publish(Enum):
    """What may be published: only what was reviewed, or drafts too, which are marked."""

    REVIEWED_ONLY = "reviewed-only"
    DRAFTS_MARKED = "drafts marked"


class Weight(Enum):
    """What a project lets a code weigh; silent findings are not shown."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"
    SILENT = "silent"
