"""What may be wrong with a network, one rule a file; ``model.network.findings`` puts them together."""
