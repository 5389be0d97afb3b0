"""Clock, settings, logs and private files. Imports no other room."""
