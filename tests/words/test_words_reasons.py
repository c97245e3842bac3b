"""Why these packs and this cable: every reason is told, whatever is on offer."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from decimal import Decimal
from fractions import Fraction
from functools import cache
from random import Random

from estimator.pricing.coils import ByLength, Coil, NoPieceLongEnough, Remnant, choose_cable
from estimator.pricing.packs import PackOffer, choose_packs
from tests.words.marked import CLOSE, OPEN, Marked, bare

SEED = 5_512
BASKETS = 600
SHOPS = ("North", "South")


def baskets() -> Iterator[str]:
    """Reasons for packs: few sizes and prices, so that many purchases cost the same."""
    rng = Random(SEED)
    for _ in range(BASKETS):
        shops = SHOPS[: rng.randrange(1, 3)]
        offers = [
            PackOffer(f"o{at}", rng.choice(shops), Decimal(rng.randrange(1, 6)),
                      Decimal(rng.randrange(1, 6)))
            for at in range(rng.randrange(1, 4))
        ]  # fmt: skip
        yield choose_packs(Decimal(rng.randrange(12)), offers).why


def cables() -> Iterator[str]:
    """Reasons for cable: coils, reels and remnants by chance, some of them enough for all."""
    rng = Random(SEED)
    for _ in range(BASKETS):
        shops = SHOPS[: rng.randrange(1, 3)]
        cuts = [Fraction(rng.randrange(1, 8)) for _ in range(rng.choice([0, 1, 2, 3, 24]))]
        coils = [
            Coil(f"c{at}", rng.choice(shops), Fraction(rng.randrange(4, 20)),
                 Decimal(rng.randrange(1, 5)))
            for at in range(rng.randrange(3))
        ]  # fmt: skip
        reels = [ByLength("r", rng.choice(shops), Fraction(rng.randrange(1, 4)), Decimal(1))]
        left = [Remnant(f"#{at}", Fraction(rng.randrange(1, 20))) for at in range(rng.randrange(3))]
        order, used = sum(cuts, Fraction(rng.randrange(3))), reels[: rng.randrange(2) or not coils]
        with suppress(NoPieceLongEnough):
            yield choose_cable(cuts, order, coils, used, left, show=lambda each: f"{each} 1").why


@cache
def reasons() -> tuple[str, ...]:
    return (*baskets(), *cables())


def test_every_reason_is_told() -> None:
    left = {bare(Marked().say(why), SHOPS) for why in reasons()}
    assert left == {""}


def test_a_reason_without_its_marks_is_the_english_one() -> None:
    told = [Marked().say(why).replace(OPEN, "").replace(CLOSE, "") for why in reasons()]
    assert told == list(reasons())


def test_the_reasons_are_of_every_kind() -> None:
    """Otherwise the two tests above would not see all sentences."""
    language = Marked()
    for why in reasons():
        language.say(why)
    asked = {english for english, _ in language.asked_sentences}
    assert asked >= {
        "nothing needed",
        "the only pack on file",
        "{packs} costs less than {instead} ({price})",
        "{packs} cost {cost}, less than {instead} ({price})",
        "{packs} costs the same as {instead} ({price}), {reason}",
        "{packs} cost {cost} the same as {instead} ({price}), {reason}",
        "in fewer packs",
        "in fewer pieces",
        "with less left over",
        "and stands first on the list",
        "remnant {names} holds every cut",
        "remnant {names} holds every cut, so nothing is bought",
        "remnant {names} holds {held} of {cuts} cuts",
        "to make up the order, {reason}",
        "{cable}: the only cable on file",
        "{cable}: no other offer does alone",
        "all new cable: {cable}",
        "{cable} costs the same as {instead} ({price}), {reason}",
        "{cable} costs less than {instead} ({price})",
        "{cable} costs {cost}, less than {instead} ({price})",
        "{cable} at {price} per {step}",
        "so many cuts are placed by rules of thumb: a cheaper way may exist",
    }
