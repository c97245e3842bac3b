"""Trade words of the country: British ones outside North America, and names left alone."""

from __future__ import annotations

import pytest

from estimator.tables.local_words import is_british, local_words


@pytest.mark.parametrize(
    ("country", "locale", "british"),
    [("GB", "en_GB", True), ("IE", "en_IE", True), ("AU", "en-AU", True), ("US", "en_US", False),
     ("CA", "en_CA", False), ("CA", "fr_CA", False), ("FR", "fr_FR", False),
     ("US", "en_GB", False)],
)  # fmt: skip
def test_where_british_words_are_said(country: str, locale: str, british: bool) -> None:
    assert is_british(country, locale) is british


# Right column: how a British electrician says it.
@pytest.mark.parametrize(
    ("american", "british"),
    [
        ("2 cables at a receptacle: 3 pigtails", "2 cables at a socket: 3 fly leads"),
        ("Receptacles and a three-way switch", "Sockets and a two-way switch"),
        ("whether the circuit has a ground", "whether the circuit has an earth"),
        ("Test hot to neutral, hot to ground", "Test line to neutral, line to earth"),
        ("polarity, ground and trip test", "polarity, earth and trip test"),
        ("behind the baseboard", "behind the skirting board"),
        ("look in the panel", "look in the consumer unit"),
        ("wood panels", "wood panels"),
        ("gypsum board", "plasterboard"),
        ("a hot place on the ground floor", "a hot place on the ground floor"),
        ("licensed, license or registration", "licensed, licence or registration"),
        ("in price.labor_rate, labor.csv", "in price.labor_rate, labor.csv"),
    ],
)
def test_each_word(american: str, british: str) -> None:
    assert local_words("GB", "en_GB")(american) == british
    assert local_words("US", "en_US")(american) == american


def test_names_of_the_job_stay_as_typed() -> None:
    say = local_words("GB", "en_GB", ["Ground Works", "receptacle 2", "ground"])
    assert say("a receptacle in Ground Works") == "a socket in Ground Works"
    assert say("box receptacle 2, receptacle 3") == "box receptacle 2, socket 3"
    assert say("ground, grounds") == "ground, earths"
