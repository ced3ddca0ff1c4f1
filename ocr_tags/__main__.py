"""`python -m ocr_tags` is the command `ocr-tags`."""

from ocr_tags.cli import main

if __name__ == "__main__":
    main()
