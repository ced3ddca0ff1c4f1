"""Which photographs are one side, and which two sides one tag."""
