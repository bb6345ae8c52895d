package straywire.symptoms;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import straywire.module.Control;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.module.Word;

/**
 * What a hand does to learn whether a symptom is there, as entries: with a store, fresh words at
 * power-up, two rounds of writing and reading back with the switches moved in between; without one,
 * the by-hand exercise and a sweep of the controls.
 */
final class SymptomExercise {
  /** Address bits that are taken one at a time, at most. */
  private static final int ADDRESS_BITS = 8;

  /** Words written in a round, at least. */
  private static final int WORDS = 6;

  /** Presses with a look while the button is down. */
  private static final int SLOW_PRESSES = 4;

  /** Switches that are swept through all their settings, at most. */
  private static final int ALL_SETTINGS = 5;

  private final Module module;
  private final SymptomRoles roles;
  private final List<Entry> entries = new ArrayList<>();

  private SymptomExercise(Module module, SymptomRoles roles) {
    this.module = module;
    this.roles = roles;
  }

  /** The entries, from power off; each {@link Entry.Look} looks at the lamps of the roles. */
  static List<Entry> of(Module module, SymptomRoles roles) {
    SymptomExercise exercise = new SymptomExercise(module, roles);
    if (roles.store().isPresent()) {
      exercise.rounds(roles.store().get());
      if (!roles.steps().isEmpty()) {
        exercise.entries.add(new Entry.Power(false));
        exercise.entries.add(new Entry.Power(true));
        exercise.byHand();
      }
    } else {
      exercise.sweep();
    }
    return List.copyOf(exercise.entries);
  }

  private void look() {
    entries.add(new Entry.Look(List.of(roles.lamps().label())));
  }

  private void set(Map<String, Boolean> levels) {
    entries.add(new Entry.Set(levels));
  }

  private void rounds(SymptomRoles.Store store) {
    List<Long> places = places(store.address().size());
    entries.add(new Entry.Power(true));
    set(with(store.mode(), SymptomRoles.setting(store.data(), 0)));
    for (long place : places) {
      at(store, place);
      look();
    }
    at(store, places.get(0));
    entries.add(new Entry.Power(false));
    entries.add(new Entry.Power(true));
    look();
    List<Long> words =
        SymptomPatterns.words(store.data().size(), Math.max(WORDS, places.size()), places.size());
    for (long turn : new long[] {0, -1}) {
      for (int i = 0; i < words.size(); i++) {
        long word = words.get(i) ^ turn;
        set(with(address(store, places, i), SymptomRoles.setting(store.data(), word)));
        look();
        entries.add(new Entry.Press(store.button()));
        look();
        if (turn == 0 && (i == 0 || i == words.size() - 1)) {
          moveData(store, places, i, word);
        }
      }
      for (long place : places) {
        at(store, place);
        look();
        release();
      }
    }
  }

  /** Addresses: none but the first, each line alone, all lines. */
  private static List<Long> places(int bits) {
    List<Long> places = new ArrayList<>();
    places.add(0L);
    for (int bit = 0; bit < Math.min(bits, ADDRESS_BITS); bit++) {
      places.add(1L << bit);
    }
    if (bits > 1) {
      places.add(SymptomRoles.ones(bits));
    }
    return places;
  }

  private static Map<String, Boolean> with(Map<String, Boolean> a, Map<String, Boolean> b) {
    Map<String, Boolean> both = new TreeMap<>(a);
    both.putAll(b);
    return both;
  }

  private static Map<String, Boolean> address(
      SymptomRoles.Store store, List<Long> places, int number) {
    return SymptomRoles.setting(store.address(), places.get(number % places.size()));
  }

  private void at(SymptomRoles.Store store, long place) {
    if (!store.address().isEmpty()) {
      set(SymptomRoles.setting(store.address(), place));
    }
  }

  /** Moves everything but the button, and comes back. */
  private void moveData(SymptomRoles.Store store, List<Long> places, int number, long word) {
    for (long other : new long[] {~word, 0, -1}) {
      set(SymptomRoles.setting(store.data(), other));
      look();
    }
    if (places.size() > 1) {
      set(address(store, places, number + 1));
      set(address(store, places, number));
      look();
    }
  }

  /** Lets go of the lines and drives them again. */
  private void release() {
    roles
        .gate()
        .ifPresent(
            gate -> {
              set(Map.of(gate.control(), !gate.drivesAt()));
              look();
              set(Map.of(gate.control(), gate.drivesAt()));
            });
  }

  private void sweep() {
    entries.add(new Entry.Power(true));
    drive();
    look();
    release();
    byHand();
    List<String> switches =
        module.controls().values().stream()
            .filter(c -> c.kind() == Control.Kind.SWITCH)
            .map(Control::label)
            .filter(label -> roles.gate().map(g -> !g.control().equals(label)).orElse(true))
            .toList();
    List<String> buttons =
        module.controls().values().stream()
            .filter(c -> c.kind() == Control.Kind.BUTTON)
            .map(Control::label)
            .toList();
    for (Map<String, Boolean> setting : settings(switches)) {
      if (!setting.isEmpty()) {
        set(setting);
      }
      look();
      release();
      for (String button : buttons) {
        entries.add(new Entry.Press(button));
        look();
      }
    }
  }

  private void drive() {
    roles.gate().ifPresent(gate -> set(Map.of(gate.control(), gate.drivesAt())));
  }

  /**
   * The by-hand exercise from when the power is first on, with a look after everything that was
   * set. The first presses of a button that takes the word on are slow ones, with a look while it
   * is down.
   */
  private void byHand() {
    boolean on = false;
    int slow = 0;
    for (Entry entry : module.exercise()) {
      if (entry instanceof Entry.Power) {
        if (on) {
          entries.add(entry);
        }
        on = true;
      } else if (on
          && slow < SLOW_PRESSES
          && entry instanceof Entry.Press press
          && press.button().equals(roles.steps())) {
        slow++;
        entries.add(new Entry.Hold(press.button()));
        look();
        entries.add(new Entry.Release(press.button()));
        look();
      } else if (on && (entry instanceof Entry.Set || entry instanceof Entry.Press)) {
        entries.add(entry);
        drive();
        look();
      }
    }
  }

  private List<Map<String, Boolean>> settings(List<String> switches) {
    List<Map<String, Boolean>> settings = new ArrayList<>();
    if (switches.size() <= ALL_SETTINGS) {
      for (long value = 0; value < 1L << switches.size(); value++) {
        settings.add(SymptomRoles.setting(switches, value));
      }
      return settings;
    }
    Map<String, Boolean> rest = new TreeMap<>();
    switches.forEach(label -> rest.put(label, module.controls().get(label).restLevel()));
    for (String label : switches) {
      settings.add(with(rest, Map.of(label, !rest.get(label))));
    }
    for (Word word : module.controlWords()) {
      List<String> members = word.members().stream().filter(switches::contains).toList();
      for (long value : SymptomPatterns.words(members.size(), WORDS, 1)) {
        settings.add(with(rest, SymptomRoles.setting(members, value)));
        settings.add(with(rest, SymptomRoles.setting(members, ~value)));
      }
    }
    settings.add(rest);
    return settings;
  }
}
