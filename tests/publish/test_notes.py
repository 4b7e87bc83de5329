"""No page without its safety texts passes the audit."""

from pathlib import Path

import pytest

from generator.problems import has_errors
from generator.publish import Audit, Expected, audit_tree
from tests.publish.sites import (
    ARABIC,
    BRIDGE,
    DEMONSTRATION,
    ENGLISH,
    NOTE,
    arabic_page,
    findings,
    in_bridge,
    page,
    site,
    write,
)


def test_a_whole_site_passes_in_silence(tmp_path: Path) -> None:
    """A site whose pages all carry their texts has no finding."""
    assert findings(tmp_path, site()) == []


def test_a_template_without_the_deferral_note_makes_the_audit_fail(tmp_path: Path) -> None:
    """A page without the note to ask the treating clinician is an error that cannot be lowered."""
    write(tmp_path, {**site(), BRIDGE: page(note="")})
    problems = audit_tree(tmp_path, Audit((ENGLISH,)))
    assert [(problem.code, problem.place.path) for problem in problems] == [("page-without-note", BRIDGE)]
    assert has_errors(problems)
    assert problems[0].safety
    assert "Ask your physiotherapist" in problems[0].message


def test_every_page_is_read_and_not_a_sample(tmp_path: Path) -> None:
    """One page of a hundred without the note is found, also when several processes read them."""
    files = {**site(), **{f"en/exercises/e-{number}.html": page() for number in range(100)}}
    files["en/exercises/e-77.html"] = page(note="")
    write(tmp_path, files)
    problems = audit_tree(tmp_path, Audit((ENGLISH,)), workers=2)
    assert [(problem.code, problem.place.path) for problem in problems] == [
        ("page-without-note", "en/exercises/e-77.html")
    ]


def test_a_missing_demonstration_line_is_found(tmp_path: Path) -> None:
    """Where the clinic is invented every page says so."""
    spoilt = page().replace(DEMONSTRATION, "Demonstration")
    assert findings(tmp_path, {**site(), BRIDGE: spoilt}) == [("page-without-note", BRIDGE)]


@pytest.mark.parametrize(
    "hidden",
    [
        f"<p hidden>{NOTE}</p>",
        f'<div aria-hidden="true"><p>{NOTE}</p></div>',
        f"<template><p>{NOTE}</p></template>",
        f"<noscript><p>{NOTE}</p></noscript>",
        f"<dialog><p>{NOTE}</p></dialog>",
        f"<div popover><p>{NOTE}</p></div>",
        f"<div inert><p>{NOTE}</p></div>",
        f"<details><summary>More</summary><p>{NOTE}</p></details>",
        f"<!-- {NOTE} -->",
        f'<script type="application/json">"{NOTE}"</script>',
        f'<img src="../../en/index.html" alt="{NOTE}">',
        f"<p>{NOTE.replace('before', 'be<br>fore')}</p>",
        f"<p>{NOTE.replace('before you start', 'after you start')}</p>",
    ],
)
def test_a_note_that_nobody_sees_does_not_count(tmp_path: Path, hidden: str) -> None:
    """Hidden, closed, commented out or changed: the reader does not meet the note."""
    assert findings(tmp_path, {**site(), BRIDGE: page(hidden, note="")}) == [("page-without-note", BRIDGE)]


@pytest.mark.parametrize(
    "visible",
    [
        f"<p>{NOTE.replace(' ', chr(10) + '   ')}</p>",
        f"<p>{NOTE.replace(' you ', '&nbsp;you ')}</p>",
        f"<p>{NOTE.replace('physiotherapist', 'physio&shy;therapist')}</p>",
        f"<p>{NOTE.replace('before', '<strong>be</strong>fore')}</p>",
        f"<p>{NOTE.replace('before', '&#x2066;before&#x2069;')}</p>",
        f"<details open><summary>More</summary><p>{NOTE}</p></details>",
        f"<details><summary>{NOTE}</summary></details>",
    ],
)
def test_line_breaks_emphasis_and_invisible_marks_make_no_difference(tmp_path: Path, visible: str) -> None:
    """The note counts as the reader meets it, not as the template writes it."""
    assert findings(tmp_path, {**site(), BRIDGE: page(visible, note="")}) == []


