"""One invented recipe as the programs of a kitchen's computer save it."""

from __future__ import annotations

import io
import zipfile
from xml.sax.saxutils import escape

TITLE = "Damson cheese"
LISTED = ("1 kg damsons", "about 700 g granulated sugar", "1 tsp ground allspice")
STEPS = (
    "Cook the damsons with a little water until they fall apart, and rub them through a sieve.",
    "Stir in the sugar and the allspice and cook it until a spoon leaves a clean path.",
    "Fill it into hot, clean jars and close them.",
)
TEXT = f"""{TITLE}

Makes 4 jars of 200 ml

Ingredients
{chr(10).join(LISTED)}

Method
{chr(10).join(f"{number}. {step}" for number, step in enumerate(STEPS, 1))}
"""
MARKDOWN = f"""# {TITLE}

Makes 4 jars of 200 ml

## Ingredients

{chr(10).join(f"- {row}" for row in LISTED)}

## Method

{chr(10).join(f"{number}. {step}" for number, step in enumerate(STEPS, 1))}
"""
PAGE = f"""<!DOCTYPE html><html><head><title>Site | {TITLE}</title><meta charset="utf-8"></head>
<body>
<nav><ul><li>3 cups about us</li></ul></nav><main><h1>{TITLE}</h1><p>Makes 4 jars of 200 ml</p>
<h2>Ingredients</h2><ul>{"".join(f"<li>{row}</li>" for row in LISTED)}</ul>
<h2>Method</h2><ol>{"".join(f"<li>{step}</li>" for step in STEPS)}</ol></main>
<aside><h2>Ingredients</h2><ul><li>2 cups of other things</li><li>1 lb more</li></ul></aside>
</body></html>"""
LETTER = f"""From: Somebody <somebody@home.example>
To: me@home.example
Subject: Fwd: for the baskets
Content-Type: text/plain; charset=utf-8

Dear both,

On Monday, Nan wrote:
{chr(10).join(f"> {row}".rstrip() for row in TEXT.splitlines())}
>
> Love, Nan
> --
> Nan, telephone 555 0100
"""


def packed(parts: dict[str, str]) -> bytes:
    """Return a zip of these parts."""
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_DEFLATED) as file:
        for name, text in parts.items():
            file.writestr(name, text)
    return buffer.getvalue()


def word() -> bytes:
    """Return the recipe as a Word file, with a heading style named in German."""
    w = 'xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main"'

    def paragraph(text: str, style: str = "", number: str = "") -> str:
        listed = f'<w:numPr><w:numId w:val="{number}"/></w:numPr>' if number else ""
        styled = f'<w:pStyle w:val="{style}"/>' if style else ""
        run = f"<w:r><w:t>{escape(text)}</w:t></w:r>"
        return f"<w:p><w:pPr>{styled}{listed}</w:pPr>{run}</w:p>"

    rows = [paragraph(TITLE, "berschrift1"), paragraph("Makes 4 jars of 200 ml")]
    rows += [paragraph("Ingredients", "berschrift2"), *(paragraph(row, "", "1") for row in LISTED)]
    rows += [paragraph("Method", "berschrift2"), *(paragraph(step, "", "2") for step in STEPS)]
    deleted = "<w:p><w:del><w:r><w:delText>gone</w:delText></w:r></w:del></w:p>"
    styles = "".join(
        f'<w:style w:styleId="berschrift{level}"><w:name w:val="heading {level}"/></w:style>'
        for level in (1, 2)
    )
    lists = "".join(
        f'<w:abstractNum w:abstractNumId="{number}"><w:lvl><w:numFmt w:val="{shape}"/></w:lvl>'
        f"</w:abstractNum>"
        for number, shape in (("8", "bullet"), ("9", "decimal"))
    )
    links = "".join(
        f'<w:num w:numId="{number}"><w:abstractNumId w:val="{to}"/></w:num>'
        for number, to in (("1", "8"), ("2", "9"))
    )
    return packed(
        {
            "word/document.xml": f"<w:document {w}><w:body>{''.join(rows)}{deleted}</w:body>"
            "</w:document>",
            "word/styles.xml": f"<w:styles {w}>{styles}</w:styles>",
            "word/numbering.xml": f"<w:numbering {w}>{lists}{links}</w:numbering>",
        }
    )


def open_document() -> bytes:
    """Return the recipe as an OpenDocument text."""
    spaces = " ".join(
        f'xmlns:{name}="urn:oasis:names:tc:opendocument:xmlns:{name}:1.0"'
        for name in ("office", "text", "table")
    )
    listed = "".join(
        f"<text:list-item><text:p>{escape(row)}</text:p></text:list-item>" for row in LISTED
    )
    steps = "".join(f"<text:p>{n}. {escape(step)}</text:p>" for n, step in enumerate(STEPS, 1))
    body = (
        f'<text:h text:outline-level="1">{TITLE}</text:h><text:p>Makes 4 jars of<text:s/>200 ml'
        f'</text:p><text:h text:outline-level="2">Ingredients</text:h><text:list>{listed}'
        f'</text:list><text:h text:outline-level="2">Method</text:h>{steps}'
    )
    text = f"<office:body><office:text>{body}</office:text></office:body>"
    return packed({"content.xml": f"<office:document {spaces}>{text}</office:document>"})
