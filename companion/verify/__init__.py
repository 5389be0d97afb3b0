"""Every flow checked and proved on the flow itself, and drawn."""
