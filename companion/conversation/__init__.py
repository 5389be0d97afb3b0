"""What a conversation is: the flow vocabulary, the compiled machine, reading replies, one pure step."""
