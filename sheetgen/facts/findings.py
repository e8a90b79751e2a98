"""What a finding can be drawn as, and the numbers of stock without which it cannot."""

FORMS: dict[str, tuple[str, ...]] = {
    "ring": ("inside",),
    "crimp": ("length",),
    "hook": ("length", "wire"),
    "ribbon end": ("inside", "width"),
    "eye": ("inside", "wire"),
    "fish hook": ("inside", "length", "wire"),
    "bar pin": ("length", "width"),
}