def test_the_inline_style_that_hides_is_known(tmp_path: Path) -> None:
    """A note hidden by a style attribute is missing, and the attribute is a finding of its own."""
    body = f'<p style="display: none">{NOTE}</p>'
    assert findings(tmp_path, {**site(), BRIDGE: page(body, note="")}) == [
        ("page-without-note", BRIDGE),
        ("inline-style", BRIDGE),
    ]


@pytest.mark.parametrize(
    "link",
    [
        "",
        '<a href="../../index.html">Start</a>',
        '<a hidden href="../warning-signs.html">Warning signs</a>',
        '<details><summary>Menu</summary><a href="../warning-signs.html">Warning signs</a></details>',
    ],
)
def test_every_page_leads_straight_to_the_warning_signs(tmp_path: Path, link: str) -> None:
    """A link that is missing, hidden or leads elsewhere is an error."""
    spoilt = page().replace('<a href="../warning-signs.html">Warning signs</a>', link)
    assert findings(tmp_path, {**site(), BRIDGE: spoilt}) == [("page-without-warning-link", BRIDGE)]


@pytest.mark.parametrize(
    ("start", "codes"),
    [
        ("<html>", ["page-language"]),
        ('<html lang="de" dir="ltr">', ["page-language"]),
        ('<html lang="en" dir="rtl">', ["page-direction"]),
    ],
)
def test_language_and_direction_are_said_and_right(tmp_path: Path, start: str, codes: list[str]) -> None:
    """A page says the language of its folder, and its direction."""
    spoilt = page().replace('<html lang="en" dir="ltr">', start)
    assert findings(tmp_path, {**site(), BRIDGE: spoilt}) == [(code, BRIDGE) for code in codes]


@pytest.mark.parametrize("heading", ["", "<h1>Bridge</h1><h1>Again</h1>", "<h1 hidden>Bridge</h1>"])
def test_a_page_has_one_main_heading(tmp_path: Path, heading: str) -> None:
    """No h1, two, or a hidden one is a finding."""
    spoilt = page().replace("<h1>Bridge</h1>", heading)
    assert findings(tmp_path, {**site(), BRIDGE: spoilt}) == [("page-main-heading", BRIDGE)]


def test_a_page_outside_every_language_is_found(tmp_path: Path) -> None:
    """A page in the folder of a withheld language is never published by accident."""
    files = {**site(), "fr/index.html": page(warnings="../en/warning-signs.html")}
    assert findings(tmp_path, files) == [("page-without-language", "fr/index.html")]


def test_root_pages_carry_the_texts_of_every_language(tmp_path: Path) -> None:
    """The first page and the page for unknown addresses serve all languages, so they carry all texts."""
    files = {**site(), "ar/index.html": arabic_page(), "ar/warning-signs.html": arabic_page()}
    found = findings(tmp_path, files, Audit((ENGLISH, ARABIC)))
    assert found == [
        (code, path)
        for path in ("404.html", "index.html")
        for code in ("page-without-note", "page-without-warning-link")
    ]


def test_exempt_pages_are_only_those_named(tmp_path: Path) -> None:
    """A redirect stub needs no note when, and only when, it is named."""
    stub = '<html lang="en"><title>Moved</title><meta http-equiv="refresh" content="0; url=index.html">'
    files = {**site(), "en/old.html": stub}
    assert {code for code, _ in findings(tmp_path, files)} == {
        "page-without-note",
        "page-without-warning-link",
        "page-main-heading",
    }
    assert findings(tmp_path, files, Audit((ENGLISH,), exempt=frozenset({"en/old.html"}))) == []


@pytest.mark.parametrize("number", ["3 × 10", "8–10", "90°", "0555 010 20", "+49 555", "2 - 3"])
def test_numbers_in_a_right_to_left_line_are_isolated(tmp_path: Path, number: str) -> None:
    """Left bare in an Arabic line, 3 × 10 is shown as 10 × 3 (Unicode Standard Annex 9, rules W4 and N1)."""
    audit = Audit((ARABIC,), shared_pages=frozenset())
    files = {
        "ar/index.html": arabic_page(f"<p>كرر {number} مرات</p>"),
        "ar/warning-signs.html": arabic_page(),
    }
    assert findings(tmp_path, files, audit) == [("number-not-isolated", "ar/index.html")]
    for kept in (f'<bdi dir="ltr">{number}</bdi>', f"&#x2066;{number}&#x2069;"):
        files["ar/index.html"] = arabic_page(f"<p>كرر {kept} مرات</p>")
        assert findings(tmp_path, files, audit) == []


