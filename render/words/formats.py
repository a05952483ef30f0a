"""A Document as plain text, as Markdown, as a fragment of HTML."""

from __future__ import annotations

from html import escape

from motifold.render.words.model import Block, Document, Items, Paragraph, RoundText, Section, Table


def to_text(document: Document) -> str:
    """Plain text. A motif's section reads back: pasted whole into a pattern file it makes the same piece, what is no line a comment."""
    parts = [document.title, "=" * len(document.title)]
    for section in document.sections:
        parts += ["", section.title, "-" * len(section.title), *_text_blocks(section)]
    return "\n".join(parts) + "\n"


def _text_blocks(section: Section) -> list[str]:
    lines: list[str] = []
    for index, block in enumerate(section.blocks):
        if index and not (isinstance(block, RoundText) and isinstance(section.blocks[index - 1], RoundText)):
            lines.append("")
        told = _text_block(block)
        if section.key in ("motif", "edging") and not isinstance(block, RoundText):
            told = [f"# {line}" for line in told]
        lines += told
    return lines


def _text_block(block: Block) -> list[str]:
    if isinstance(block, Paragraph):
        return [block.text]
    if isinstance(block, Items):
        return [f"{number}. {item}" if block.numbered else f"- {item}" for number, item in enumerate(block.items, 1)]
    if isinstance(block, RoundText):
        return [line_text(block)]
    return [block.caption, *_columns(block)]


def line_text(block: RoundText) -> str:
    """A line as a pattern file takes it."""
    return block.reads or f"{block.label}: {block.text} {block.counts}".rstrip()


def _columns(table: Table) -> list[str]:
    rows = [table.header, *table.rows]
    widths = [max(len(row[i]) for row in rows if i < len(row)) for i in range(len(table.header))]
    return ["  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=False)).rstrip() for row in rows]


def to_markdown(document: Document) -> str:
    """Markdown, with the labels of rounds in bold. Marks of the trade that Markdown would take for its own are escaped."""
    parts = [f"# {_md(document.title)}"]
    for section in document.sections:
        parts += ["", f"## {_md(section.title)}"]
        for block in section.blocks:
            parts += ["", *_md_block(block)]
    return "\n".join(parts) + "\n"


def _md(text: str) -> str:
    for mark in "\\*_[]`<>|#":
        text = text.replace(mark, "\\" + mark)
    return text


def _md_block(block: Block) -> list[str]:
    if isinstance(block, Paragraph):
        if block.kind == "address":
            return [f"<{block.text}>"]
        return [f"> {_md(block.text)}" if block.kind == "caution" else _md(block.text)]
    if isinstance(block, Items):
        return [f"{number}. {_md(item)}" if block.numbered else f"- {_md(item)}" for number, item in enumerate(block.items, 1)]
    if isinstance(block, RoundText):
        label, rest = line_text(block).split(":", 1)
        return [f"**{_md(label)}:**{_md(rest)}"]
    rule = "|".join("---" for _ in block.header)
    rows = [f"| {' | '.join(_md(cell) for cell in row)} |" for row in block.rows]
    return [f"*{_md(block.caption)}*", "", f"| {' | '.join(_md(cell) for cell in block.header)} |", f"|{rule}|", *rows]


def to_html_fragment(document: Document) -> str:
    """HTML sections without a page around them; each round carries the instruction line that it was made from."""
    parts = [f"<h1>{escape(document.title)}</h1>"]
    for section in document.sections:
        name = section.key.replace(" ", "-")
        subject = f' data-subject="{escape(section.subject)}"' if section.subject else ""
        parts.append(f'<section class="{name}"{subject}>')
        parts.append(f"<h2>{escape(section.title)}</h2>")
        parts += [_html_block(block) for block in section.blocks]
        parts.append("</section>")
    return "\n".join(parts) + "\n"


def _html_block(block: Block) -> str:
    if isinstance(block, Paragraph):
        if block.kind == "address":
            return f'<p><a href="{escape(block.text)}">{escape(block.text)}</a></p>'
        kind = "" if block.kind == "body" else f' class="{block.kind}"'
        return f"<p{kind}>{escape(block.text)}</p>"
    if isinstance(block, Items):
        tag = "ol" if block.numbered else "ul"
        return f"<{tag}>{''.join(f'<li>{escape(item)}</li>' for item in block.items)}</{tag}>"
    if isinstance(block, RoundText):
        rounds = "" if block.first is None else f' data-first="{block.first}" data-last="{block.last}"'
        counts = f' <span class="counts">{escape(block.counts)}</span>' if block.counts else ""
        return f'<p class="round" data-line="{block.line}"{rounds}><b>{escape(block.label)}:</b> {escape(block.text)}{counts}</p>'
    head = "".join(f'<th scope="col">{escape(cell)}</th>' for cell in block.header)
    body = "".join(
        f'<tr><th scope="row">{escape(row[0])}</th>{"".join(f"<td>{escape(cell)}</td>" for cell in row[1:])}</tr>' for row in block.rows
    )
    return f"<table><caption>{escape(block.caption)}</caption><thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>"
