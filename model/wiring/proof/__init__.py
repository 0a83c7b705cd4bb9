"""The proof of a wired plan: it is run dry, train after train."""
