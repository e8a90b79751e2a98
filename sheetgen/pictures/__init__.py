"""Pictures of others, made anew from what is known in them: bytes in, bytes out, no files."""
