package straywire.web;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;

/**
 * What a browser must show to be served: drawn anew at every start, told only in the address that
 * is printed. The one thing here that nobody may foresee, so it has no seed.
 */
record AccessToken(String text) {
  private static final int BYTES = 24;

  static AccessToken drawn() {
    byte[] bytes = new byte[BYTES];
    new SecureRandom().nextBytes(bytes);
    return new AccessToken(Base64.getUrlEncoder().withoutPadding().encodeToString(bytes));
  }

  /** Takes the same time wherever the two differ. */
  boolean is(String shown) {
    return MessageDigest.isEqual(
        text.getBytes(StandardCharsets.UTF_8), shown.getBytes(StandardCharsets.UTF_8));
  }
}
