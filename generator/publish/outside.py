"""Finds what makes a page ask another host or run code inside the page: a clinic's network has no way out.

The policy the site is served under is ``script-src 'self'; style-src 'self'`` (Content Security Policy
Level 3, W3C); a page that breaks it looks right at home and is broken at the clinic.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from bs4 import BeautifulSoup
from bs4.element import ProcessingInstruction, Stylesheet, Tag

from generator.problems import Place, Problem, Rule
from generator.publish.pages import attribute, place_of, refresh_target, sources

LOADS_OUTSIDE = Rule(
    "loads-from-outside",
    "A page, stylesheet or figure loads something from another host.",
    "A theme, a font service or a pasted snippet; inside the clinic's network it does not load, "
    "and it tells another company who reads the page.",
    "copy the file into the site's assets and refer to it there",
)
CODE_IN_PAGE = Rule(
    "inline-script",
    "A page or figure holds program code instead of naming a script file.",
    "A theme partial or a pasted snippet; the site's security policy does not run it.",
    "move the code to a script file of the site",
)
HANDLER_IN_PAGE = Rule(
    "inline-handler",
    "An element runs code from an attribute such as onclick.",
    "A pasted snippet; the site's security policy does not run it, so the button does nothing.",
    "attach the action in a script file of the site",
)
STYLE_IN_PAGE = Rule(
    "inline-style",
    "A page holds a style element or a style attribute.",
    "A theme partial, a word processor's table or a pasted snippet; the site's security policy ignores it.",
    "give the element a class and put the style into a stylesheet of the site",
)
SCRIPT_LINK = Rule(
    "link-runs-code",
    "A link runs code instead of leading somewhere.",
    "A link that begins with javascript: or data:; the site's security policy does not follow it.",
    "use a button and a script file of the site, or lead the link to a page",
)
MOVES_LINKS = Rule(
    "base-element",
    "A page moves all its links with a base element.",
    "With a base element no link can be checked, and the site breaks when it is read from a folder.",
    "remove the base element and write links relative to the page",
)
RULES = (LOADS_OUTSIDE, CODE_IN_PAGE, HANDLER_IN_PAGE, STYLE_IN_PAGE, SCRIPT_LINK, MOVES_LINKS)

_OTHER_HOST = re.compile(r"\s*(?:[a-z][a-z0-9+.-]*:)?[\\/]{2}", re.IGNORECASE)
_CODE_LINK = re.compile(r"(?:javascript|vbscript|data)\s*:", re.IGNORECASE)
_DATA_TYPES = frozenset({"application/json", "application/ld+json"})
# Named for readers and machines, never fetched by showing the page (HTML Standard, link types).
_HARMLESS_RELATIONS = frozenset(
    (
        "alternate",
        "author",
        "bookmark",
        "canonical",
        "help",
        "license",
        "next",
        "nofollow",
        "noopener",
        "noreferrer",
        "prev",
        "search",
        "tag",
    )
)
_LINKING = frozenset({"a", "area"})
# Attributes that carry words, names or citations; a browser never fetches what they say.
_WORDS = re.compile(
    r"xmlns(:.*)?|cite|alt|title|content|value|placeholder|datetime|property|itemtype|itemid|resource|about|"
    r"vocab|prefix|typeof|data-.*|aria-.*"
)
# Elements that may be wrong without any attribute.
_GUILTY_BARE = frozenset(("script", "style", "base"))
_STYLE_URL = re.compile(
    r"""url\(\s*(?:"([^"]*)"|'([^']*)'|([^)'"\s]*))|@import\s+(?:"([^"]*)"|'([^']*)')""", re.IGNORECASE
)
_STYLE_WORDS = re.compile(r"image-set\(([^;{}]*)", re.IGNORECASE)
_QUOTED = re.compile(r"""["']([^"']*)["']""")
_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)


def leads_outside(address: str) -> bool:
    """Return whether an address names another host (``//host`` and ``https://host`` alike)."""
    return _OTHER_HOST.match(address) is not None


def in_markup(soup: BeautifulSoup, path: str) -> Iterator[Problem]:
    """Yield every breach in an HTML page or an SVG figure.

    A figure may keep its own style: as an image it is drawn by itself, outside the policy of the page.
    """
    figure = path.endswith(".svg")
    for node in soup.descendants:
        if isinstance(node, Tag):
            # Most elements of a page bear no attribute, and need no place.
            if node.attrs or node.name in _GUILTY_BARE:
                place = place_of(node, path)
                yield from _element(node, place, figure)
                for name, value in node.attrs.items():
                    yield from _attribute(node, name.lower(), str(value), place, figure)
        elif isinstance(node, ProcessingInstruction):
            for address in re.findall(r"""href\s*=\s*["']([^"']*)""", str(node)):
                if leads_outside(address):
                    yield LOADS_OUTSIDE.at(Place(path), f"the stylesheet {address} lies on another host")


