"""Compares a drawing with its gold picture, and shows both where they differ.

To accept new drawings after looking at them: ``PHASEBOOK_ACCEPT=1 python -m pytest tests/figures``.
"""

from __future__ import annotations

import os
import re
from pathlib import Path

GOLD = Path(__file__).parent / "gold"
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?")
CLOSE = 0.35  # drawing units (3 mm at 170 cm): another machine's arithmetic may round differently


def difference(gold: str, drawn: str) -> str:
    """Return in words how two SVG texts differ, empty where every number is close and all else equal."""
    if _NUMBER.sub("#", gold) != _NUMBER.sub("#", drawn):
        return "other shapes, order or colours"
    pairs = zip(_NUMBER.findall(gold), _NUMBER.findall(drawn), strict=True)
    apart = max((abs(float(one) - float(two)) for one, two in pairs), default=0.0)
    return f"numbers differ by up to {apart:g}" if apart > CLOSE else ""


def compare(name: str, drawn: str, shown_in: Path) -> str:
    """Return how `drawn` differs from its gold picture; a page in `shown_in` then shows both."""
    path = GOLD / f"{name}.svg"
    if os.environ.get("PHASEBOOK_ACCEPT") == "1":
        path.parent.mkdir(exist_ok=True)
        path.write_text(drawn + "\n", encoding="utf-8")
    gold = path.read_text(encoding="utf-8").rstrip("\n") if path.exists() else ""
    found = difference(gold, drawn)
    if not found:
        return ""
    page = shown_in / f"{name}.html"
    page.write_text(f"<h1>{name}</h1><h2>gold</h2>{gold}<h2>drawn</h2>{drawn}", encoding="utf-8")
    return f"{name}: {found}; look at {page}"
