package straywire.advice;

/** Whether a net is meant to hang on a rail. */
public enum Tie {
  NONE,
  LOW,
  HIGH
}
