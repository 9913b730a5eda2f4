"""While a book is served: its pages load themselves again, by the script that MkDocs puts in them.

A page's policy lets no script run that stands in the page itself. Here, and in no build, it allows
the one that MkDocs adds as it answers, by that script's sum.
"""

from __future__ import annotations

import base64
import hashlib
from typing import Any, Final

_OWN: Final = b"script-src 'self'"
_BEGIN: Final = b"<script>"
_END: Final = b"</script>"


def allow_reload(server: Any) -> None:
    """Let each page that a server of MkDocs answers with run the script that loads it again."""
    with_script = server._inject_js_into_html

    def answer(content: bytes, epoch: int) -> bytes:
        page: bytes = with_script(content, epoch)
        begin = page.rindex(_BEGIN) + len(_BEGIN)
        script = page[begin : page.index(_END, begin)]
        known_by = base64.b64encode(hashlib.sha256(script).digest())
        return page.replace(_OWN, b"%b 'sha256-%b'" % (_OWN, known_by), 1)

    server._inject_js_into_html = answer
