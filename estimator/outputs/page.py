"""One HTML file that needs nothing else: style and script inside, and nothing may be fetched."""

from __future__ import annotations

from base64 import b64encode
from hashlib import sha256
from importlib.resources import files

from estimator.outputs.markup import safe
from estimator.outputs.own_page import UNMARKED, marked


def whole_page(
    title: str,
    body: str,
    styles: tuple[str, ...],
    scripts: tuple[str, ...],
    *,
    lang: str = "en",
) -> str:
    """Put a page together.

    The title is made safe here; in the body whatever a user typed is safe already. Styles and
    scripts are names of files in `pages`, put inside in this order. `lang` is the code of the
    language that the page is told in.
    """
    style = "\n".join(_piece(name) for name in styles)
    script = "\n".join(_piece(name) for name in scripts)
    lines = [
        "<!DOCTYPE html>",
        f'<html lang="{safe(lang)}">',
        "<head>",
        '<meta charset="utf-8">',
        f'<meta http-equiv="Content-Security-Policy" content="{_policy(style, script)}">',
        '<meta name="viewport" content="width=device-width, initial-scale=1">',
        '<meta name="referrer" content="no-referrer">',
        '<meta name="robots" content="noindex">',
        '<meta name="format-detection" content="telephone=no">',
        UNMARKED,
        f"<title>{safe(title)}</title>",
        f"<style>{style}</style>",
        "</head>",
        "<body>",
        body,
        *([f"<script>{script}</script>"] if script else []),
        "</body>",
        "</html>",
        "",
    ]
    return marked("\n".join(lines))


def _piece(name: str) -> str:
    return files("estimator.outputs").joinpath("pages", name).read_text(encoding="utf-8")


def _policy(style: str, script: str) -> str:
    """Allow this very style and this very script, and no request to anywhere."""
    parts = ["default-src 'none'", f"style-src '{_fingerprint(style)}'"]
    if script:
        parts.append(f"script-src '{_fingerprint(script)}'")
    return "; ".join([*parts, "base-uri 'none'", "form-action 'none'"])


def _fingerprint(text: str) -> str:
    return f"sha256-{b64encode(sha256(text.encode()).digest()).decode()}"
