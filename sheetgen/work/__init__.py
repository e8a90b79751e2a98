"""Second stage: a project as written to a project with every number worked."""
