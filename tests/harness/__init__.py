"""What the proofs of reliability have in common: each module is one way of treating the program badly."""
