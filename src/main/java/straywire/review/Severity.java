package straywire.review;

/** How much a finding of the wiring review matters; the worst first. */
public enum Severity {
  /** Do not switch the power on. */
  STOP,
  /** Will not work as drawn. */
  WRONG,
  /** Worth a thought; may be meant. */
  NOTE;

  public String word() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}
