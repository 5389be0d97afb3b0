"""Days and times as people type them."""
