"""Gives the tests a small site that passes the audit, for each test to spoil in one place."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from generator.publish import Audit, Expected, audit_tree

NOTE = "Ask your physiotherapist or surgeon before you start, and follow what they say."
NOTE_AR = "اسأل أخصائي العلاج الطبيعي أو الجراح قبل أن تبدأ."
DEMONSTRATION = "Demonstration, not for treatment"
ENGLISH = Expected("en", "ltr", (NOTE,), DEMONSTRATION, "Clinic: 0555 010 20-30")
ARABIC = Expected("ar", "rtl", (NOTE_AR,), None, "العيادة: 0555 010 20-30")


def page(body: str = "", *, note: str = NOTE, head: str = "", warnings: str = "../warning-signs.html") -> str:
    """Return an English page as the template writes it, with room for the body of a test."""
    return f"""<!doctype html>
<html lang="en" dir="ltr">
<head><meta charset="utf-8"><title>Bridge</title>{head}</head>
<body>
<header><p class="note">{note}</p><p>{DEMONSTRATION}</p>
<a href="{warnings}">Warning signs</a></header>
<main><h1>Bridge</h1>
{body}
</main>
</body>
</html>
"""


def arabic_page(body: str = "", *, start: str = '<html lang="ar" dir="rtl">') -> str:
    """Return an Arabic page as the template writes it."""
    return f"""<!doctype html>
{start}
<head><meta charset="utf-8"><title>تمرين</title></head>
<body><p>{NOTE_AR}</p><a href="warning-signs.html">علامات الخطر</a><h1>تمرين</h1>{body}</body>
</html>
"""


def site() -> dict[str, str]:
    """Return the files of a whole English site, as text by path."""
    return {
        "index.html": page(warnings="en/warning-signs.html"),
        "404.html": page(warnings="/en/warning-signs.html"),
        "en/index.html": page(warnings="warning-signs.html"),
        "en/warning-signs.html": page(warnings="warning-signs.html"),
        "en/exercises/bridge.html": page("<p>Do <bdi>3 × 10</bdi> a day.</p>"),
    }


def write(root: Path, files: Mapping[str, str]) -> Path:
    """Write the files below `root` and return it."""
    for path, text in files.items():
        file = root / path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, encoding="utf-8", newline="\n")
    return root


def findings(root: Path, files: Mapping[str, str], audit: Audit | None = None) -> list[tuple[str, str]]:
    """Return code and path of everything the audit finds in a site of these files."""
    write(root, files)
    return [
        (problem.code, problem.place.path)
        for problem in audit_tree(root, audit or Audit((ENGLISH,)), workers=1)
    ]


BRIDGE = "en/exercises/bridge.html"


def in_bridge(root: Path, body: str, audit: Audit | None = None, head: str = "") -> list[str]:
    """Return the codes that the audit finds when the page of one exercise has this body."""
    found = findings(root, {**site(), BRIDGE: page(body, head=head)}, audit)
    assert {path for _, path in found} <= {BRIDGE}
    return [code for code, _ in found]
