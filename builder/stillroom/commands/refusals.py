"""What is said of a command that was typed wrongly: in plain words, with what to type instead.

The words of the library that reads the command line are put into the house's own. Leaves out what a
command itself refuses.
"""

from __future__ import annotations

import re
from typing import Any, Final

import click
from click.exceptions import BadOptionUsage, MissingParameter, NoSuchOption

from stillroom.core.words.nearest import nearest

_FOR: Final = {
    "file": 'Name the file of a recipe: "recipes/plum-gin.md".',
    "files": 'Name one file or several: "grandmother.txt".',
    "title": 'Say what it is called, in quotes: "Plum gin".',
    "folder": 'Name a folder for it: "my-book".',
    "giving_list": 'Name the giving list: "giving/christmas.yml".',
    "what": "Say what happened: begun, bottled, failed, bought, given or thanked.",
    "name": 'Say to what or whom: "quince ratafia", or the household.',
    "out": 'Say where it goes: --out "giving/christmas-2028.yml".',
}
"""What to type for what was left out, by the argument's name or the option's."""
_NO_COMMAND: Final = re.compile(r"No such command ['\"](.*)['\"]\.?$")


class PlainGroup(click.Group):
    """A group of commands whose refusals say what to type instead."""

    def invoke(self, ctx: click.Context) -> Any:
        """Run the command that was typed."""
        try:
            return super().invoke(ctx)
        except click.UsageError as wrong:
            raise in_plain_words(wrong, self, ctx) from None


def in_plain_words(
    wrong: click.UsageError, group: click.Group, ctx: click.Context
) -> click.UsageError:
    """Return a refusal of a group's command in plain words; one that is plain already as it is."""
    typed = group.get_command(ctx, ctx.invoked_subcommand or "")
    within = click.Context(typed, ctx, ctx.invoked_subcommand) if typed else ctx
    wrong.ctx = wrong.ctx or within
    words = _words(wrong)
    return click.UsageError(words, wrong.ctx) if words else wrong


def _words(wrong: click.UsageError) -> str:
    if found := _NO_COMMAND.match(wrong.message):
        return _no_command(found[1], wrong.ctx)
    if isinstance(wrong, MissingParameter) and wrong.param is not None:
        return _lacking(wrong.param)
    if isinstance(wrong, NoSuchOption):
        return _no_option(wrong)
    if isinstance(wrong, BadOptionUsage):
        return _bare_option(wrong)
    if isinstance(wrong, click.BadParameter):
        return f"{_asked_by(wrong)}{_plain(wrong.message)}"
    if found := re.match(r"Got unexpected extra arguments? \((.*)\)$", wrong.message):
        return _too_many(found[1])
    return ""


def _no_command(name: str, ctx: click.Context | None) -> str:
    group = ctx.command if ctx else None
    known = group.list_commands(ctx) if ctx and isinstance(group, click.Group) else []
    near = nearest(name, known)
    mend = f'Did you mean "{near}"?' if near else f"There are {', '.join(known)}."
    return f'"{name}" is not a command. {mend}'


def _asked_by(wrong: click.BadParameter) -> str:
    """Return what stands before a message about a value: the option that it was typed behind."""
    if isinstance(wrong.param, click.Option):
        return f"{max(wrong.param.opts, key=len)}: "
    hint = str(wrong.param_hint or "").strip('"')
    return f"{hint}: " if hint else ""


def _plain(message: str) -> str:
    """Return a message about a value without what only programs write.

    >>> _plain("'sqft' is not one of 'metric', 'us'.")
    '"sqft" is none of these: "metric", "us".'
    """
    found = re.match(r"('.*') is not (?:one of )?('.*')\.$", message)
    if found:
        message = f"{found[1]} is none of these: {found[2]}."
    return message.replace("'", '"') if found else message


def _lacking(param: click.Parameter) -> str:
    name = str(param.name)
    if isinstance(param, click.Option):
        return f"{max(param.opts, key=len)} is asked for. {_FOR.get(name, '')}".rstrip()
    return f"Something is missing. {_FOR[name]}"


def _no_option(wrong: NoSuchOption) -> str:
    known = _options(wrong.ctx)
    near = nearest(wrong.option_name, known)
    mend = f'Did you mean "{near}"?' if near else f"There are {', '.join(known)}."
    return f'"{wrong.option_name}" is no option here. {mend}'


def _options(ctx: click.Context | None) -> list[str]:
    params = ctx.command.get_params(ctx) if ctx else []
    own = (one for one in params if isinstance(one, click.Option) and not one.hidden)
    return [max(one.opts, key=len) for one in own]


def _bare_option(wrong: BadOptionUsage) -> str:
    """Say what goes behind an option that stands alone, or that nothing does."""
    params = wrong.ctx.command.get_params(wrong.ctx) if wrong.ctx else []
    option = next((one for one in params if wrong.option_name in one.opts), None)
    if not isinstance(option, click.Option) or option.is_flag:
        return f'Nothing goes behind "{wrong.option_name}".'
    return f'Something goes behind "{wrong.option_name}": {option.help or ""}'.rstrip()


def _too_many(words: str) -> str:
    return f'"{words}" is too much. What is several words goes in quotes: "Plum gin".'
