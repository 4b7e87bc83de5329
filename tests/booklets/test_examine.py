"""Every finding of the examination is seen when its fault is planted, and not seen without it."""

from __future__ import annotations

import io
import socket
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from pathlib import Path

import pikepdf
import pytest

from generator.booklets import rules
from generator.booklets.engine import OwnFiles, rendered
from generator.booklets.examine import examine
from generator.booklets.fonts import FAMILIES, font_rules
from generator.booklets.layout import Laid, lay_out
from generator.booklets.pdf import to_pdf
from generator.booklets.rules import RULES
from generator.booklets.values import Expected, SheetFact
from generator.problems import Rule

STYLE = (
    f"{font_rules()} html {{ font: 14pt 'Phasebook Digits', 'Atkinson Hyperlegible' }} @page {{ size: A5 }}"
)
BODY = (
    "<h1>Bridge</h1><p>Follow your clinician.</p><p>01632 960 100</p>"
    "<p>3\u00a0×\u00a010</p><p>Page 1 of 1</p>"
    '<table><thead><tr><th scope="col">Day</th></tr></thead>'
    '<tbody><tr><th scope="row">1</th></tr></tbody></table>'
)
EXPECTED = Expected(
    path="sheet.pdf",
    title="Bridge",
    language="en",
    every_page=("Follow your clinician.", "01632 960 100"),
    page_lines=("Page \u20661\u2069 of \u20661\u2069",),
    families=FAMILIES,
    sheets=(SheetFact("bridge", 1, ("\u20663\u00a0×\u00a010\u2069", "Bridge")),),
)


def document(body: str = BODY, style: str = "", title: str = "Bridge", root: str = 'lang="en"') -> bytes:
    """Return a one-page PDF made the way booklets are."""
    head = f"<meta charset='utf-8'><title>{title}</title><style>{STYLE} {style}</style>"
    return to_pdf(f"<!DOCTYPE html><html {root}><head>{head}</head><body>{body}</body></html>")


def changed(change: Callable[[pikepdf.Pdf], None], body: str = BODY) -> bytes:
    """Return the PDF after a change made to the finished file."""
    output = io.BytesIO()
    with pikepdf.open(io.BytesIO(document(body))) as file:
        change(file)
        file.save(output)
    return output.getvalue()


def _unembed(file: pikepdf.Pdf) -> None:
    for thing in file.objects:
        if isinstance(thing, pikepdf.Dictionary) and "/FontFile2" in thing:
            del thing["/FontFile2"]


def _untag(file: pikepdf.Pdf) -> None:
    del file.Root["/StructTreeRoot"]


def _unscope(file: pikepdf.Pdf) -> None:
    for thing in file.objects:
        if isinstance(thing, pikepdf.Dictionary) and thing.get("/S") == "/TH":
            del thing["/A"]["/Scope"]


def _unword(file: pikepdf.Pdf) -> None:
    for thing in file.objects:
        if isinstance(thing, pikepdf.Dictionary) and thing.get("/S") == "/Figure":
            del thing["/Alt"]


def _second_page(file: pikepdf.Pdf) -> None:
    file.add_blank_page(page_size=(420, 595))


_PICTURE = (
    "data:image/svg+xml,%3Csvg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 9 9'%3E"
    "%3Cpath d='M0 0h9v9'/%3E%3C/svg%3E"
)


@dataclass(frozen=True)
class Planted:
    """A fault: the code it must be found under, the file that has it, and what is expected of that file."""

    rule: Rule
    pdf: Callable[[], bytes]
    expected: Expected = field(default=EXPECTED)


