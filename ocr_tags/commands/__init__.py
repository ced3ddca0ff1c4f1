"""The commands of `ocr-tags`, a file per family. `shared` holds what they have in common."""
