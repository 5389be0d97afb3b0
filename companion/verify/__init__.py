"""What must hold of every flow, checked and proved on the flow itself; and the flow drawn."""
