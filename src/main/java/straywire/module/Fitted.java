package straywire.module;

import straywire.parts.Family;
import straywire.parts.Part;

/**
 * A part in its place on the board.
 *
 * @param label such as {@code U1}
 * @param fitted false while the module is still being built and the socket is empty
 * @param contents of a memory that keeps them without power and that the module only reads
 */
public record Fitted(
    String label, Part part, Family family, String note, boolean fitted, Contents contents) {
  /** A part that was not programmed. */
  public Fitted(String label, Part part, Family family, String note, boolean fitted) {
    this(label, part, family, note, fitted, Contents.UNKNOWN);
  }
}
