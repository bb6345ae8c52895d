package straywire.review;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import straywire.advice.PinRole;
import straywire.electrical.Behind;
import straywire.electrical.NetContents;
import straywire.electrical.NetContents.Pin;
import straywire.logic.PartLogic;
import straywire.logic.PinKind;
import straywire.logic.PinPlanes;
import straywire.logic.PinSpec;
import straywire.module.End;
import straywire.module.Fitted;
import straywire.module.Module;

/**
 * When outputs drive: follows what steers them back through gates to switches, port lines and
 * remembered bits, and works through every combination of those. Gates are worked in three values,
 * all other nets are unknown, so that "never" and "always" hold whatever they do.
 */
final class Steering {
  /** More sources than this are not worked through: 4096 combinations, 64 at once. */
  private static final int MOST_SOURCES = 12;

  private static final int LANES = Long.SIZE;

  /** Passes over the gates; a longer chain leaves its end unknown, which proves nothing wrong. */
  private static final int PASSES = 24;

  private final Module module;
  private final PartDependence dependence;
  private final Map<String, NetContents> nets = new TreeMap<>();
  private final Map<String, String> netOf = new HashMap<>();

  Steering(Module module, List<NetContents> contents, PartDependence dependence) {
    this.module = module;
    this.dependence = dependence;
    for (NetContents net : contents) {
      nets.put(net.name(), net);
      net.net().ends().forEach(end -> netOf.put(end.toString(), net.name()));
    }
  }

  /**
   * What is known of two drivers of one line.
   *
   * @param when a setting in which both drive, as {@code drive low, read low}; else empty
   */
  record Verdict(Together together, String when, boolean mayAllLetGo) {}

  /** Whether {@code pins} of one line ever drive together, any two of them. */
  Verdict together(Pin a, Pin b) {
    return work(List.of(a, b));
  }

  /** True when in some setting none of {@code pins} drives, as far as can be told. */
  boolean mayAllLetGo(List<Pin> pins) {
    return work(pins).mayAllLetGo();
  }

  /** True when {@code pin} may drive {@code high}, or low, in some setting. */
  boolean mayDrive(Pin pin, boolean high) {
    Cone cone = new Cone(List.of(pin));
    boolean may = false;
    for (int row = 0; row < cone.rows(); row += LANES) {
      cone.settle(row);
      PinPlanes planes = cone.drives(pin);
      int number = pin.spec().number();
      may |= ((high ? planes.drive1[number] : planes.drive0[number]) & cone.used(row)) != 0;
    }
    return may;
  }

  private Verdict work(List<Pin> pins) {
    Cone cone = new Cone(pins);
    boolean everMay = false;
    boolean alwaysSurely = true;
    boolean letGo = false;
    String when = "";
    for (int row = 0; row < cone.rows(); row += LANES) {
      cone.settle(row);
      long used = cone.used(row);
      long may = used;
      long surely = used;
      long allOff = used;
      for (Pin pin : pins) {
        PinPlanes planes = cone.drives(pin);
        int number = pin.spec().number();
        // An open-collector output lets go by its data; whether it may pull is not asked here.
        may &= planes.drive1[number] | planes.drive0[number];
        surely &= ~planes.off[number];
        allOff &= planes.off[number];
      }
      everMay |= may != 0;
      alwaysSurely &= surely == used;
      letGo |= allOff != 0;
      if (when.isEmpty() && surely != 0) {
        when = cone.setting(row + Long.numberOfTrailingZeros(surely));
      }
    }
    Together together;
    if (!everMay) {
      together = Together.NEVER;
    } else if (alwaysSurely) {
      together = Together.ALWAYS;
    } else if (cone.complete() && !when.isEmpty()) {
      together = Together.SOMETIMES;
    } else {
      together = Together.UNPROVEN;
    }
    return new Verdict(together, when, letGo);
  }

  /** What hangs on the net of this name. */
  NetContents contents(String net) {
    return nets.get(net);
  }

  /** What resistors between lines lead to, rails left out. */
  List<NetContents> behind(NetContents net) {
    return Behind.of(module, net.net()).stream()
        .filter(behind -> !behind.net().onRail())
        .map(behind -> contents(behind.net().name()))
        .toList();
  }

  /** The one gate output on a net that is driven by nothing else; empty for any other net. */
  Optional<Pin> gate(String net) {
    NetContents contents = nets.get(net);
    if (contents.drivers().size() != 1
        || !contents.contacts().isEmpty()
        || contents.net().onRail()) {
      return Optional.empty();
    }
    Pin pin = contents.drivers().get(0);
    boolean gate =
        pin.spec().kind() == PinKind.OUTPUT && pin.part().part().logic().stateLength() == 0;
    return gate ? Optional.of(pin) : Optional.empty();
  }

  /** Nets on the inputs that {@code output} depends on, by pin number; unwired pins left out. */
  Map<Integer, String> feeding(Pin output) {
    Map<Integer, String> feeding = new TreeMap<>();
    for (PinSpec input : output.part().part().pins()) {
      String net =
          netOf.getOrDefault(End.pin(output.part().label(), input.number()).toString(), "");
      if (input.kind().listens()
          && input.number() != output.spec().number()
          && !net.isEmpty()
          && dependence.depends(output.part().part(), output.spec().number(), input.number())) {
        feeding.put(input.number(), net);
      }
    }
    return feeding;
  }

