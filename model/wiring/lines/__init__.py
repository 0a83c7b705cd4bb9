"""Lines found in a plan, drawn by hand, wired anew; and what would couple with them."""
