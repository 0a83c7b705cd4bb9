"""The build order: which rail comes before which, and how each is faced, so that the routes are served."""
