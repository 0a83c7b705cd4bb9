"""Rails: the shapes they take, how signals turn them, and how carts run over them."""
