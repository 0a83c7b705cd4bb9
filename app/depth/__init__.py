"""The junction in depth: the isometric view of its levels pulled apart, on screen and on paper."""
