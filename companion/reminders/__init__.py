"""What is due, and the sweep that looks for it. APScheduler stands here."""
