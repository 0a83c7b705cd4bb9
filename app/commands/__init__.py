"""What the actions of the table do, by area; the window binds them."""
