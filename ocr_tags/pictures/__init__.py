"""Pixels in, straight clean pictures of lines out, with the way back to the photo."""
