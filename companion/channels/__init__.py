"""Where people write from, and how messages reach them: Telegram, the terminal, and the outbox both drain."""
