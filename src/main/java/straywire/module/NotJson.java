package straywire.module;

import com.fasterxml.jackson.core.JsonProcessingException;

/** Why a line is no JSON, in words for a person. */
public final class NotJson {
  private NotJson() {}

  /** One line. */
  public static String why(JsonProcessingException trouble) {
    String message = trouble.getOriginalMessage().replaceAll("\\s+", " ");
    return "not JSON: "
        + (message.startsWith("Trailing token")
            ? "something follows the object; each line holds one"
            : message);
  }
}
