"""Every conversation of the companion, one a file, and their catalogue."""
