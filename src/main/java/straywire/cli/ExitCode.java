package straywire.cli;

/** How a command ended, as the shell sees it. */
enum ExitCode {
  OK(0),
  /** The case book ran, and a case did not come out as expected. */
  CASE_MISSED(1),
  /** The wiring review found something that the module file does not explain. */
  FINDINGS(1),
  /** A command or option that does not exist, or lacks its value. */
  BAD_COMMAND(2),
  /** A file or an entry has a mistake; the message names it. */
  BAD_INPUT(3),
  /** A file could not be read or written. */
  NO_ACCESS(4);

  private final int number;

  ExitCode(int number) {
    this.number = number;
  }

  int number() {
    return number;
  }
}
