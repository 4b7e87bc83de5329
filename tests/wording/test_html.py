"""Words become markup that keeps numbers in order and says which language it is in."""

from __future__ import annotations

from bs4 import BeautifulSoup
from hypothesis import given
from hypothesis import strategies as st
from markupsafe import Markup

from generator.catalogue.base import Text
from generator.wording.html import as_html, text_html
from generator.wording.isolation import CLOSE, OPEN, plain


def test_an_isolate_becomes_an_element() -> None:
    """The HTML Standard isolates with bdi; markup signs are escaped and no-break spaces kept."""
    words = f"a < b & {OPEN}3\u00a0×\u00a010{CLOSE}"
    assert as_html(words) == Markup('a &lt; b &amp; <bdi dir="ltr">3\u00a0×\u00a010</bdi>')


@given(st.text(alphabet=st.sampled_from(f"a1<&>\"'{OPEN}{CLOSE}")))
def test_markup_is_well_formed_whatever_the_marks(words: str) -> None:
    """A mark without its partner vanishes; a reader (Beautiful Soup) gets the same text back."""
    html = as_html(words)
    assert BeautifulSoup(f"<p>{html}</p>", "html.parser").get_text() == plain(words)
    assert OPEN not in html
    assert CLOSE not in html
    assert html.count("<bdi") == html.count("</bdi>")


def test_a_text_in_another_language_carries_it() -> None:
    """A sentence that fell back to German inside an Arabic page is spoken and set as German."""
    text = Text("Halten", words=f"Halten Sie {OPEN}5{CLOSE} Sekunden", language="de")
    assert text_html(text, "ar") == (
        '<span lang="de" dir="ltr">Halten Sie <bdi dir="ltr">5</bdi> Sekunden</span>'
    )
    assert text_html(text, "de") == 'Halten Sie <bdi dir="ltr">5</bdi> Sekunden'
    assert text_html(Text("قف", words="قف", language="ar"), "en") == '<span lang="ar" dir="rtl">قف</span>'
