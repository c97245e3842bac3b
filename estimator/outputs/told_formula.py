"""Sentences in formulas: told in the customer's language, with cells in their places."""

from __future__ import annotations

from collections.abc import Mapping
from string import Formatter

from estimator.language import Language
from estimator.outputs.price_step import text
from estimator.saying import Said


def sentence_formula(language: Language, sentence: Said, pieces: Mapping[str, str]) -> str:
    """Join a sentence from its words and formulas, such as `"up to "&ROUND(rate*100,4)&" %"`.

    Args:
        language: what it is told in.
        sentence: its places that are not in `pieces` are filled with what it was said with.
        pieces: formulas by the name of their place.
    """
    pattern = language.sentence(sentence.english, sentence.plural, sentence.counted)
    parts: list[str] = []
    for words, place, _, _ in Formatter().parse(pattern):
        if words:
            parts.append(text(words))
        if place is not None:
            told = language.say(sentence.values[place])
            parts.append(pieces[place] if place in pieces else text(told))
    return "&".join(parts)
