package straywire.faults;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import straywire.module.Module;

/**
 * A mechanism put to its places: what is left to add is the prior.
 *
 * @param place what follows the mechanism's name in the hypothesis id; may be empty
 */
record Draft(String place, List<Edit> edits, String words, String repair) {
  /** Leads every repair that moves a wire or a part. */
  static final String POWER_OFF = "Switch the power off first. ";

  /** Leads every repair of what may have been overloaded. */
  static final String MAY_BE_HOT = "Switch the power off at once; do not touch, parts may be hot. ";

  Draft {
    edits = List.copyOf(edits);
  }

  /** Words and repair as the edits themselves have them, power off first. */
  static Draft plain(Module module, String place, List<Edit> edits) {
    return new Draft(place, edits, words(module, edits), POWER_OFF + repairs(module, edits));
  }

  static Draft plain(Module module, String place, Edit edit) {
    return plain(module, place, List.of(edit));
  }

  /** The same with words of its own. */
  Draft saying(String otherWords) {
    return new Draft(place, edits, otherWords, repair);
  }

  /** The same with a repair of its own. */
  Draft cured(String otherRepair) {
    return new Draft(place, edits, words, otherRepair);
  }

  static String words(Module module, List<Edit> edits) {
    return edits.stream().map(e -> e.words(module)).collect(Collectors.joining("; "));
  }

  /** One sentence for each edit that is repaired by itself; equal ones once. */
  static String repairs(Module module, List<Edit> edits) {
    List<String> sentences = new ArrayList<>();
    for (Edit edit : edits) {
      String sentence = edit.repair(module) + ".";
      if (!sentences.contains(sentence)) {
        sentences.add(sentence);
      }
    }
    return String.join(" ", sentences);
  }
}
