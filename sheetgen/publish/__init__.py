"""Last stage: pages to the build folder, whole files or nothing."""
