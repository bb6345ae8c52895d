package straywire.module;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** Entries for what the hand does: power, switches and buttons. */
final class HandVerbs {
  private final Labels labels;
  private final ValueWords<Boolean> values;

  HandVerbs(Module module) {
    labels = new Labels(module);
    values = new ValueWords<>(WordValues.ofControls(module));
  }

  List<EntryVerb<?>> all() {
    List<EntryVerb<?>> all = new ArrayList<>();
    List<String> onOff = List.of("on", "off");
    all.add(
        new EntryVerb<>(
            Entry.Power.class,
            "power",
            "power on",
            typed -> {
              String state = typed.oneOf(onOff);
              typed.end();
              return new Entry.Power(state.equals("on"));
            },
            e -> e.on() ? "on" : "off",
            before -> before.isEmpty() ? onOff : List.of()));
    all.add(
        new EntryVerb<>(
            Entry.Set.class,
            "set",
            "set address 0001 data 10010110 drive low",
            typed -> new Entry.Set(values.parse(typed)),
            e -> values.print(e.levels()),
            values::next));
    all.add(buttonVerb(Entry.Press.class, "press", Entry.Press::new, Entry.Press::button));
    all.add(buttonVerb(Entry.Hold.class, "hold", Entry.Hold::new, Entry.Hold::button));
    all.add(buttonVerb(Entry.Release.class, "release", Entry.Release::new, Entry.Release::button));
    return all;
  }

  private <E extends Entry> EntryVerb<E> buttonVerb(
      Class<E> type, String name, Function<String, E> make, Function<E, String> button) {
    return new EntryVerb<>(
        type,
        name,
        name + " write",
        typed -> {
          String label = labels.button(typed.next("a button"));
          typed.end();
          return make.apply(label);
        },
        button,
        before -> before.isEmpty() ? labels.buttons() : List.of());
  }
}
