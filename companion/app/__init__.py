"""The application: one turn, the sweep of due work, and the bot running on a channel."""
