package straywire.casebook;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import straywire.faults.Hypothesis;
import straywire.faults.Mechanism;
import straywire.module.Entry;
import straywire.module.LampState;
import straywire.module.Module;
import straywire.module.Word;
import straywire.observe.ReadingTable;

/** A module with nothing wrong on a simulated bench, in words of zeros and ones. */
final class ModuleBench {
  private static final Hypothesis HEALTHY =
      new Hypothesis("nothing-wrong", Mechanism.NOTHING_WRONG, List.of(), 1, "", "", "", "");

  private final Module module;
  private final SimulatedBench bench;

  ModuleBench(Module module, long seed) {
    this.module = module;
    bench = new SimulatedBench(module, HEALTHY, ReadingTable.shipped(), seed);
  }

  Module module() {
    return module;
  }

  void act(Entry entry) {
    bench.act(entry);
  }

  void power() {
    act(new Entry.Power(true));
  }

  void press(String button) {
    act(new Entry.Press(button));
  }

  /** Sets a word of controls, or one control, to a number. */
  void set(String word, int value) {
    List<String> members = module.controlWord(word).map(Word::members).orElse(List.of(word));
    Map<String, Boolean> levels = new TreeMap<>();
    for (int i = 0; i < members.size(); i++) {
      levels.put(members.get(i), (value >> (members.size() - 1 - i) & 1) == 1);
    }
    act(new Entry.Set(levels));
  }

  /** What a word of lamps shows, high bit first; a lamp neither lit nor dark is a question mark. */
  String word(String word) {
    Map<String, LampState> seen = bench.look(List.of(word)).lamps();
    StringBuilder bits = new StringBuilder();
    for (String lamp : module.lampWord(word).map(Word::members).orElse(List.of(word))) {
      LampState state = seen.get(lamp);
      bits.append(state == LampState.LIT ? '1' : state == LampState.DARK ? '0' : '?');
    }
    return bits.toString();
  }

  /** The same as a number. */
  int number(String word) {
    return Integer.parseInt(word(word), 2);
  }
}
