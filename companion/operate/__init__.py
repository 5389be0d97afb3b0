"""Tools of the operator: health checks, metrics, backup and restore."""
