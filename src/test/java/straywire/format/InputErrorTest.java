package straywire.format;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class InputErrorTest {
  @Test
  void aLongQuotationIsCutAndWhatWouldBeRightIsKept() {
    String message = "expected a word, got " + "x".repeat(5000) + "; write U1";
    assertThat(new InputError("a.yaml", 3, message))
        .hasMessageStartingWith("a.yaml:3: expected a word, got xxx")
        .hasMessageContaining(" ... ")
        .hasMessageEndingWith("; write U1")
        .extracting(e -> e.getMessage().length())
        .matches(length -> length < 450);
  }
}
