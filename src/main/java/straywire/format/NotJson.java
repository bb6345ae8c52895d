package straywire.format;

import com.fasterxml.jackson.core.JsonProcessingException;

/** Why a line is no JSON, in words for a person. */
public final class NotJson {
  private NotJson() {}

  /** One line. */
  public static String why(JsonProcessingException trouble) {
    String message = trouble.getOriginalMessage().replaceAll("\\s+", " ");
    if (message.startsWith("Trailing token")) {
      return "not JSON: something follows the object; each line holds one";
    }
    if (message.startsWith("Unexpected end-of-input")) {
      return "not JSON: it ends too soon; an object goes from { to }";
    }
    // Behind these the parser tells of itself.
    return "not JSON: " + message.replaceFirst("(: was expecting| \\(start marker| at \\[).*$", "");
  }
}
