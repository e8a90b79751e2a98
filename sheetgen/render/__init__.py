"""Fifth stage: worked numbers, drawings and a theme to pages. The only place that rounds."""
