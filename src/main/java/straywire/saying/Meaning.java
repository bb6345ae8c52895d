package straywire.saying;

import straywire.module.Entry;

/** One thing that words may mean. */
public sealed interface Meaning {
  /** In plain words, for a list to pick from. */
  String words();

  /** A symptom reported, as the entry to write down. */
  record Told(Entry.Symptom entry, String words) implements Meaning {}

  /** Something asked for: what to type instead. */
  record Help(String command, String words) implements Meaning {}
}