def _element(tag: Tag, place: Place, figure: bool) -> Iterator[Problem]:
    """Yield what an element is guilty of by itself."""
    if tag.name == "script" and "src" not in tag.attrs and not (figure and "href" in tag.attrs):
        kind = (attribute(tag, "type") or "").strip().lower()
        if kind not in _DATA_TYPES:
            yield CODE_IN_PAGE.at(place, "a script element holds code")
    elif tag.name == "style":
        text = "".join(str(part) for part in tag.contents if isinstance(part, (Stylesheet, str)))
        if not figure:
            yield STYLE_IN_PAGE.at(place, "a style element stands in the page")
        yield from in_style(text, place)
    elif tag.name == "base":
        yield MOVES_LINKS.at(place, "the page has a base element")
    elif tag.name == "meta" and leads_outside(refresh_target(tag) or ""):
        yield LOADS_OUTSIDE.at(place, f"the page sends its reader on to {refresh_target(tag)}")


def _attribute(tag: Tag, name: str, value: str, place: Place, figure: bool) -> Iterator[Problem]:
    """Yield what one attribute is guilty of."""
    if name.startswith("on"):
        yield HANDLER_IN_PAGE.at(place, f"the attribute {name} of {tag.name} runs code")
    elif name == "style":
        if not figure:
            yield STYLE_IN_PAGE.at(place, f"{tag.name} has a style attribute")
        yield from in_style(value, place)
    elif name in ("srcset", "imagesrcset"):
        for address in sources(value):
            if leads_outside(address):
                yield LOADS_OUTSIDE.at(place, f"{tag.name} loads {address}")
    elif name == "srcdoc":
        yield CODE_IN_PAGE.at(place, f"{tag.name} holds a page within the page (srcdoc)")
    elif name in ("href", "xlink:href", "action", "formaction", "src", "data") and _runs(tag, name, value):
        yield SCRIPT_LINK.at(place, f"{name} of {tag.name} begins with {value.strip()[:12]}")
    elif "url(" in value.lower() and not _WORDS.fullmatch(name):
        yield from in_style(value, place)
    elif _fetches(tag, name) and leads_outside(value):
        yield LOADS_OUTSIDE.at(place, f"{name} of {tag.name} names {value.strip()}")


def _runs(tag: Tag, name: str, value: str) -> bool:
    """Return whether an address is code; an image or font may be written into the page as ``data:``."""
    # Browsers drop control characters and blanks before they read the scheme (URL Standard, basic parser).
    found = _CODE_LINK.match(re.sub(r"[\x00-\x20]", "", value))
    if found is None:
        return False
    picture = tag.name in ("img", "image", "use", "link", "source") and name != "formaction"
    return not (picture and found.group().lower().startswith("data"))


def _fetches(tag: Tag, name: str) -> bool:
    """Return whether showing or sending the page asks for what the attribute names; if in doubt, it does."""
    if _WORDS.fullmatch(name) and not (name in ("value", "content") and tag.name == "param"):
        return False
    if tag.name in _LINKING and name in ("href", "xlink:href"):
        return False
    if tag.name == "link" and name == "href":
        relations = (attribute(tag, "rel") or "").lower().split()
        return not relations or not set(relations) <= _HARMLESS_RELATIONS
    return True


def style_addresses(text: str) -> Iterator[tuple[str, int]]:
    """Yield every address a stylesheet loads, with its line counted from 1."""
    # Comments become as many line ends as they held, so that the lines stay true.
    bare = _COMMENT.sub(lambda found: "\n" * found.group().count("\n"), text)
    for found in _STYLE_URL.finditer(bare):
        address = next((group for group in found.groups() if group), "")
        yield address.strip(), bare.count("\n", 0, found.start()) + 1
    for found in _STYLE_WORDS.finditer(bare):
        for address in _QUOTED.findall(found.group(1)):
            yield address, bare.count("\n", 0, found.start()) + 1


def in_style(text: str, place: Place) -> Iterator[Problem]:
    """Yield every address of another host in a style within a page or figure, at the element's place."""
    for address, _ in style_addresses(text):
        if leads_outside(address):
            yield LOADS_OUTSIDE.at(place, f"the style loads {address}")


def in_stylesheet(text: str, path: str) -> Iterator[Problem]:
    """Yield every address of another host in a stylesheet file, each at its line."""
    for address, line in style_addresses(text):
        if leads_outside(address):
            yield LOADS_OUTSIDE.at(Place(path, line, 1), f"the stylesheet loads {address}")
