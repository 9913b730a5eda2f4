"""Prints pages from WebKit to PDF: run by the system's own Python, which has WebKitGTK's bindings.

Run: python3 webkit_printer.py JOBS, a JSON file of a list of {url, ready, script, printing, out,
margin_mm}. Each page is opened, `script` run once `ready` holds, and printed on A4 once `printing`
does. It uses nothing of Stillroom's.
"""

import json
import sys
from pathlib import Path

PATIENCE_MS = 60_000
ASK_EVERY_MS = 100


class Bindings:
    """WebKitGTK, loaded when it is asked for: whoever collects the tests may not have it."""

    def __init__(self):
        import gi

        gi.require_version("Gtk", "3.0")
        gi.require_version("WebKit2", "4.1")
        from gi.repository import GLib, Gtk, WebKit2

        self.glib, self.gtk, self.webkit = GLib, Gtk, WebKit2


class Printer:
    """One window that takes one job after another."""

    def __init__(self, jobs, bindings):
        self.jobs = list(jobs)
        self.glib, self.gtk, self.webkit = bindings.glib, bindings.gtk, bindings.webkit
        window = self.gtk.OffscreenWindow()
        window.set_default_size(1280, 900)
        self.view = self.webkit.WebView()
        window.add(self.view)
        window.show_all()
        self.view.connect("load-changed", self.loaded)
        self.next()

    def next(self):
        if not self.jobs:
            self.gtk.main_quit()
            return
        self.job = self.jobs.pop(0)
        self.glib.timeout_add(PATIENCE_MS, self.give_up, self.job)
        self.view.load_uri(self.job["url"])

    def give_up(self, job):
        if job is self.job:
            sys.exit(f"not printed within {PATIENCE_MS} ms: {job['out']}")
        return False

    def loaded(self, _view, event):
        if event == self.webkit.LoadEvent.FINISHED:
            self.wait(self.job["ready"], self.choose)

    def wait(self, expression, then):
        def answered(view, result):
            if view.evaluate_javascript_finish(result).to_boolean():
                then()
            else:
                self.glib.timeout_add(ASK_EVERY_MS, ask)

        def ask():
            self.view.evaluate_javascript(expression, -1, None, None, None, answered)
            return False

        ask()

    def choose(self):
        def chosen(view, result):
            view.evaluate_javascript_finish(result)
            self.wait(self.job["printing"], self.print_page)

        self.view.evaluate_javascript(self.job["script"], -1, None, None, None, chosen)

    def print_page(self):
        gtk = self.gtk
        settings, setup = gtk.PrintSettings(), gtk.PageSetup()
        settings.set_printer("Print to File")
        settings.set(gtk.PRINT_SETTINGS_OUTPUT_URI, Path(self.job["out"]).as_uri())
        settings.set(gtk.PRINT_SETTINGS_OUTPUT_FILE_FORMAT, "pdf")
        setup.set_paper_size(gtk.PaperSize.new("iso_a4"))
        for side in ("top", "bottom", "left", "right"):
            getattr(setup, f"set_{side}_margin")(self.job["margin_mm"], gtk.Unit.MM)
        self.operation = self.webkit.PrintOperation.new(self.view)
        self.operation.set_print_settings(settings)
        self.operation.set_page_setup(setup)
        self.operation.connect("failed", lambda _, error: sys.exit(error.message))
        self.operation.connect("finished", lambda _: self.next())
        self.operation.print_()


if __name__ == "__main__":
    loaded = Bindings()
    Printer(json.loads(Path(sys.argv[1]).read_text(encoding="utf-8")), loaded)
    loaded.gtk.main()
