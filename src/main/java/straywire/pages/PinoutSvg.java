package straywire.pages;

import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import straywire.logic.PinKind;
import straywire.logic.PinSpec;
import straywire.parts.Part;

/**
 * A chip as seen from above with the notch up, as an SVG picture 400 units wide that can be read at
 * that many pixels. Each pin has its number inside, its name outside with a bar where low is
 * active, and between them a sign for what it does; the signs used are explained below. The picture
 * brings a background of its own and follows a viewer's wish for a dark one.
 */
final class PinoutSvg {
  private static final int WIDTH = 400;
  private static final int ROW = 30;

  /** Top edge of the chip. */
  private static final int TOP = 34;

  private static final int BODY_LEFT = 142;
  private static final int BODY_RIGHT = WIDTH - BODY_LEFT;
  private static final int LEG = 12;

  /** From the chip's edge to the middle of the sign. */
  private static final int SIGN = 23;

  /** From the chip's edge to the end of the name. */
  private static final int NAME = 37;

  private static final int NAME_SIZE = 17;
  private static final int NAME_ROOM = BODY_LEFT - NAME - 10;
  private static final int LEGEND_ROW = 24;

  /** Letters of a fixed-width font are this wide; the pictures ask for it. */
  private static final double LETTER = 0.6;

  private static final String STYLE =
      """
        <style>
          .card{fill:#ffffff;stroke:#c4c9cf}
          .chip{fill:#e4e8ec;stroke:#1b1f24;stroke-width:2}
          .leg{fill:#8a929b;stroke:none}
          .line{fill:none;stroke:#1b1f24;stroke-width:2}
          .bar{stroke:#1b1f24;stroke-width:1.6}
          text{fill:#1b1f24;font-family:ui-monospace,'DejaVu Sans Mono',Consolas,monospace}
          .small{fill:#4a525b}
          .in{fill:#1257b0;stroke:#1257b0;stroke-width:2}
          .out{fill:#b03a06;stroke:#b03a06;stroke-width:2}
          .open{fill:none;stroke:#b03a06;stroke-width:2}
          .both{fill:none;stroke:#7a2a99;stroke-width:2}
          .rail{fill:#1b1f24;stroke:#1b1f24;stroke-width:2}
          .plus{stroke:#ffffff;stroke-width:2}
          .none{fill:none;stroke:#6b737c;stroke-width:2}
          @media (prefers-color-scheme:dark){
            .card{fill:#14181d;stroke:#3c444d}
            .chip{fill:#2a3139;stroke:#e6e9ec}
            .leg{fill:#9aa3ad}
            .line,.bar{stroke:#e6e9ec}
            text{fill:#e6e9ec}
            .small{fill:#b4bcc4}
            .in{fill:#6fb1ff;stroke:#6fb1ff}
            .out{fill:#ff9a62;stroke:#ff9a62}
            .open{stroke:#ff9a62}
            .both{stroke:#d99bf5}
            .rail{fill:#e6e9ec;stroke:#e6e9ec}
            .plus{stroke:#14181d}
            .none{stroke:#98a1aa}
          }
        </style>
      """;

  private final Part part;
  private final int rows;
  private final StringBuilder svg = new StringBuilder();

  private PinoutSvg(Part part) {
    this.part = part;
    rows = part.pinCount() / 2;
  }

  static String of(Part part) {
    return new PinoutSvg(part).draw();
  }

  private String draw() {
    int bottom = TOP + rows * ROW + 16;
    Set<PinKind> kinds = EnumSet.noneOf(PinKind.class);
    part.pins().forEach(pin -> kinds.add(pin.kind()));
    boolean bars = part.pins().stream().anyMatch(pin -> PinName.of(pin.name()).barred());
    int signs = kinds.size() + (bars ? 1 : 0);
    int height = bottom + 18 + (signs + 1) / 2 * LEGEND_ROW + 8;
    line(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" width=\"%d\""
            + " height=\"%d\" role=\"img\" aria-labelledby=\"t d\">",
        WIDTH, height, WIDTH, height);
    line("  <title id=\"t\">%s seen from above, notch up</title>", xml(part.type()));
    line("  <desc id=\"d\">%s</desc>", xml(described()));
    svg.append(STYLE);
    line(
        "  <rect class=\"card\" x=\"0.5\" y=\"0.5\" width=\"%d\" height=\"%d\" rx=\"6\"/>",
        WIDTH - 1, height - 1);
    line(
        "  <text class=\"small\" x=\"%d\" y=\"21\" font-size=\"13\" text-anchor=\"middle\">"
            + "seen from above, notch up</text>",
        WIDTH / 2);
    chip(bottom);
    for (PinSpec pin : part.pins()) {
      pin(pin);
    }
    legend(kinds, bars, bottom + 18 + LEGEND_ROW / 2);
    line("</svg>");
    return svg.toString();
  }

  private String described() {
    return part.pins().stream()
        .map(pin -> pin.number() + " " + pin.name() + " " + PinWords.of(pin))
        .collect(Collectors.joining("; "));
  }

  private void chip(int bottom) {
    int middle = WIDTH / 2;
    line(
        "  <path class=\"chip\" d=\"M%d %dH%da10 10 0 0 0 20 0H%dV%dH%dZ\"/>",
        BODY_LEFT, TOP, middle - 10, BODY_RIGHT, bottom, BODY_LEFT);
    line("  <circle class=\"rail\" cx=\"%d\" cy=\"%d\" r=\"2.5\"/>", BODY_LEFT + 10, TOP + 9);
    // Between two rows, where no number stands beside it.
    int between = TOP + 8 + rows / 2 * ROW;
    double size = Math.min(17, 100 / (LETTER * part.type().length()));
    text(part.type(), middle, between + 6, size, "middle", "font-weight=\"bold\" ");
  }

