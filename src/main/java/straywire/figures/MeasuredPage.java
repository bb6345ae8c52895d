package straywire.figures;

import java.util.Locale;

/** A page of Markdown that grows line by line, and says how it is made again. */
abstract class MeasuredPage {
  private final StringBuilder text = new StringBuilder();

  /**
   * Starts the page.
   *
   * @param title all of it, without the mark of a heading
   * @param command the command that makes the page again
   */
  MeasuredPage(String title, String command) {
    line("# %s", title);
    line("");
    line("Measured, not promised. Made again by:");
    line("");
    line("    %s", command);
    line("");
  }

  final void line(String format, Object... values) {
    text.append(filled(format, values)).append('\n');
  }

  static String percent(double share) {
    return filled("%.1f %%", share * 100);
  }

  /** The format with its values filled in, the same in every country. */
  static String filled(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }

  final String text() {
    return text.toString();
  }
}
