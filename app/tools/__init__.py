"""What the pointer and the keys do on the plan: one tool, one file. No Qt in here."""
