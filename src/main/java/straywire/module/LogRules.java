package straywire.module;

import straywire.format.BadEntry;

/** What an entry may say about others, which its own fields cannot tell. */
final class LogRules {
  private LogRules() {}

  /**
   * @param number of the entry itself
   * @throws BadEntry when it speaks of entries that do not come before it, or belongs in no log
   */
  static void check(int number, Entry entry) {
    for (int named : entry.speaksOf()) {
      if (named < 1 || named >= number) {
        throw new BadEntry("entry " + named + " does not come before this one, which is " + number);
      }
    }
    if (entry instanceof Entry.Look) {
      throw new BadEntry("look is a step of an exercise; a log says what was seen");
    }
  }
}
