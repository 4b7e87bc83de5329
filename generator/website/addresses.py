"""Fixes where every page lies, from the language's folder: addresses are pinned and never change."""

from __future__ import annotations

HOME = "index.html"
WARNING_SIGNS = "warning-signs.html"
GLOSSARY = "glossary.html"
ABOUT = "about.html"
EXERCISES = "exercises/index.html"
HELPER = "helper.html"
CHECK = "check.html"
CODES = "editors/codes.html"
FIELDS = "editors/fields.html"

WORSE = f"{WARNING_SIGNS}#worse"
FALL = f"{WARNING_SIGNS}#fall"


def programme_page(programme: str) -> str:
    """Return the page of a programme."""
    return f"programmes/{programme}/index.html"


def phase_page(programme: str, phase: int) -> str:
    """Return the page of a phase."""
    return f"programmes/{programme}/phase-{phase}.html"


def exercise_page(exercise: str) -> str:
    """Return the page of an exercise."""
    return f"exercises/{exercise}.html"


def reporting_page(programme: str) -> str:
    """Return the page of a programme's reporting checklists."""
    return f"clinicians/{programme}-reporting.html"


def order_file(programme: str, form: str) -> str:
    """Return the file with a programme's order, `form` being ``json`` or ``csv``."""
    return f"clinicians/{programme}.{form}"


def studies_file(programme: str) -> str:
    """Return the file with the studies behind a programme's order, for a reference manager."""
    return f"clinicians/{programme}-studies.json"


def clinicians_page(programme: str) -> str:
    """Return the page of a programme for clinicians."""
    return f"clinicians/{programme}.html"


def protocol_page(programme: str) -> str:
    """Return the page of a programme's protocol for clinicians."""
    return f"clinicians/{programme}-protocol.html"


def order_page(programme: str) -> str:
    """Return the page that tells clinicians how a programme's order came out."""
    return f"clinicians/{programme}-order.html"


def evidence_page(programme: str) -> str:
    """Return the page of the measurements and studies behind a programme."""
    return f"clinicians/{programme}-evidence.html"


def patient_page(programme: str, phase: int) -> str:
    """Return the page on which a clinician makes the sheet of a phase for one patient."""
    return f"clinicians/{programme}-patient-{phase}.html"


def daily_life_page(item: str) -> str:
    """Return the page of a thing of daily life."""
    return f"daily-life/{item}.html"
