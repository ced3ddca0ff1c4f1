"""What each word of a text is likely to tell of, learnt from typed tags."""
