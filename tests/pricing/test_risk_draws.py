"""Draws by chance against closed forms, the published table, and numpy's own correlation."""

from __future__ import annotations

from decimal import Decimal

import numpy as np
import pytest

from estimator.pricing.risk_draws import Draws, dealer, rising, together, triangle
from estimator.pricing.risk_moments import added, moments
from estimator.settings_risk import Shape
from tests.pricing.test_risk_moments import GAO, ranged

DRAWS = 100_000
NONE = Decimal(0)
SHAPES = pytest.mark.parametrize("shape", ["triangular", "pert"])


def gao(shape: Shape = "triangular", correlation: str = "0", seed: int = 1) -> Draws:
    figures: Draws = together(dealer(seed), GAO, shape, Decimal(correlation), DRAWS).figures.sum(
        axis=0
    )
    return figures


# P8: 400,000 independent triangles gave P50 about 81,600, P80 about 86,430 and a chance of the
# likely sum of about 12.5 %; G10 bounds P80 at 86,300 and 86,550.
@pytest.mark.parametrize("seed", [1, 2, 3])
def test_g10_gao_table_12_drawn(seed: int) -> None:
    total = gao(seed=seed)
    assert total.size >= DRAWS
    assert np.quantile(total, 0.5) == pytest.approx(81_600, abs=100)
    assert 86_300 <= np.quantile(total, 0.8) <= 86_550
    assert np.mean(total <= 77_092) == pytest.approx(0.125, abs=0.004)


# Four standard errors: of the mean sd / sqrt(n), of the sd about sd / sqrt(2 n).
@SHAPES
def test_draws_agree_with_the_closed_form(shape: Shape) -> None:
    total, known = gao(shape), added([moments(each, shape) for each in GAO])
    sd = float(known.sd)
    assert total.mean() == pytest.approx(float(known.mean), abs=4 * sd / DRAWS**0.5)
    assert total.std() == pytest.approx(sd, abs=4 * sd / (2 * DRAWS) ** 0.5)


@SHAPES
@pytest.mark.parametrize("text", ["0 0 6", "0 6 6", "1 2 6", "0.25 0.5 0.75"])
def test_one_range_has_the_mean_spread_and_ends_of_its_closed_form(text: str, shape: Shape) -> None:
    each = ranged(text)
    drawn, known = rising(dealer(5), each, shape, DRAWS), moments(each, shape)
    sd = float(known.sd)
    assert drawn.mean() == pytest.approx(float(known.mean), abs=4 * sd / DRAWS**0.5)
    assert drawn.std() == pytest.approx(sd, abs=4 * sd / (2 * DRAWS) ** 0.5)
    assert float(each.low) <= drawn[0] <= drawn[-1] <= float(each.high)
    assert (np.diff(drawn) >= 0).all()


# By hand for 0, 3, 6: a quarter below 3/sqrt(2), half below 3; for 0, 1, 4: a quarter below 1.
@pytest.mark.parametrize(
    ("ends", "chance", "want"),
    [((0, 3, 6), 0.5, 3.0), ((0, 3, 6), 0.125, 1.5), ((0, 3, 6), 0.875, 4.5),
     ((0, 1, 4), 0.25, 1.0), ((2, 2, 6), 0.75, 4.0), ((0, 1, 4), 0.0, 0.0)],
)  # fmt: skip
def test_a_triangle_read_at_a_chance(
    ends: tuple[float, float, float], chance: float, want: float
) -> None:
    assert triangle(np.array([chance]), ends)[0] == pytest.approx(want, abs=1e-12)


# Normal scores with correlation r have the rank correlation 6/pi x asin(r/2) (Pearson, 1907).
@pytest.mark.parametrize("correlation", ["0", "25", "60", "95"])
def test_any_two_ranges_have_the_correlation_asked_for(correlation: str) -> None:
    drawn = together(dealer(3), GAO, "triangular", Decimal(correlation), DRAWS)
    found = np.corrcoef(drawn.ranks)[np.triu_indices(len(GAO), 1)]
    want = 6 / np.pi * np.arcsin(float(correlation) / 200)
    assert found == pytest.approx(np.full(21, want), abs=0.006)


@pytest.mark.parametrize("correlation", ["25", "50", "80"])
def test_correlation_widens_the_spread_as_the_closed_form_says(correlation: str) -> None:
    """Within 1 %: skewed triangles keep a little less product-moment correlation than normals."""
    known = added([moments(each, "triangular") for each in GAO], Decimal(correlation))
    spread = gao(correlation=correlation).std()
    assert spread == pytest.approx(float(known.sd), rel=0.01)
    assert spread > 1.05 * gao().std()


def test_ranks_and_figures_stand_in_the_same_places() -> None:
    drawn = together(dealer(3), GAO[:3], "triangular", Decimal(30), 5_000)
    for figures, ranks in zip(drawn.figures, drawn.ranks, strict=True):
        assert (np.argsort(np.argsort(figures)) == ranks).all()


def test_the_same_seed_deals_the_same_and_another_does_not() -> None:
    assert (gao(seed=4) == gao(seed=4)).all()
    assert (gao(seed=4) != gao(seed=5)).any()


def test_a_range_without_width_is_always_the_same() -> None:
    drawn = together(dealer(1), [ranged("2 2 2"), ranged("1 2 3")], "triangular", NONE, 1_000)
    assert set(drawn.figures[0]) == {2.0}


def test_no_range_is_no_row() -> None:
    assert together(dealer(1), [], "triangular", NONE, 1_000).figures.shape == (0, 1_000)