def test_an_arabic_page_set_left_to_right_is_found(tmp_path: Path) -> None:
    """A body that turns the direction of the page back is as wrong as a page without one."""
    audit = Audit((ARABIC,), shared_pages=frozenset())
    files = {"ar/warning-signs.html": arabic_page()}
    for spoilt in (
        arabic_page(start='<html lang="ar">'),
        arabic_page().replace("<body>", '<body dir="ltr">'),
    ):
        assert findings(tmp_path, {**files, "ar/index.html": spoilt}, audit) == [
            ("page-direction", "ar/index.html")
        ]


def test_announced_pages_and_those_of_every_language_must_exist(tmp_path: Path) -> None:
    """A page that was not written is named, whatever the rest of the site looks like."""
    files = site()
    del files["en/warning-signs.html"], files["404.html"]
    audit = Audit((ENGLISH,), required={"en/about.html": ("Imprint",)})
    found = findings(tmp_path, files, audit)
    assert [path for code, path in found if code == "page-missing"] == [
        "404.html",
        "en/about.html",
        "en/warning-signs.html",
    ]


def test_an_empty_tree_does_not_pass(tmp_path: Path) -> None:
    """A build that wrote nothing is not a build without problems."""
    assert ("page-missing", "") in findings(tmp_path, {})


@pytest.mark.parametrize(
    "audit",
    [
        Audit(()),
        Audit((Expected("en", "ltr", (), None, "Clinic"),)),
        Audit((Expected("en", "ltr", (NOTE, " "), None, "Clinic"),)),
        Audit((Expected("en", "ltr", (NOTE,), "", "Clinic"),)),
        Audit((Expected("en", "ltr", (NOTE,), None, ""),)),
        Audit((ENGLISH,), required={BRIDGE: ("",)}),
        Audit((ENGLISH,), doses={BRIDGE: (" ",)}),
    ],
)
def test_an_audit_that_looks_for_nothing_fails(tmp_path: Path, audit: Audit) -> None:
    """An empty text is on every page; an untranslated note must not let the site pass."""
    assert "nothing-to-audit" in [code for code, _ in findings(tmp_path, site(), audit)]


def test_a_page_that_is_not_utf8_is_found(tmp_path: Path) -> None:
    """A file that cannot be read cannot be checked, so it is an error."""
    write(tmp_path, site())
    (tmp_path / BRIDGE).write_bytes("<p>Knie beugen, Fuß stehen lassen".encode("latin-1"))
    assert [(problem.code, problem.place.path) for problem in audit_tree(tmp_path, Audit((ENGLISH,)))] == [
        ("file-unreadable", BRIDGE)
    ]


def test_a_page_with_thousands_of_open_elements_is_read(tmp_path: Path) -> None:
    """A faulty page gives findings and no crash."""
    assert in_bridge(tmp_path, "<div>" * 3000) == []


DOSES = Audit((ENGLISH,), doses={BRIDGE: ("3 × 10",)}, required={BRIDGE: ("Fixed support",)})


@pytest.mark.parametrize(
    ("body", "codes"),
    [
        ("<p>Fixed support</p><p>3&nbsp;×&nbsp;10</p>", []),
        ("<p>Fixed support</p><details><summary>Dose</summary><bdi dir='ltr'>3</bdi> × 10</details>", []),
        ("<p>Fixed support</p>", ["dose-missing"]),
        ("<p>Fixed support</p><p>13 × 10</p>", ["dose-missing", "dose-not-in-catalogue"]),
        ("<p>Fixed support</p><p>3 × 100</p>", ["dose-missing", "dose-not-in-catalogue"]),
        ("<p>Fixed support</p><p>10 × 3</p>", ["dose-missing", "dose-not-in-catalogue"]),
        ("<p>Fixed support</p><p>3 × 10, later 3 × 12</p>", ["dose-not-in-catalogue"]),
        ("<p>Fixed support</p><p>3 × 10, later 3 x 12</p>", ["dose-not-in-catalogue"]),
        ("<p>3 × 10</p>", ["text-missing"]),
    ],
)
def test_a_page_prints_the_doses_of_the_catalogue_and_no_other(
    tmp_path: Path, body: str, codes: list[str]
) -> None:
    """A dose that is missing, altered or typed into a text is an error."""
    assert in_bridge(tmp_path, body, DOSES) == codes
