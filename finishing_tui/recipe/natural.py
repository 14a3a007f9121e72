"""The natural ratio of stitches to each kind of spot, from a recipe's or a garment's gauge."""

from collections.abc import Mapping
from fractions import Fraction
from functools import lru_cache
from types import MappingProxyType
from typing import get_args

from finishing_tui.craft.edges import EdgeUnit, natural_ratio
from finishing_tui.craft.figures import rounded
from finishing_tui.craft.gauge import Gauge
from finishing_tui.craft.lengths import length, read_length
from finishing_tui.recipe.model import BandGauge, RecipeGauge


def natural_ratios(gauge: RecipeGauge | None) -> Mapping[str, Fraction]:
    """Return stitches of the band for one row, ridge, chain and stitch of the body; empty where no gauge is known."""
    if gauge is None:
        return MappingProxyType({})
    body, band = _gauge(gauge), _gauge(gauge.band) if gauge.band else None
    units: tuple[EdgeUnit, ...] = get_args(EdgeUnit)
    return MappingProxyType({unit: natural_ratio(unit, body, band) for unit in units})


def band_stitches(gauge: RecipeGauge | None) -> int | None:
    """Return the stitches of the band in 10 cm, to the nearest whole one; None where no gauge is known."""
    if gauge is None:
        return None
    return rounded(_gauge(gauge.band or gauge).stitches_in(length(10, "cm")))


def gauges(gauge: RecipeGauge | None) -> tuple[Gauge | None, Gauge | None]:
    """Return the gauge of the body and that of the band, each None where the recipe or garment gives none."""
    if gauge is None:
        return None, None
    return _gauge(gauge), _gauge(gauge.band) if gauge.band else None


@lru_cache(maxsize=16)  # read from text for every step that begins, and always the same few
def _gauge(gauge: RecipeGauge | BandGauge) -> Gauge:
    return Gauge(Fraction(gauge.stitches), Fraction(gauge.rows), read_length(gauge.over))
