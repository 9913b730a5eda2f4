"""The MkDocs plugin: hooks and the state of one build, nothing else.

What a page holds is made in recipe_page.py, book_pages.py and the other builders; this module only
hands MkDocs their results at the right moment.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from itertools import chain
from pathlib import Path
from typing import TYPE_CHECKING, Any

from markupsafe import escape
from mkdocs.config.config_options import ExtraScriptValue
from mkdocs.plugins import BasePlugin, CombinedEvent, event_priority, get_plugin_logger
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.toc import AnchorLink, TableOfContents
from mkdocs.utils import get_build_datetime, get_relative_url

from stillroom.core.private.seeking import Seeker
from stillroom.core.unknown_foods import unknown_foods
from stillroom.core.words.problems import ProblemsFound
from stillroom.looks.card_designs import design_of
from stillroom.publish.agreeing import find_unfit_pages
from stillroom.publish.book_faults import BookFaults, stop_at, stop_at_error
from stillroom.publish.book_files import (
    FAVICON,
    FOLDER,
    PUBLISHED,
    SCRIPT,
    list_files,
    list_stylesheets,
)
from stillroom.publish.book_pictures import publish_pictures
from stillroom.publish.building import (
    check_settings,
    let_all_stay,
    list_watched,
    open_for_mkdocs,
    warnings_counted,
)
from stillroom.publish.clean_html import drop_comments, without_autocomplete
from stillroom.publish.config import StillroomConfig, escape_head
from stillroom.publish.keeping_templates import keep_compiled
from stillroom.publish.keeping_work import AtHand
from stillroom.publish.late_files import file_of
from stillroom.publish.late_pages import LatePages, PagesAsTheyWere, is_ours_alone
from stillroom.publish.leaves import find_unpublished, list_leaves, list_warnings, open_library
from stillroom.publish.library import Leaf, Library
from stillroom.publish.page_faults import find_page_faults
from stillroom.publish.page_frames import PageFrames
from stillroom.publish.page_templates import find_missing_templates
from stillroom.publish.print_room import list_card_files
from stillroom.publish.remembering import keep, remember
from stillroom.publish.scripts import scripts_of_page
from stillroom.publish.searching import (
    forget_sections,
    index_of,
    index_page,
    index_words,
    pass_over_search,
    read_again,
    searched_part,
    without_marks,
)
from stillroom.publish.served_faults import ServedFaults
from stillroom.publish.served_links import link_page
from stillroom.publish.served_reload import allow_reload
from stillroom.publish.site_folder import SiteInTheMaking, find_taken
from stillroom.publish.templating import THEME, environment, show_plain
from stillroom.publish.wall import (
    find_private,
    find_private_in_site,
    find_shapes,
    know_private_words,
    pass_over,
    pass_over_made,
    pass_over_shape,
)
from stillroom.publish.working import WorkedLeaf
from stillroom.saving.places import published_folders

if TYPE_CHECKING:
    from jinja2 import Environment
    from mkdocs.config.defaults import MkDocsConfig
    from mkdocs.structure.nav import Navigation
    from mkdocs.structure.pages import Page
    from mkdocs.utils.templates import TemplateContext

THEME_FAVICON = "assets/images/favicon.png"
"""What Material sets when a book names no icon of its own."""

SEARCH_INDEX = "search/search_index.json"

HEAD_FACTS = ("title", "description", "author")

log = get_plugin_logger(__name__)


class StillroomPlugin(BasePlugin[StillroomConfig]):  # type: ignore[no-untyped-call]
    """Publishes a folder of recipes as a book."""

    library: Library
    leaves: dict[str, Leaf]
    seeker: Seeker | None = None
    site: SiteInTheMaking | None = None
    serving = False
    dirty = False
    site_is_passing = False
    search_said: Any = None
    without_marks: str | None = None
    alone = False
    was_served = False
    aside: Path | None = None
    first_faults: tuple[str, ...] = ()

    def __init__(self) -> None:
        """Begin with no page at hand; `mkdocs serve` keeps the plugin from build to build."""
        self.late = LatePages()
        self.as_they_were = PagesAsTheyWere()
        self.frames = PageFrames()
        self.at_hand: AtHand = {}

    def on_startup(self, *, command: str, dirty: bool) -> None:
        """Note whether a site is written that somebody keeps."""
        let_all_stay()
        self.serving, self.dirty = command == "serve" or dirty, dirty
        self.site_is_passing = command == "serve"  # in a folder made for it and taken away again

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Open the book; what is wrong with it when it is first served stands on a page instead."""
        self.first_faults, self.site = (), None  # MkDocs keeps one plugin for all of a process
        try:
            return self._open_book(config)
        except BookFaults as wrong:
            if not self.site_is_passing or self.was_served:
                raise
            self.first_faults, self.leaves = wrong.said, {}
            return config

    def _open_book(self, config: MkDocsConfig) -> MkDocsConfig:
        """Refuse what is private, read every recipe, and put the book's look into the theme."""
        try:
            book = open_for_mkdocs(config)
            stop_at((*find_unfit_pages(book), *find_missing_templates(book, config)))
            seeker = know_private_words(book)
            if self.seeker is None or self.seeker.known != seeker.known:
                self.seeker = seeker
                remember(seeker, book)
                themes = [path for path in config.theme.dirs if path != config.theme.custom_dir]
                brought = [folder for folder, _ in PUBLISHED.values()]
                pass_over([*(Path(theme, "assets") for theme in themes), *brought], seeker)
            written = [
                folder for folder in published_folders(book).values() if folder != book.site_dir
            ]
            found = find_private(written, self.seeker)
            if not self.site_is_passing:
                earlier = find_shapes(book.site_dir, self.seeker)
                found = (*found, *(earlier or find_taken(book)))
            stop_at(found)
            design_of(book)  # one that is not there is told of before anything is worked out
            keep_compiled(environment())
            at_hand = self.at_hand if self.serving else None
            self.library = open_library(book, get_build_datetime().date(), at_hand)
        except ProblemsFound as found:
            stop_at(found.problems)
        for food in unknown_foods(self.library.recipes):
            log.info(food.say())  # no fault: the pages say what could not be worked out
        for warning in list_warnings(self.library):
            log.warning(str(warning))
        self.leaves = list_leaves(self.library)
        config.theme.dirs.insert(1 if config.theme.custom_dir else 0, str(THEME))
        escape_head(config)
        if config.theme["favicon"] == THEME_FAVICON:
            config.theme["favicon"] = FAVICON
        config.extra_css[:0] = list_stylesheets()
        config.extra_javascript.append(_as_module(SCRIPT))
        if not self.serving:
            self._build_aside(config)
        return config

    def _build_aside(self, config: MkDocsConfig) -> None:
        try:
            self.site = SiteInTheMaking.begin(Path(config.site_dir))
        except ProblemsFound as found:
            stop_at(found.problems)
        else:
            config.site_dir = str(self.site.new)

    def on_files(self, files: Files, config: MkDocsConfig) -> Files:
        """Add a page for each recipe, the book's own pages, and the files they need.

        The book's own larder is taken out, should it lie among the pages: prices stand in it. Of a
        book that could not be opened no page is made.
        """
        if self.first_faults:
            return Files([])
        for file in tuple(files):
            if file.abs_src_path and Path(file.abs_src_path) == self.library.book.larder_file:
                files.remove(file)
        stop_at(tuple(publish_pictures(files, config, self.library)))
        self.alone = is_ours_alone(config)
        self.late.waiting.clear()
        for leaf in self.leaves.values():
            if files.get_file_from_path(leaf.src_uri) is None:
                place = InclusionLevel.INCLUDED if leaf.in_nav else InclusionLevel.NOT_IN_NAV
                files.append(File.generated(config, leaf.src_uri, content="", inclusion=place))
        for made in chain(list_files(self.library), list_card_files(self.library)):
            if made.path is None:
                self._is_ours(made.text)
            files.append(file_of(made, config, self.aside if self.alone else None))
        if self.serving and self.alone:
            self.as_they_were.begin(config, files)
        return files

    def on_env(self, env: Environment, config: MkDocsConfig, files: Files) -> Environment:
        """Take the theme's templates as they were compiled for the build before this one."""
        keep_compiled(env)
        self.frames.begin(env)
        return env

    def on_pre_page(self, page: Page, config: MkDocsConfig, files: Files) -> Page:
        """Let a page that is made of no file be read as what it is: nothing."""
        if page.file.src_uri in self.leaves:
            self.late.read_when_empty(page)
        return page

    def on_page_markdown(
        self, markdown: str, page: Page, config: MkDocsConfig, files: Files
    ) -> str:
        """Give a page that the book makes its title and the facts that stand in its head."""
        leaf = self.leaves.get(page.file.src_uri)
        if leaf is not None:
            facts = leaf.head(self.library, page.canonical_url or "")
            page.meta = {**facts, **page.meta}
        # Material writes these into the head and the search as HTML
        shown = {name: str(escape(page.meta[name])) for name in HEAD_FACTS if name in page.meta}
        page.meta = {**page.meta, **shown}
        return markdown

    def on_page_content(self, html: str, page: Page, config: MkDocsConfig, files: Files) -> str:
        """Write the body of a page that the book makes around the prose its file may hold."""
        faults = tuple(find_page_faults(html, page.file))
        if faults and self.site_is_passing and not self.was_served:
            self.first_faults += tuple(str(one) for one in faults)
            html = ""  # what may not be shown is not served either
        else:
            stop_at(faults)
        html = drop_comments(html)
        leaf = self.leaves.get(page.file.src_uri)
        if leaf is None:
            return html

        def link(uri: str) -> str:
            found = files.get_file_from_path(uri)
            return get_relative_url(found.url if found else uri, page.url)

        page.toc = TableOfContents([AnchorLink(str(page.title), "leaf", 1)])

        def body() -> str:
            return leaf.body(self.library, html, link, page.canonical_url or "")

        if not self.alone:
            return body()
        self.late.waiting[page.file.src_uri] = body
        if isinstance(leaf, WorkedLeaf):
            if self.serving:
                self.as_they_were.watch(page, leaf.worked.body)
            else:
                self.frames.ask_for(page, leaf.head(self.library, ""), config)
        return ""

    @event_priority(100)  # before the search takes them
    def _before_search(
        self, context: TemplateContext, page: Page, config: MkDocsConfig, nav: Navigation
    ) -> TemplateContext:
        """Give a page that is named by its first heading that title as plain words."""
        page.meta.setdefault("title", str(show_plain(page.title)))
        as_it_was = self.as_they_were.of(page) if self.serving else None
        page.content = "" if as_it_was else self.late.body_of(page)
        index = index_of(config)
        self.search_said = page.meta.get("search")
        leaf = self.leaves.get(page.file.src_uri)
        unsought = bool((self.search_said or {}).get("exclude"))
        if leaf is not None and index is not None and not unsought:
            if isinstance(leaf, WorkedLeaf) and not self.search_said and "tags" not in page.meta:
                index_words(index, page, leaf.worked.found_words())
            else:
                index_page(index, page, searched_part(page.content or ""))
            pass_over_search(page)
        asked = scripts_of_page(page.content or "")
        if leaf is not None and index is not None and self.alone:
            self.without_marks, page.content = without_marks(page.content or ""), ""
        context = {**context, "scripts_asked": [f"{FOLDER}/{name}" for name in asked]}  # type: ignore[typeddict-unknown-key]
        if as_it_was is None:
            whole = self.frames.fill(page, context, self.without_marks or page.content or "")
            if whole is not None:
                as_it_was, page.content, self.without_marks = whole, "", None
        return {**context, "as_it_was": as_it_was}  # type: ignore[typeddict-unknown-key]

    @event_priority(-100)  # when the search has passed
    def _after_search(
        self, context: TemplateContext, page: Page, config: MkDocsConfig, nav: Navigation
    ) -> TemplateContext:
        read_again(page, self.search_said)
        if self.without_marks is not None:
            page.content, self.without_marks = self.without_marks, None
        return context

    on_page_context = CombinedEvent(_before_search, _after_search)

    def on_post_page(self, output: str, page: Page, config: MkDocsConfig) -> str:
        """Take from the theme's two switches an attribute that HTML gives to no checkbox."""
        output = without_autocomplete(output)
        leaf = self.leaves.get(page.file.src_uri)
        if leaf is not None:
            self._is_ours(lambda: output, of_recipe=page.file.src_uri.startswith("r/"))
            if self.alone:
                self._is_written(page, leaf, output)
        return output

    def _is_written(self, page: Page, leaf: Leaf, output: str) -> None:
        """Let go of what a page was made of: nobody asks for it again but who serves it."""
        page.content = ""
        if self.serving:
            self.as_they_were.keep(page, output)
            link_page(output, self.aside, page)
            return
        forget_sections()
        if isinstance(leaf, WorkedLeaf):
            leaf.worked.let_go()
            page.meta.pop("structured_data")

    def _is_ours(self, content: Callable[[], str], *, of_recipe: bool = False) -> None:
        """Pass over a file that this build made, where the whole site is looked through after."""
        if self.seeker is not None and self.site is not None and (text := content()):
            pass_over_made(text, self.seeker, of_recipe=of_recipe)

    def on_post_template(self, output: str, template_name: str, config: MkDocsConfig) -> str:
        """Do so for the leaf of a missing page too."""
        return without_autocomplete(output)

    @event_priority(-100)  # after all that others write
    def on_post_build(self, config: MkDocsConfig) -> None:
        """Put the whole new site in the old one's place, unless the build is to be refused."""
        if self.site is None:
            return
        config.site_dir = str(self.site.place)
        if config.strict and any(warnings_counted()):
            self.site.give_up()
            return
        # the same addresses once more, stamped with the day of the build: hosts pack what they send
        Path(self.site.new, "sitemap.xml.gz").unlink(missing_ok=True)
        if self.seeker is not None:
            made = Path(self.site.new, SEARCH_INDEX)
            if made.is_file() and index_of(config) is not None:  # of pages looked through
                pass_over_shape(made.read_bytes(), self.seeker)
            stop_at(find_private_in_site(self.site.new, self.seeker))
            for said in (*self.seeker.take_sealed(), *self.seeker.take_doubts()):
                log.info(said)
        if unpublished := tuple(find_unpublished(self.library, Path(self.site.new))):
            stop_at(unpublished)
        try:
            self.site.finish()
        except ProblemsFound as found:
            stop_at(found.problems)
        if self.seeker is not None:
            keep(self.seeker, self.library.book)

    def on_build_error(self, error: Exception) -> None:
        """Leave the old site as it is, and say in words what the disk would not take."""
        if self.site is not None:
            self.site.give_up()
            stop_at_error(error, self.site.place)

    def on_serve(self, server: Any, config: MkDocsConfig, builder: object) -> None:
        """Build again when a recipe, a design or the larder changes; show what is wrong there."""
        settings = Path(config.config_file_path or "mkdocs.yml")
        self.was_served = True
        allow_reload(server)
        site, check = Path(config.site_dir), partial(check_settings, settings)
        server.builder = ServedFaults(server.builder, site, self.dirty, check)
        self.aside = None if self.dirty else server.builder.good
        if self.first_faults:
            server.builder.begin_with(self.first_faults)
        book = self.library.book if hasattr(self, "library") else None
        for place in list_watched(settings, book):
            server.watch(str(place))


def _as_module(path: str) -> ExtraScriptValue:
    script = ExtraScriptValue(path)
    script.type = "module"
    return script
