"""The network: stations, junctions, links, trips, and what follows for readers and travellers."""