FAULTS = (
    Planted(rules.NOT_A_PDF, lambda: b"%PDF-1.7 cut off"),
    Planted(rules.PAGES, lambda: changed(_second_page)),
    Planted(rules.FONT_NOT_EMBEDDED, lambda: changed(_unembed)),
    Planted(rules.STRANGE_FONT, document, replace(EXPECTED, families=("Noto Sans",))),
    Planted(rules.MISSING_SIGN, lambda: document(BODY + "<p>\ue000</p>")),
    Planted(rules.MARGIN_LINE, lambda: document(BODY.replace("Follow your clinician.", ""))),
    Planted(rules.MARGIN_LINE, lambda: document(BODY.replace("960 100", "960 101"))),
    Planted(rules.MARGIN_LINE, lambda: document(BODY.replace("Page 1 of 1", "Page 1 of 2"))),
    Planted(rules.TEXT_MISSING, lambda: document(BODY.replace("×\u00a010", "×\u00a012"))),
    Planted(
        rules.TEXT_MISSING,
        lambda: document(BODY, root='lang="en" dir="rtl"'),
    ),
    Planted(
        rules.OFF_SHEET,
        lambda: document(
            BODY + '<p style="position: absolute; left: -3mm; top: 0; margin: 0">Off</p>',
            "@page { margin: 0 } body { padding: 1cm }",
        ),
    ),
    Planted(rules.SMALL_TEXT, lambda: document(BODY + '<p style="font-size: 11pt">Small</p>')),
    Planted(rules.TITLE, lambda: document(title="Another")),
    Planted(rules.LANGUAGE, lambda: document(root='lang="de"')),
    Planted(rules.TAGS, lambda: changed(_untag)),
    Planted(rules.HEADINGS, lambda: document(BODY + "<h3>Jump</h3>")),
    Planted(
        rules.PICTURE_WORDS,
        lambda: changed(_unword, BODY + f'<img alt="x" style="width: 9mm" src="{_PICTURE}">'),
    ),
    Planted(rules.HEADER_SCOPE, lambda: changed(_unscope)),
)


def test_a_sound_sheet_has_no_finding() -> None:
    """Silence is asserted: the sheet that the faults are planted in is sound."""
    assert examine(document(), EXPECTED) == ()


@pytest.mark.parametrize("planted", FAULTS, ids=lambda planted: planted.rule.code)
def test_a_planted_fault_is_found(planted: Planted) -> None:
    """The fault is found under its own code, with a remedy."""
    found = examine(planted.pdf(), planted.expected)
    assert planted.rule.code in {problem.code for problem in found}
    assert all(problem.remedy for problem in found)


def test_every_code_is_planted_somewhere() -> None:
    """No code of this room goes untested: others are planted in the tests of layout, protocol, kinds."""
    seen = {rules.OVERFLOW.code, rules.PRINTED_OVER.code, rules.MISPRINT.code}
    layout = {*seen, rules.COMPLAINT.code, rules.LONG_EXERCISE.code}
    elsewhere = {*layout, rules.LONG_PROTOCOL.code, rules.PAGE_LOCK.code}
    assert {planted.rule.code for planted in FAULTS} | elsewhere == {rule.code for rule in RULES}


def test_a_right_to_left_dose_is_found_as_the_eye_meets_it() -> None:
    """In a right-to-left line an isolated 3 × 10 keeps its order (UAX #9), and the examination sees it."""
    arabic = BODY.replace("3\u00a0×\u00a010", '<bdi dir="ltr">3\u00a0×\u00a010</bdi>')
    arabic = arabic.replace("01632 960 100", '<bdi dir="ltr">01632 960 100</bdi>').replace("Page 1 of 1", "")
    wanted = replace(EXPECTED, every_page=("01632 960 100",), page_lines=("",))
    assert examine(document(arabic, root='lang="en" dir="rtl"'), wanted) == ()


def test_an_edition_without_a_figure_is_found_in_a_right_to_left_line() -> None:
    """One code in twenty consists of letters; PDFium gives the parts of such a line in another order."""
    line = '<p>الإصدار <bdi dir="ltr">VQHB-BNGV</bdi> من العيادة</p>'
    arabic = BODY.replace("Page 1 of 1", "") + line
    wanted = replace(EXPECTED, every_page=("VQHB-BNGV",), page_lines=("",), families=(*FAMILIES, "Tajawal"))
    found = examine(document(arabic, root='lang="en" dir="rtl"'), wanted)
    assert rules.MARGIN_LINE.code not in {problem.code for problem in found}


