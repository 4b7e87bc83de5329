"""Templates speak one language, with the numbers in their messages isolated."""

from __future__ import annotations

from jinja2 import Environment

from generator.catalogue.base import Text
from generator.wording.jinja import install
from generator.wording.phrases import times
from generator.wording.voice import Voice, voice
from tests.wording.samples import ARABIC, GERMAN, speaking


def render(speaker: Voice, template: str, **values: object) -> str:
    """Return what a template gives in one language."""
    environment = Environment(extensions=["jinja2.ext.i18n"], autoescape=True)
    install(environment, speaker)
    return environment.from_string(template).render(**values)


def test_a_message_in_a_template_is_translated_and_its_number_isolated() -> None:
    """Both ways to write a message in a template give the same words."""
    called = '{{ gettext("Page %(number)s", number=3) }}'
    block = "{% trans number=3 %}Page {{ number }}{% endtrans %}"
    german = speaking("de", GERMAN)
    assert render(german, called) == render(german, block) == 'Seite <bdi dir="ltr">3</bdi>'


def test_values_are_escaped_and_messages_are_not() -> None:
    """What comes from the content cannot bring markup along; a message may have some."""
    template = '{{ gettext("<b>%(name)s</b>: %(dose)s", name=name, dose=dose) }}'
    html = render(voice("en"), template, name="A & B <i>", dose=times(voice("en"), 3, 10))
    assert html == '<b>A &amp; B &lt;i&gt;</b>: <bdi dir="ltr">3\u00a0×\u00a010</bdi>'


def test_plural_messages_take_the_form_of_the_number() -> None:
    """The number chooses the form and is written in it as num."""
    template = "{% trans num=num %}{{ num }} sheet{% pluralize %}{{ num }} sheets{% endtrans %}"
    assert render(voice("en"), template, num=1) == '<bdi dir="ltr">1</bdi> sheet'
    assert render(voice("en"), template, num=1234) == '<bdi dir="ltr">1,234</bdi> sheets'


def test_filters_write_texts_for_pages_and_for_attributes() -> None:
    """`words` makes markup and marks a foreign text; `plain` leaves nothing but the words."""
    text = Text("Hold", words="Hold \u20665\u2069 s", language="en")
    template = "{{ text|words }}|{{ text|plain }}|{{ voice.direction }}"
    arabic = speaking("ar", ARABIC)
    assert render(arabic, template, text=text) == (
        '<span lang="en" dir="ltr">Hold <bdi dir="ltr">5</bdi> s</span>|Hold 5 s|rtl'
    )
