"""What the script of the shopping list page says, handed to it with the page.

The script fills the places in these sentences, so each place holds itself in braces here.
"""

from __future__ import annotations

import json
from typing import Final

from estimator.language import Language
from estimator.ledger.list_columns import COLUMNS, NO, YES
from estimator.saying import said, several

_ONE, _SEVERAL = 1, 2
_WORDS: Final = {
    "notKept": said(
        "This view cannot remember ticks and prices. Copy what was paid before you close it."
    ),
    "noAmount": said("This is not an amount. Write it like {example}.", example="{example}"),
    "twoWays": said("This can be read in two ways. Write it like {example}.", example="{example}"),
    "noQuantity": said("This is not how many were bought. Write a number above zero."),
    "otherQuantity": said(
        "{what} (bought: {quantity} {unit})", what="{what}", quantity="{quantity}", unit="{unit}"
    ),
    "tooMuch": said("This is too much."),
    "sum": said(
        "Got {got} of {all}. Paid {paid} of about {cost}.",
        got="{got}", all="{all}", paid="{paid}", cost="{cost}",
    ),
    "noPrice": said("No price has been typed yet."),
    "anotherShop": said("Receipt of another shop"),
    "receipt": said("Receipt of {shop}", shop="{shop}"),
    "shop": said("Shop"),
    "number": said("Number on the receipt"),
    "date": said("Date on it"),
    "tax": said("Tax on it"),
    "writeShop": said("write the shop here"),
    "writeNumber": said("write the number here"),
    "putEstimate": said('Put the name of the job file here: estimate = "my-job.toml"'),
    "copied": said("Copied."),
    "held": said("Things in the text: {count}.", count="{count}"),
    "nothing": said("Nothing to copy or save yet: no price has been typed."),
    "unpriced": said("Ticked without a price, left out: {count}.", count="{count}"),
    "unread": said("Typed, but cannot be read, left out: {count}.", count="{count}"),
    "notCopied": said("Not copied. The text is marked: copy it by hand."),
    "file": said("paid-{job}", job="{job}"),
    "saved": said("Saved as {file}.", file="{file}"),
    "forget": said("Forget all ticks and prices of this list?"),
    "forgotten": said("Ticks and prices are forgotten."),
    "yes": YES,
    "no": NO,
}  # fmt: skip


def script_words(language: Language) -> str:
    """Give the words as JSON that may stand in markup; sentences keep their places in braces.

    A sentence that goes by a count has one form for a single thing and one for several.
    """
    words: dict[str, object] = {name: language.say(saying) for name, saying in _WORDS.items()}
    words["columns"] = [language.say(column) for column in COLUMNS]
    words["one"], words["several"] = _against(language, _ONE), _against(language, _SEVERAL)
    return json.dumps(words, ensure_ascii=False, indent=0).replace("<", "\\u003c")


def _against(language: Language, count: int) -> dict[str, str]:
    """What was paid beside what was expected, for one thing or for several."""
    as_expected = several(
        count,
        "For {count} thing with a price typed: expected {cost}, paid {paid}, as expected.",
        "For {count} things with a price typed: expected {cost}, paid {paid}, as expected.",
        count="{count}", cost="{cost}", paid="{paid}",
    )  # fmt: skip
    more = several(
        count,
        "For {count} thing with a price typed: expected {cost}, paid {paid}, {more} more.",
        "For {count} things with a price typed: expected {cost}, paid {paid}, {more} more.",
        count="{count}", cost="{cost}", paid="{paid}", more="{more}",
    )  # fmt: skip
    less = several(
        count,
        "For {count} thing with a price typed: expected {cost}, paid {paid}, {less} less.",
        "For {count} things with a price typed: expected {cost}, paid {paid}, {less} less.",
        count="{count}", cost="{cost}", paid="{paid}", less="{less}",
    )  # fmt: skip
    told = {"expected": as_expected, "more": more, "less": less}
    return {name: language.say(saying) for name, saying in told.items()}
