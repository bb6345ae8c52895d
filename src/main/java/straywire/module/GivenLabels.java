package straywire.module;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import straywire.format.YamlValue;

/** The labels that a module file gives, each once. */
final class GivenLabels {
  /** What a label looks like. */
  static final String LABEL = "[A-Za-z+][A-Za-z0-9+_-]*";

  /** Rail labels may have dots. */
  static final String RAIL_LABEL = LABEL + "(\\.[A-Za-z0-9+_-]+)*";

  private static final List<String> NOT_LABELS = List.of("true", "false", "null");

  /** Every label to where it was given. */
  private final Map<String, String> taken = new HashMap<>();

  static void check(YamlValue at, String label, String pattern) {
    if (!label.matches(pattern) || NOT_LABELS.contains(label)) {
      throw at.wrong(
          "\""
              + label
              + "\" is no label; a label starts with a letter and goes on with letters, digits"
              + " and any of - _ +");
    }
  }

  /** Gives a label, or says what has it already. */
  void take(YamlValue at, String label, String pattern, String where) {
    check(at, label, pattern);
    String before = taken.putIfAbsent(label, where + " on line " + at.line());
    if (before != null) {
      throw at.wrong("the label " + label + " is taken by " + before);
    }
  }

  /** Labels of equal members, numbered from 1. */
  static List<String> row(String label, YamlValue count) {
    List<String> members = new ArrayList<>();
    for (int i = 1; i <= count.integer(1, 16); i++) {
      members.add(label + i);
    }
    return members;
  }
}
