package straywire.pages;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A pin's name as it is drawn: a slash before a signal becomes a bar over it, so that {@code
 * SH//LD} is "SH/" and a barred "LD". A slash between two signals stays.
 */
record PinName(List<Piece> pieces) {
  /** Some letters, with or without a bar over them. */
  record Piece(String text, boolean barred) {}

  /** A slash at the start or after another slash belongs to the signal behind it. */
  private static final Pattern SIGNAL = Pattern.compile("(/?)([^/]+)(/?)");

  PinName {
    pieces = List.copyOf(pieces);
  }

  static PinName of(String name) {
    List<Piece> pieces = new ArrayList<>();
    Matcher signal = SIGNAL.matcher(name);
    while (signal.find()) {
      pieces.add(new Piece(signal.group(2), !signal.group(1).isEmpty()));
      if (!signal.group(3).isEmpty()) {
        pieces.add(new Piece("/", false));
      }
    }
    return new PinName(pieces);
  }

  /** Letters drawn. */
  int length() {
    return pieces.stream().mapToInt(piece -> piece.text().length()).sum();
  }

  boolean barred() {
    return pieces.stream().anyMatch(Piece::barred);
  }
}
