"""What a camera sees of a subject."""
