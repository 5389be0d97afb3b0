"""Clock, settings, logs and private files: what every room may rest on."""
