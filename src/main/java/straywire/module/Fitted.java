package straywire.module;

import straywire.parts.Family;
import straywire.parts.Part;

/**
 * A part in its place on the board.
 *
 * @param label such as {@code U1}
 * @param fitted false while the module is still being built and the socket is empty
 */
public record Fitted(String label, Part part, Family family, String note, boolean fitted) {}
