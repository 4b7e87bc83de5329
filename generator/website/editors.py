"""Makes the pages for content editors: every code with its remedy, every key with its meaning."""

from __future__ import annotations

from generator.website.addresses import CODES, FIELDS
from generator.website.page import Page
from generator.website.values import SiteInput


def editors_pages(site: SiteInput) -> tuple[Page, ...]:
    """Return the editors' pages in the language that the content is written in, else none."""
    if not site.for_editors:
        return ()
    voice = site.voice
    return (
        Page(
            path=CODES,
            template="codes.html",
            title=voice.gettext("All codes of problems"),
            description=voice.gettext("What each code means and what to do"),
            values={"rules": tuple(sorted(site.rules, key=lambda rule: rule.code))},
            doses=None,
            required=tuple(rule.code for rule in site.rules),
            languages=(voice.code,),
            found=False,
            listed=False,
        ),
        Page(
            path=FIELDS,
            template="fields.html",
            title=voice.gettext("All fields of the content"),
            description=voice.gettext("What each key of the content files means"),
            values={"groups": site.fields},
            doses=None,
            required=tuple(name for _, name, _, _ in site.fields),
            languages=(voice.code,),
            found=False,
            listed=False,
        ),
    )
