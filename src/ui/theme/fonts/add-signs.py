"""Draws the flat and the sharp into the subset typefaces, which have none: without them a system face of another size
and weight stands in, and E-flat reads as E. Needs fontTools and brotli.

    python3 add-signs.py FILE.woff2...

The strokes follow the weight of each face (own drawing, under the licence of the typeface).
"""
import sys

from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib import TTFont

# Stem of the sign, stroke of the bowl and of the bars, width of flat and sharp, in units of the face.
LOOKS = {"Condensed": (92, 104, 300, 360), "Bold": (84, 92, 340, 430), "Medium": (62, 70, 310, 400)}


def contour(pen, points):
    pen.moveTo(points[0])
    for point in points[1:]:
        if isinstance(point, list):
            pen.qCurveTo(*point)
        else:
            pen.lineTo(point)
    pen.closePath()


def flat(stem, bowl, width):
    pen = TTGlyphPen(None)
    left, inner, right = 34, 34 + stem, width - 26
    contour(pen, [(left, 770), (inner, 770), (inner, 430), [(inner + 40, 480), (right, 500), (right, 340)],
                  [(right, 190), (inner + 40, 60), (left, -40)]])
    hole = right - bowl
    contour(pen, [(inner, 110), [(hole, 220), (hole, 330)], [(hole, 420), (inner, 400), (inner, 330)]])
    return pen.glyph()


def sharp(stem, bar, width):
    pen = TTGlyphPen(None)
    first, second, rise = 0.26 * width, 0.74 * width, 0.16 * width
    for middle, lift in ((first, 0), (second, rise / 2)):
        contour(pen, [(middle - 0.42 * stem, -50 + lift), (middle - 0.42 * stem, 720 + lift),
                      (middle + 0.42 * stem, 720 + lift), (middle + 0.42 * stem, -50 + lift)])
    for foot in (150, 400):
        contour(pen, [(20, foot), (20, foot + bar), (width - 20, foot + bar + rise), (width - 20, foot + rise)])
    return pen.glyph()


for file in sys.argv[1:]:
    font = TTFont(file)
    name = "Condensed" if "condensed" in file else "Bold" if "700" in file else "Medium"
    stem, stroke, flat_width, sharp_width = LOOKS[name]
    drawn = {"flat": (0x266D, flat(stem, stroke, flat_width), flat_width),
             "sharp": (0x266F, sharp(stem, stroke, sharp_width), sharp_width)}
    order = [each for each in font.getGlyphOrder() if each not in drawn]
    font.setGlyphOrder(order + list(drawn))
    for glyph_name, (code, glyph, width) in drawn.items():
        font["glyf"][glyph_name] = glyph
        glyph.recalcBounds(font["glyf"])
        font["hmtx"][glyph_name] = (width, glyph.xMin)
        for table in font["cmap"].tables:
            if table.isUnicode():
                table.cmap[code] = glyph_name
    font["maxp"].numGlyphs = len(font.getGlyphOrder())
    font.flavor = "woff2"
    font.save(file)
