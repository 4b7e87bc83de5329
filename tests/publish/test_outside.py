"""No page asks another host for anything, and none runs code of its own.

The policy is that of Content Security Policy Level 3 (W3C): ``script-src 'self'; style-src 'self'``.
"""

from pathlib import Path

import pytest

from tests.publish.sites import BRIDGE, findings, in_bridge, page, site


@pytest.mark.parametrize(
    "body",
    [
        '<img src="https://cdn.example/leg.png" alt="">',
        '<img src="//cdn.example/leg.png" alt="">',
        '<img src="HTTP://cdn.example/leg.png" alt="">',
        '<img srcset="https://cdn.example/leg.png 2x" alt="">',
        '<script src="https://cdn.example/app.js"></script>',
        '<iframe src="https://video.example/1"></iframe>',
        '<video poster="https://video.example/1.png"></video>',
        '<object data="https://cdn.example/leg.svg"></object>',
        '<form action="https://forms.example/send"><button>Send</button></form>',
        '<form><button formaction="https://forms.example/send">Send</button></form>',
        '<a href="../index.html" ping="https://count.example/">Start</a>',
        '<svg><image href="https://cdn.example/leg.png"/></svg>',
        '<svg><use xlink:href="https://cdn.example/leg.svg#a"/></svg>',
        '<svg><rect fill="url(https://cdn.example/p.svg#a)"/></svg>',
    ],
)
def test_nothing_in_a_page_is_loaded_from_another_host(tmp_path: Path, body: str) -> None:
    """Pictures, scripts, frames, forms and figures stay on the site."""
    assert in_bridge(tmp_path, body) == ["loads-from-outside"]


@pytest.mark.parametrize(
    "head",
    [
        '<link rel="stylesheet" href="https://fonts.example/css?family=Sans">',
        '<link rel="preconnect" href="https://fonts.example">',
        '<link rel="icon" href="https://cdn.example/icon.png">',
        '<link rel="preload" as="font" href="https://fonts.example/a.woff2">',
        '<meta http-equiv="refresh" content="0; url=https://elsewhere.example/">',
    ],
)
def test_nothing_in_the_head_is_loaded_from_another_host(tmp_path: Path, head: str) -> None:
    """Web fonts, icons and hints that open a connection stay on the site."""
    assert in_bridge(tmp_path, "", head=head) == ["loads-from-outside"]


@pytest.mark.parametrize(
    "body",
    [
        '<a href="https://doi.org/10.1000/182">the study</a>',
        '<a href="tel:+4955501020">Call the clinic</a>',
        '<a href="mailto:clinic@clinic.example">Write to the clinic</a>',
        '<script type="application/json">{"base": "https://clinic.example"}</script>',
        '<blockquote cite="https://doi.org/10.1000/182">Rest.</blockquote>',
        '<img src="data:image/svg+xml,%3Csvg xmlns=\'http://www.w3.org/2000/svg\'/%3E" alt="">',
        '<svg xmlns="http://www.w3.org/2000/svg"><rect fill="url(#a)"/><g id="a"></g></svg>',
    ],
)
def test_links_to_sources_and_data_are_no_requests(tmp_path: Path, body: str) -> None:
    """A reader may follow a link to a study; showing the page does not ask for it."""
    assert in_bridge(tmp_path, body) == []


def test_the_address_of_the_page_itself_may_be_named(tmp_path: Path) -> None:
    """Canonical and alternate links are named, not loaded."""
    head = (
        '<link rel="canonical" href="https://clinic.example/en/exercises/bridge.html">'
        '<link rel="alternate" hreflang="de" href="https://clinic.example/de/exercises/bridge.html">'
    )
    assert in_bridge(tmp_path, "", head=head) == []


@pytest.mark.parametrize(
    ("body", "code"),
    [
        ("<script>document.title = 'x'</script>", "inline-script"),
        ('<script type="module">let a = 1</script>', "inline-script"),
        ('<iframe srcdoc="<p>x"></iframe>', "inline-script"),
        ('<button onclick="go()">Go</button>', "inline-handler"),
        ("<style>p { color: red }</style>", "inline-style"),
        ('<p style="color: red">x</p>', "inline-style"),
        ('<a href="javascript:go()">Go</a>', "link-runs-code"),
        ('<a href=" java&#10;script:go()">Go</a>', "link-runs-code"),
        ('<a href="data:text/html,x">Go</a>', "link-runs-code"),
    ],
)
def test_code_and_style_stand_in_files_of_their_own(tmp_path: Path, body: str, code: str) -> None:
    """What the security policy of the site would block is found before a clinic finds it."""
    assert in_bridge(tmp_path, body) == [code]


def test_no_page_moves_its_links(tmp_path: Path) -> None:
    """A base element makes every other check of links void."""
    assert in_bridge(tmp_path, "", head="<base href='../'>") == ["base-element"]


@pytest.mark.parametrize(
    "style",
    [
        "@import 'https://fonts.example/a.css';",
        "@import url(https://fonts.example/a.css);",
        'p { background: url(  "//cdn.example/a.png" ) }',
        "p { background: image-set('https://cdn.example/a.png' 1x) }",
    ],
)
def test_no_stylesheet_loads_from_another_host(tmp_path: Path, style: str) -> None:
    """The line of the stylesheet is named."""
    files = {**site(), "assets/extra.css": f"/* our own\n{style} */\n{style}\n"}
    assert findings(tmp_path, files) == [("loads-from-outside", "assets/extra.css")]


def test_a_figure_keeps_its_style_but_loads_and_runs_nothing(tmp_path: Path) -> None:
    """A figure file is drawn by itself, so a style of its own is allowed; a script or web font is not."""
    good = '<svg xmlns="http://www.w3.org/2000/svg"><style>path { fill: none }</style><path d="M0 0"/></svg>'
    assert findings(tmp_path, {**site(), "assets/leg.svg": good}) == []
    for bad, code in (
        ("<svg><style>@import 'https://fonts.example/a.css'</style></svg>", "loads-from-outside"),
        ("<svg><script>go()</script></svg>", "inline-script"),
        ('<svg><g onload="go()"/></svg>', "inline-handler"),
        ('<?xml-stylesheet href="https://fonts.example/a.css"?><svg></svg>', "loads-from-outside"),
    ):
        assert findings(tmp_path, {**site(), "assets/leg.svg": bad}) == [(code, "assets/leg.svg")]


def test_the_first_of_two_equal_attributes_counts(tmp_path: Path) -> None:
    """Browsers keep the first (HTML Standard, duplicate-attribute); a harmless second one hides nothing."""
    found = findings(
        tmp_path, {**site(), BRIDGE: page('<img src="https://cdn.example/a.png" src="../index.html" alt="">')}
    )
    assert found == [("loads-from-outside", BRIDGE)]