def test_words_that_are_too_wide_are_seen_in_the_layout() -> None:
    """A long word that leaves its column is found, though nothing in the finished PDF tells of it."""
    narrow = "<div style='width: 20mm'>Rehabilitationsübungsanleitung</div>"
    found = lay_out(f"<html lang='en'><title>t</title><style>{STYLE}</style>{narrow}</html>").overflows
    assert [one.words for one in found] == ["Rehabilitationsübungsanleitung"]
    assert found[0].by > 10


def laid(body: str) -> Laid:
    """Return a document laid out on sheets of 60 by 60 mm."""
    style = f"{STYLE} @page {{ size: 60mm; margin: 5mm }} p {{ margin: 0 }} h3 {{ break-after: avoid }}"
    return lay_out(f"<html lang='en'><title>t</title><style>{style}</style>{body}</html>")


def test_words_that_stand_on_words_are_seen_in_the_layout() -> None:
    """Two texts printed over each other are found, neighbours however close are not."""
    twice = "<p>First line</p><p style='margin-top: {}'>Other line</p>"
    assert [(one.words, one.under) for one in laid(twice.format("-9mm")).collisions] == [
        ("First line", "Other line")
    ]
    assert laid(twice.format("0; line-height: 1.05")).collisions == ()


def test_words_on_a_picture_are_seen_in_the_layout() -> None:
    """A text that runs into a picture is found, with the words for the picture."""
    drawing = "data:image/svg+xml,%3Csvg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 9 9'/%3E"
    picture = f'<img alt="A leg" style="display: block; width: 20mm" src="{drawing}">'
    found = laid(f"{picture}<p style='margin-top: -9mm'>Low</p>").collisions
    assert [one.under for one in found] == ["A leg"]
    assert laid(f"{picture}<p>Low</p>").collisions == ()


def test_a_text_printed_twice_at_the_foot_of_a_sheet_is_seen_in_the_layout() -> None:
    """WeasyPrint 70.0 prints two texts side by side once more where headings meet the foot."""
    words = "These pages do not replace care."
    one = f"<div style='float: {{}}; width: 22mm'><h3>Word</h3><p>{words}</p></div>"
    both = one.format("left") + one.format("right")
    block = f"<div style='break-inside: avoid'>{both}<div style='clear: both'></div></div>"
    found = [laid(f"<p style='height: {high}mm'></p>{block}").misprints for high in (10, 24, 28, 32)]
    assert {(one.printed, one.written) for each in found for one in each} == {(f"{words} {words}", words)}
    assert () in found


def test_text_below_a_fixed_height_is_seen_in_the_layout() -> None:
    """A box that is too low for its text hides the rest; the layout shows it."""
    low = "<div style='height: 5mm; overflow: hidden'>One<br>Two<br>Three</div>"
    found = lay_out(f"<html lang='en'><title>t</title><style>{STYLE}</style>{low}</html>").overflows
    assert {one.words for one in found} >= {"Three"}


@pytest.mark.parametrize(
    "address", ["https://example.org/x.png", "file:///etc/hostname", "ftp://example.org/x"]
)
def test_nothing_is_fetched_but_our_own_files(address: str) -> None:
    """A booklet never asks the network or a foreign file; the attempt is kept as a complaint."""
    laid = lay_out(f"<html lang='en'><title>t</title><img alt='x' src='{address}'></html>")
    assert any("not a file of ours" in message for message in laid.logged)


