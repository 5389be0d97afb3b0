"""What whoever runs the bot needs: is it well, what does it do, and the file kept safe and brought back."""
