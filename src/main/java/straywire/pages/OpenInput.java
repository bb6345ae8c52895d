package straywire.pages;

import straywire.parts.Part;
import straywire.parts.PartNotes;

/** What a page says of an input that is left open. */
final class OpenInput {
  private static final String SERIES_74 = "74x";

  private OpenInput() {}

  /** The file's words, which speak of bipolar families where a number is made in both kinds. */
  static String text(Part part, PartNotes notes) {
    return part.type().startsWith(SERIES_74)
        ? notes.openInput() + " That is so in bipolar families; in CMOS ones it reads at random."
        : notes.openInput();
  }
}
