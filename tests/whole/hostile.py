"""Sixty texts that try to become code, and the small content with one in every field that takes a text."""

from __future__ import annotations

import io
import json
from collections.abc import Iterator
from pathlib import Path

import yaml
from babel.messages.pofile import read_po, write_po

from generator.reading import read_content
from generator.steps.translating import export_language
from tests.content import FILES, write_content

# No digits and no braces: those of a translation are compared with its source. Each calls alert, or loads x.
# Blanks where HTML has none to say let lines break: a word as long as the sheet is wide is refused.
PAYLOADS = (
    "<script> alert() </script>",
    "</script> <script> alert() </script>",
    "<script src=//x.example/x.js> </script>",
    "<ScRiPt>alert()</sCrIpT>",
    "<script/x>alert() </script>",
    "<script> alert()//",
    "<<script> alert()//<</script>",
    "<img src=x onerror=alert()>",
    '"> <img src=x onerror=alert()>',
    "'> <img src=x onerror=alert()>",
    "<img src=//x.example/x.png>",
    '<img src="x" onerror="alert()" alt="',
    "<svg onload=alert()>",
    "<svg/onload=alert()>",
    "<svg> <script> alert() </script> </svg>",
    "<svg> <a xlink:href= javascript:alert() >x</a> </svg>",
    "<math> <mi xlink:href= javascript:alert() >x</mi> </math>",
    "<iframe src= javascript:alert() > </iframe>",
    "<iframe srcdoc='<script> alert() </script>'> </iframe>",
    "<iframe src=//x.example/> </iframe>",
    "<object data= javascript:alert() > </object>",
    "<embed src= javascript:alert() >",
    "<body onload=alert()>",
    "<details open ontoggle=alert()>",
    "<input autofocus onfocus=alert()>",
    "<select autofocus onfocus=alert()>",
    "<video> <source onerror=alert()> </video>",
    "<audio src=x onerror=alert()>",
    "<marquee onstart=alert()>",
    "<form action= javascript:alert() > <button>x</button> </form>",
    "<button formaction= javascript:alert() >x</button>",
    "<a href= javascript:alert() >x</a>",
    "<a href= 'java&Tab;script:alert()'>x</a>",
    "<a href= data:text/html,<script> alert() </script>>x</a>",
    "<base href=//x.example/>",
    "<link rel=stylesheet href=//x.example/x.css>",
    "<meta http-equiv=refresh content='url=//x.example/'>",
    "<style>@import '//x.example/x.css';</style>",
    "<style>body:after content: url(//x.example/x)</style>",
    "<p style= 'background: url(//x.example/x.png)'>",
    "</title> <script> alert() </script>",
    "</style> <script> alert() </script>",
    "</textarea> <script> alert() </script>",
    "--> <script> alert() </script>",
    "]]> <script> alert() </script>",
    "<!--<script> alert() </script>-->",
    "<![CDATA[<script> alert() </script>]]>",
    "<?php echo alert() ?>",
    "<% alert() %>",
    "&lt;script&gt;alert()&lt;/script&gt;",
    '" onmouseover=alert() x="',
    "' onmouseover=alert() x='",
    "` onmouseover=alert()",
    "javascript:alert()",
    "[x](javascript:alert())",
    "![x](//x.example/x.png)",
    "<javascript:alert() >",
    "[x]: javascript:alert()",
    "~~~ <script> alert() </script>",
    "=HYPERLINK(\"//x.example/\", 'x')",
)
# Keys of the small content that take a text without more ado; what stands under them is replaced.
_KEYS = frozenset(
    (
        "about",
        "hours",
        "deferral",
        "deferral-full",
        "demonstration",
        "start-only",
        "stay",
        "working-area",
        "pain-rule",
        "sign",
        "meaning",
        "act",
        "text",
        "today",
        "clinic",
        "emergency",
        "fall",
        "authors",
        "title",
        "journal",
        "volume",
        "pages",
        "people",
        "plain",
        "check",
        "advice",
        "term",
        "purpose",
        "start",
        "steps",
        "feel",
        "not-feel",
        "set-up",
        "mistakes",
        "hazard",
        "consequence",
        "avoid",
        "change",
        "at-place",
        "operation",
        "summary",
        "delay-reasons",
        "words",
        "why",
        "release",
        "goals",
        "weight-bearing",
        "walking-aid",
        "brace",
        "set-by",
        "going-up",
        "goal",
        "test",
        "passed",
        "name",
    )
)
_NOT = {("clinic.yml", "clinic"), ("clinic.yml", "emergency")}


def stand_in(payload: str) -> str:
    """Return a payload as it passes the reader, which refuses angle brackets."""
    return payload.replace("<", "\u2039").replace(">", "\u203a")


def at_last(text: str) -> str:
    """Return a text with the angle brackets that the reader would have refused."""
    return text.replace("\u2039", "<").replace("\u203a", ">")


def hostile_files() -> tuple[dict[str, str], int]:
    """Return the small content with a payload for every text, in turns, and how many texts that are."""
    files, count = {}, 0
    for name, text in FILES.items():
        root = yaml.compose(text)
        assert root is not None
        spots = [node for node, key in _scalars(root, "") if key in _KEYS and (name, key) not in _NOT]
        for node in reversed(spots):
            new = json.dumps(stand_in(PAYLOADS[(count + 1) % len(PAYLOADS)]), ensure_ascii=False)
            text = text[: node.start_mark.index] + new + text[node.end_mark.index :]
            count += 1
        files[name] = text
    return files, count


def _scalars(node: yaml.Node, key: str) -> Iterator[tuple[yaml.ScalarNode, str]]:
    if isinstance(node, yaml.ScalarNode):
        yield node, key
    elif isinstance(node, yaml.SequenceNode):
        for one in node.value:
            yield from _scalars(one, key)
    else:
        for name, one in node.value:
            yield from _scalars(one, name.value)


def write_hostile(folder: Path) -> tuple[int, int]:
    """Write the hostile content, with a payload for every entry of Spanish; return how many of both."""
    files, texts = hostile_files()
    write_content(folder, files)
    catalogue = read_content(folder).catalogue
    assert catalogue is not None
    exported = export_language(catalogue, folder, "es").text
    assert exported is not None
    entries = read_po(io.StringIO(exported), "es")
    count = 0
    for entry in entries:
        if entry.id:
            assert isinstance(entry.id, str)
            entry.string = f"{PAYLOADS[(count + 31) % len(PAYLOADS)]} x"
            count += 1
    (folder / "translations").mkdir()
    with (folder / "translations" / "es.po").open("wb") as file:
        write_po(file, entries, width=0)
    clinic = folder / "clinic.yml"
    clinic.write_text(clinic.read_text("utf-8").replace("languages: [en]", "languages: [en, es]"), "utf-8")
    return texts, count
