"""Times as ratios, measured in one run each; not part of a push: ``-m slow`` runs them."""
