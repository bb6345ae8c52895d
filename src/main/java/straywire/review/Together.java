package straywire.review;

/** Whether two outputs ever drive a line together, over all settings of what steers them. */
public enum Together {
  NEVER,
  /** In some settings, one of which is told. */
  SOMETIMES,
  ALWAYS,
  /** Too much to work through, or it depends on what is remembered. */
  UNPROVEN
}