  private boolean onTheLeft(PinSpec pin) {
    return pin.number() <= rows;
  }

  private int middleOf(PinSpec pin) {
    int row = onTheLeft(pin) ? pin.number() - 1 : part.pinCount() - pin.number();
    return TOP + 23 + row * ROW;
  }

  private void pin(PinSpec pin) {
    boolean left = onTheLeft(pin);
    int y = middleOf(pin);
    int edge = left ? BODY_LEFT : BODY_RIGHT;
    int out = left ? -1 : 1;
    line(
        "  <rect class=\"leg\" x=\"%d\" y=\"%d\" width=\"%d\" height=\"8\"/>",
        left ? edge - LEG : edge, y - 4, LEG);
    text(String.valueOf(pin.number()), edge - 7 * out, y + 5.5, 15, left ? "start" : "end", "");
    sign(pin.kind(), edge + SIGN * out, y, -out);
    name(PinName.of(pin.name()), edge + NAME * out, y + 6, left);
  }

  private void name(PinName name, int x, int y, boolean left) {
    double size = Math.min(NAME_SIZE, NAME_ROOM / (LETTER * name.length()));
    double letter = LETTER * size;
    double at = left ? x - letter * name.length() : x;
    for (PinName.Piece piece : name.pieces()) {
      double width = letter * piece.text().length();
      text(piece.text(), at, y, size, "start", "");
      if (piece.barred()) {
        double above = y - size * 0.86;
        line(
            "  <line class=\"bar\" x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\"/>",
            number(at + 0.5), number(above), number(at + width - 0.5), number(above));
      }
      at += width;
    }
  }

  /** The sign of a kind; {@code inward} is 1 where the chip is to the right of it, else -1. */
  private void sign(PinKind kind, int x, int y, int inward) {
    int tip = 7 * inward;
    switch (kind) {
      case INPUT -> triangle("in", x - tip, x + tip, y - 6, y + 6, y);
      case OUTPUT -> triangle("out", x + tip, x - tip, y - 6, y + 6, y);
      case TRISTATE -> triangle("open", x + tip, x - tip, y - 6, y + 6, y);
      case OPEN_COLLECTOR -> {
        triangle("open", x + tip, x - tip, y - 6, y + 6, y);
        triangle("out", x + tip, x - tip, y, y + 6, y);
      }
      case BIDIRECTIONAL ->
          line(
              "  <path class=\"both\" d=\"M%d %dL%d %dL%d %dL%d %dZ\"/>",
              x - 8, y, x, y - 7, x + 8, y, x, y + 7);
      case SUPPLY -> {
        line(
            "  <rect class=\"rail\" x=\"%d\" y=\"%d\" width=\"14\" height=\"14\" rx=\"2\"/>",
            x - 7, y - 7);
        line("  <path class=\"plus\" d=\"M%d %dH%dM%d %dV%d\"/>", x - 5, y, x + 5, x, y - 5, y + 5);
      }
      case GROUND ->
          line(
              "  <path class=\"line\" d=\"M%d %dH%dM%d %dH%dM%d %dH%d\"/>",
              x - 8, y - 5, x + 8, x - 5, y, x + 5, x - 2, y + 5, x + 2);
      case NOT_CONNECTED ->
          line(
              "  <path class=\"none\" d=\"M%d %dL%d %dM%d %dL%d %d\"/>",
              x - 5, y - 5, x + 5, y + 5, x - 5, y + 5, x + 5, y - 5);
    }
  }

  private void triangle(String style, int base, int tip, int from, int to, int tipAt) {
    line(
        "  <path class=\"%s\" stroke-linejoin=\"round\" d=\"M%d %dV%dL%d %dZ\"/>",
        style, base, from, to, tip, tipAt);
  }

  private void legend(Set<PinKind> kinds, boolean bars, int y) {
    int place = 0;
    for (PinKind kind : kinds) {
      int x = place % 2 == 0 ? 12 : 206;
      int row = y + place / 2 * LEGEND_ROW;
      // As on the left side of the chip.
      sign(kind, x + 9, row, 1);
      text(PinWords.of(kind), x + 26, row + 4.5, 12, "start", "");
      place++;
    }
    if (bars) {
      int x = place % 2 == 0 ? 12 : 206;
      int row = y + place / 2 * LEGEND_ROW;
      name(new PinName(List.of(new PinName.Piece("X", true))), x + 4, row + 6, false);
      text("active when low,", x + 26, row - 1, 12, "start", "");
      text("or a complement", x + 26, row + 11, 12, "start", "");
    }
  }

  /** Text in letters of a fixed width, whatever font the viewer has. */
  private void text(String text, double x, double y, double size, String anchor, String more) {
    line(
        "  <text %sx=\"%s\" y=\"%s\" font-size=\"%s\" text-anchor=\"%s\" textLength=\"%s\""
            + " lengthAdjust=\"spacingAndGlyphs\">%s</text>",
        more,
        number(x),
        number(y),
        number(size),
        anchor,
        number(LETTER * size * text.length()),
        xml(text));
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.1f", value).replaceFirst("\\.0$", "");
  }

  private void line(String format, Object... values) {
    svg.append(String.format(Locale.ROOT, format, values)).append('\n');
  }

  private static String xml(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}