  /** Gates and sources that some outputs hang on, and their levels in 64 combinations at once. */
  private final class Cone {
    private final List<String> sources = new ArrayList<>();
    private final SortedSet<String> gates = new TreeSet<>();
    private final Map<String, long[]> levels = new HashMap<>();
    private final boolean complete;

    Cone(List<Pin> outputs) {
      Deque<String> open = new ArrayDeque<>();
      outputs.forEach(output -> open.addAll(steering(output)));
      SortedSet<String> found = new TreeSet<>();
      SortedSet<String> seen = new TreeSet<>();
      while (!open.isEmpty()) {
        String net = open.remove();
        if (!seen.add(net) || nets.get(net).net().onRail()) {
          continue;
        }
        Optional<Pin> gate = gate(net);
        if (gate.isEmpty()) {
          found.add(net);
        } else {
          gates.add(net);
          open.addAll(feeding(gate.get()).values());
        }
      }
      complete = found.size() <= MOST_SOURCES;
      sources.addAll(complete ? found : List.of());
    }

    /** Nets that decide whether {@code output} drives. */
    private List<String> steering(Pin output) {
      if (output.part().part().logic().stateLength() == 0) {
        return List.copyOf(feeding(output).values());
      }
      List<String> steering = new ArrayList<>();
      for (PinSpec pin : output.part().part().pins()) {
        PinRole role = PinRole.of(output.part().part(), pin);
        String net =
            netOf.getOrDefault(End.pin(output.part().label(), pin.number()).toString(), "");
        boolean steers =
            role == PinRole.ENABLE || role == PinRole.WRITE || role == PinRole.DIRECTION;
        if (steers && !net.isEmpty()) {
          steering.add(net);
        }
      }
      return steering;
    }

    /** False when there are too many sources; all of them are unknown then. */
    boolean complete() {
      return complete;
    }

    int rows() {
      return 1 << sources.size();
    }

    long used(int row) {
      int left = rows() - row;
      return left >= LANES ? -1L : (1L << left) - 1;
    }

    /** Levels of all nets for the combinations {@code row} to {@code row + 63}. */
    void settle(int row) {
      levels.clear();
      for (int i = 0; i < sources.size(); i++) {
        long high = 0;
        for (int lane = 0; lane < LANES; lane++) {
          high |= (((long) (row + lane) >>> i) & 1L) << lane;
        }
        levels.put(sources.get(i), new long[] {high, ~high});
      }
      boolean changed = true;
      for (int pass = 0; pass < PASSES && changed; pass++) {
        changed = false;
        for (String net : gates) {
          Pin gate = gate(net).orElseThrow();
          PinPlanes planes = drives(gate);
          int pin = gate.spec().number();
          long[] now = {planes.drive1[pin], planes.drive0[pin]};
          changed |= !Arrays.equals(now, levels.put(net, now));
        }
      }
    }

    /** What the part of {@code output} drives, given the levels of its nets. */
    PinPlanes drives(Pin output) {
      Fitted part = output.part();
      PartLogic logic = part.part().logic();
      PinPlanes planes = new PinPlanes(part.part().pinCount());
      for (PinSpec pin : part.part().pins()) {
        long[] level = level(part, pin);
        planes.can1[pin.number()] = level[0];
        planes.can0[pin.number()] = level[1];
        planes.was1[pin.number()] = level[0];
        planes.was0[pin.number()] = level[1];
      }
      long[] state = new long[logic.stateLength()];
      logic.forget(state, 0, -1L);
      boolean moving = true;
      for (int pass = 0; pass < PASSES && moving; pass++) {
        moving = logic.step(planes, state, 0, -1L);
      }
      return planes;
    }

    private long[] level(Fitted part, PinSpec pin) {
      if (pin.kind() == PinKind.SUPPLY || pin.kind() == PinKind.GROUND) {
        return constant(pin.kind() == PinKind.SUPPLY);
      }
      String net = netOf.getOrDefault(End.pin(part.label(), pin.number()).toString(), "");
      if (net.isEmpty()) {
        return part.family().openReadsHigh() ? constant(true) : unknown();
      }
      return module
          .railOf(nets.get(net).net())
          .map(rail -> constant(rail.supply()))
          .orElseGet(() -> levels.getOrDefault(net, unknown()));
    }

    private static long[] constant(boolean high) {
      return high ? new long[] {-1L, 0L} : new long[] {0L, -1L};
    }

    private static long[] unknown() {
      return new long[] {-1L, -1L};
    }

    /** Combination {@code row} in words. */
    String setting(int row) {
      List<String> words = new ArrayList<>();
      for (int i = 0; i < sources.size(); i++) {
        words.add(spoken(sources.get(i)) + (((row >>> i) & 1) == 1 ? " high" : " low"));
      }
      return String.join(", ", words);
    }

    private String spoken(String net) {
      return nets.get(net).contacts().stream().findFirst().map(c -> c.label()).orElse(net);
    }
  }
}
