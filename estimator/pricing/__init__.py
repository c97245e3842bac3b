"""What to buy and what it costs: packs, cable, hours and the price forms."""
