package straywire.electrical;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import straywire.module.End;
import straywire.module.Module;
import straywire.module.Net;
import straywire.module.SeriesResistor;

/**
 * A net that resistors between lines lead to from another. A rail ends the way: what lies beyond it
 * is not felt.
 *
 * @param resistors on the way, the fewest
 * @param ohms of the resistors on the way: by the fewest of them, and of equally many by the least
 *     ohms
 */
public record Behind(Net net, int resistors, int ohms) {
  /** All nets behind one, those behind one resistor first; nothing behind a rail. */
  public static List<Behind> of(Module module, Net net) {
    List<Behind> behind = new ArrayList<>();
    Set<String> seen = new TreeSet<>(Set.of(net.name()));
    List<Behind> open = List.of(new Behind(net, 0, 0));
    while (!open.isEmpty()) {
      List<Behind> next = new ArrayList<>();
      for (Behind from : open) {
        if (!from.net().onRail()) {
          next.addAll(across(module, from));
        }
      }
      next.sort(Comparator.comparingInt(Behind::ohms));
      next.removeIf(b -> !seen.add(b.net().name()));
      behind.addAll(next);
      open = next;
    }
    return behind;
  }

  private static List<Behind> across(Module module, Behind from) {
    List<Behind> across = new ArrayList<>();
    for (End end : from.net().ends()) {
      SeriesResistor resistor = module.passives().series().get(end.label());
      if (resistor != null) {
        module
            .netOf(resistor.across(end))
            .ifPresent(
                net ->
                    across.add(
                        new Behind(net, from.resistors() + 1, from.ohms() + resistor.ohms())));
      }
    }
    return across;
  }
}
