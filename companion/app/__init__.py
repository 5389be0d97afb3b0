"""The parts put together: one turn, what is due, and the bot running on a channel. The only room that imports flows."""
