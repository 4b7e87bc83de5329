"""Makes a page of one language when it is asked for, so that a preview need not wait for all the others.

A change of one sentence changes one page or two; MkDocs would make all of them again.
"""

from __future__ import annotations

import os
import shutil
import threading
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path

from jinja2 import Environment
from mkdocs.commands.build import get_context
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import Files, get_files
from mkdocs.structure.nav import Navigation, get_navigation
from mkdocs.structure.pages import Page

from generator.website.engine import ENVIRONMENT, SiteJob
from generator.website.page import source_name

_MARKDOWN = ".md"


@dataclass(frozen=True)
class _Frame:
    """What MkDocs needs for any page of one state of the settings."""

    config: MkDocsConfig
    files: Files
    navigation: Navigation
    environment: Environment


Source = Callable[[], str]
"""Makes the Markdown of a page."""


class OnDemand:
    """The pages of one built language, made again one by one as their sources change.

    The search keeps the words with which the language was built.
    """

    def __init__(self, job: SiteJob) -> None:
        """Take the sources as those from which the language was built just now."""
        os.environ.update(ENVIRONMENT)
        self._job = job
        self._lock = threading.Lock()
        self._settings = job.config.read_bytes()
        self._texts = _texts(job.pages)
        self._sources: Mapping[str, Source] = {}
        self._frame = _frame(job)

    def renew(self, sources: Mapping[str, Source]) -> None:
        """Take what makes each page now, by the name of its Markdown file; it is made when asked for."""
        with self._lock:
            settings = self._job.config.read_bytes()
            if settings != self._settings or sources.keys() != self._texts.keys():
                for name in self._texts.keys() - sources.keys():
                    (self._job.output / name).with_suffix(".html").unlink(missing_ok=True)
                _write(self._job.pages, {name: source() for name, source in sources.items()})
                self._frame = _frame(self._job)
                # A page that is framed otherwise is another page, though its words are the same.
                self._texts = dict.fromkeys(sources, "")
            self._settings, self._sources = settings, dict(sources)
            _copy_others(self._job.pages, self._job.output)

    def make(self, path: str) -> None:
        """Make the page at `path` (``exercises/clam.html``) anew if its source changed since it was made."""
        name = source_name(path)
        with self._lock:
            if not path.endswith(".html") or name not in self._sources:
                return
            text = self._sources[name]()
            if text != self._texts[name]:
                html = _html(self._frame, name, text)
                target = self._job.output / path
                target.parent.mkdir(parents=True, exist_ok=True)
                target.write_text(html, encoding="utf-8", errors="xmlcharrefreplace", newline="\n")
                self._texts[name] = text


def _texts(folder: Path) -> dict[str, str]:
    return {
        path.relative_to(folder).as_posix(): path.read_text(encoding="utf-8")
        for path in sorted(folder.rglob(f"*{_MARKDOWN}"))
    }


def _write(folder: Path, texts: Mapping[str, str]) -> None:
    for name, text in texts.items():
        target = folder / name
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(text, encoding="utf-8", newline="\n")


def _copy_others(pages: Path, output: Path) -> None:
    """Copy what is no page: tables that can be loaded."""
    for path in pages.rglob("*"):
        if path.is_file() and path.suffix != _MARKDOWN:
            target = output / path.relative_to(pages)
            target.parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(path, target)


def _frame(job: SiteJob) -> _Frame:
    """Do what MkDocs does before its first page."""
    with job.config.open("rb") as stream:
        config = load_config(stream, strict=True)
    config.plugins.on_startup(command="serve", dirty=False)
    config = config.plugins.on_config(config)
    config.plugins.on_pre_build(config=config)
    environment = config.theme.get_env()
    files = get_files(config)
    files.add_files_from_theme(environment, config)
    files = config.plugins.on_files(files, config=config)
    navigation = config.plugins.on_nav(get_navigation(files, config), config=config, files=files)
    for file in files.documentation_pages():
        if file.page is None:
            Page(None, file, config)
    environment = config.plugins.on_env(environment, config=config, files=files) or environment
    return _Frame(config, files, navigation, environment)


def _html(frame: _Frame, name: str, text: str) -> str:
    """Do what MkDocs does for one page, whose source is `text`."""
    config, files = frame.config, frame.files
    file = files.src_uris[name]
    file.content_string = text
    page = file.page
    assert page is not None, "every documentation page has one"
    plugins = config.plugins
    config._current_page = page
    page.active = True
    try:
        page = plugins.on_pre_page(page, config=config, files=files)
        page.read_source(config)
        page.markdown = plugins.on_page_markdown(page.markdown or "", page=page, config=config, files=files)
        page.render(config, files)
        page.content = plugins.on_page_content(page.content or "", page=page, config=config, files=files)
        context = get_context(frame.navigation, files.documentation_pages(), config, page)
        context = plugins.on_page_context(context, page=page, config=config, nav=frame.navigation)
        template = frame.environment.get_template("main.html")
        return plugins.on_post_page(template.render(context), page=page, config=config)
    finally:
        page.active = False
        config._current_page = None
