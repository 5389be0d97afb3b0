"""Stand-ins for what lies outside: the Bot API, the clock."""
