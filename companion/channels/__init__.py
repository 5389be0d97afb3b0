"""Channels people write on: Telegram, the terminal and scripts, and the drainer that empties the outbox to them."""
