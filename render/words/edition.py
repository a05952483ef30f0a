"""What a pattern says of itself as a publication: which edition it is, whose work, and what has changed since the first."""

from __future__ import annotations

from datetime import date

from motifold.render.pattern.model import Edition
from motifold.render.words.model import Items, Paragraph, Section
from motifold.render.words.voice import NBSP, Voice, capitalised

_MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December",
)  # fmt: skip


def edition_words(edition: Edition, voice: Voice) -> str:
    """"1.2, 1 March 2026"; "" where the pattern says neither."""
    return ", ".join(part for part in (edition.version or "", dated(edition.date, voice) if edition.date else "") if part)


def dated(iso: str, voice: Voice) -> str:
    """"1 March 2026"; in US terms "March 1, 2026"."""
    day = date.fromisoformat(iso)
    month = _MONTHS[day.month - 1]
    return f"{month}{NBSP}{day.day}, {day.year}" if voice.terms == "US" else f"{day.day}{NBSP}{month} {day.year}"


def changes_section(edition: Edition, voice: Voice) -> Section | None:
    """What each edition changed, the newest first."""
    if not edition.changes:
        return None
    told = [(version, note) for version, notes in reversed(edition.changes) for note in notes]
    items = [f"Version{NBSP}{version}: {capitalised(_sentence(voice.said(note)))}" for version, note in told]
    return Section("changes", "What has changed", (Items(tuple(items)),))


def edition_section(edition: Edition, voice: Voice) -> Section | None:
    """Edition, rights and address, at the very end."""
    said = edition_words(edition, voice)
    numbered = f"Version{NBSP}{said}" if edition.version else said
    lines = [numbered, edition.copyright or "", edition.licence or ""]
    blocks = [Paragraph(_sentence(line)) for line in lines if line]
    if edition.web:
        blocks.append(Paragraph(edition.web, "address"))
    return Section("edition", "This edition", tuple(blocks)) if blocks else None


def _sentence(words: str) -> str:
    return words if words.endswith((".", "!", "?")) else f"{words}."
