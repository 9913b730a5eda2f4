"""What page, paper and pack share in looks: drawings, and the faces they are set in."""

from pathlib import Path

LOOKS = Path(__file__).parent
DRAWINGS = LOOKS / "drawings"
PAPER_FONTS = LOOKS / "fonts" / "paper"
SCREEN_FONTS = LOOKS / "fonts" / "screen"