SVG = "data:image/svg+xml,%3Csvg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 9 9'%3E"
ASKED = (
    '<img alt="x" src="{}">',
    '<object data="{}"></object>',
    '<p style="background: url({})">x</p>',
    '<p style="list-style-image: url({}); display: list-item">x</p>',
    "<style></style><style>@import url({});</style>",
    "<style></style><style>@font-face {{ font-family: x; src: url({}) }}</style>",
    '<link rel="stylesheet" href="{}">',
    '<link rel="attachment" href="{}">',
    '<a rel="attachment" href="{}">x</a>',
    f"<img alt=\"x\" src=\"{SVG}%3Cimage href='{{}}' width='9' height='9'/%3E%3C/svg%3E\">",
)


@pytest.mark.parametrize("asked", ASKED)
def test_no_way_leads_out_of_our_own_files(tmp_path: Path, asked: str) -> None:
    """A system file, a file by a link, the machine itself by its loopback: opened by none of ten ways."""
    secret = tmp_path / "secret.svg"
    secret.write_text("<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 9 9'/>", encoding="utf-8")
    link = tmp_path / "link.svg"
    link.symlink_to(secret)
    opened: list[str] = []
    with socket.create_server(("127.0.0.1", 0)) as server, listening(opened):
        server.settimeout(0)
        loopback = f"http://127.0.0.1:{server.getsockname()[1]}/x.svg"
        for address in ("file:///etc/passwd", secret.as_uri(), link.as_uri(), loopback):
            rendered(f"<html lang='en'><title>t</title>{asked.format(address)}</html>")[0].write_pdf()
        with pytest.raises(BlockingIOError):
            server.accept()
    assert [path for path in opened if path.startswith(("/etc/passwd", str(tmp_path)))] == []


def test_a_link_among_the_fonts_is_not_followed(tmp_path: Path) -> None:
    """A link inside a folder of ours that leads elsewhere is as foreign as what it leads to."""
    (tmp_path / "fonts").mkdir()
    (tmp_path / "fonts" / "a.ttf").write_bytes(b"font")
    (tmp_path / "secret").write_bytes(b"secret")
    (tmp_path / "fonts" / "b.ttf").symlink_to(tmp_path / "secret")
    fetcher = OwnFiles((tmp_path / "fonts",))
    assert fetcher.fetch((tmp_path / "fonts" / "a.ttf").as_uri()).read() == b"font"
    for path in ("fonts/b.ttf", "fonts/../secret", "fonts/%2e%2e/secret"):
        with pytest.raises(ValueError, match="not a file of ours"):
            fetcher.fetch(f"file://{tmp_path}/{path}")


@contextmanager
def listening(opened: list[str]) -> Iterator[None]:
    """Note each file that Python opens meanwhile; a hook cannot be taken away, so it is told to be silent."""
    on = [True]

    def note(event: str, values: tuple[object, ...]) -> None:
        if on[0] and event == "open":
            opened.append(str(values[0]))

    sys.addaudithook(note)
    try:
        yield
    finally:
        on[0] = False


def test_what_the_library_complains_of_is_kept() -> None:
    """A property that the writer does not know is no silent loss."""
    laid = lay_out("<html lang='en'><title>t</title><style>p { no-such-property: 1 }</style><p>x</p></html>")
    assert any("no-such-property" in message for message in laid.logged)


def test_a_blank_cut_from_a_full_arabic_line_is_no_overflow() -> None:
    """The layout library moves such a line by the blank; a word that is too long is still found."""
    day = '<bdi dir="ltr">20</bdi> أكتوبر <bdi dir="ltr">2026</bdi>'
    line = f"<p style='width: {{:.1f}}mm'>إذا قيل لك أن تبدأ في {day}، فإن الأسبوع الثاني يبدأ في {day}.</p>"
    rows = "".join(line.format(40 + step / 2) for step in range(100))
    head = f"<title>t</title><style>{STYLE} bdi {{ white-space: nowrap }}</style>"
    start = f"<html lang='ar' dir='rtl'>{head}"
    assert lay_out(f"{start}{rows}</html>").overflows == ()
    found = lay_out(f"{start}<p style='width: 8mm'>المستشفيات</p></html>").overflows
    assert [one.words for one in found] == ["المستشفيات"]
