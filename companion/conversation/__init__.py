"""A conversation: the flow vocabulary, the compiled machine, reading replies, one pure step."""
