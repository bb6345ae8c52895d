package straywire.cli;

import java.util.ArrayList;
import java.util.List;
import straywire.sitting.Situation.LampForecast;

/** Words of lamps drawn large, each lamp above its label. */
final class LampPicture {
  private final Glyphs glyphs;

  LampPicture(Glyphs glyphs) {
    this.glyphs = glyphs;
  }

  /** A word as seen, as it should be and as the leading suspect has it; equal rows once. */
  List<String> of(LampForecast word) {
    List<String> lines = new ArrayList<>();
    boolean looked = !word.seen().matches("-*");
    if (looked) {
      lines.add(row(word.word(), "seen", word.seen(), word.members()));
    }
    lines.add(row(looked ? "" : word.word(), "should be", word.healthy(), word.members()));
    if (!word.leader().equals(word.healthy())) {
      lines.add(row("", "suspect 1", word.leader(), word.members()));
    }
    lines.add(labels(word.members()));
    return lines;
  }

  /** A word with one row of marks. */
  List<String> of(String word, String marks, List<String> members) {
    return List.of(row(word, "", marks, members), labels(members));
  }

  private String row(String word, String what, String marks, List<String> members) {
    StringBuilder row = new StringBuilder(String.format("  %-10s %-10s", word, what));
    for (int i = 0; i < members.size(); i++) {
      row.append(' ').append(padded(glyphs.lamp(marks.charAt(i)), members.get(i)));
    }
    return row.toString().stripTrailing();
  }

  private static String labels(List<String> members) {
    return String.format("  %-10s %-10s", "", "") + " " + String.join(" ", members);
  }

  private static String padded(String glyph, String label) {
    return glyph + " ".repeat(Math.max(0, label.length() - 1));
  }
}
