package straywire.sim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import straywire.logic.PinKind;
import straywire.logic.PinSpec;
import straywire.module.Control;
import straywire.module.End;
import straywire.module.Fitted;
import straywire.module.Lamp;
import straywire.module.Module;
import straywire.module.Net;
import straywire.module.OnPaper;
import straywire.module.Passives;
import straywire.module.Point;
import straywire.module.RailSegment;
import straywire.module.Resistor;
import straywire.module.SeriesResistor;
import straywire.parts.Part;
import straywire.parts.ShippedParts;

/**
 * A small module put together line by line. Ends are written as in a module file: {@code U1.3},
 * {@code S1}, {@code L1}, {@code VCC}; a pin may go by its name, {@code U1./WE}. Every switch
 * closes to ground against a pull-up, every lamp has its other side on ground, and every part has
 * supply and ground, unless said otherwise.
 */
final class Sketch {
  private static final ShippedParts PARTS = new ShippedParts();

  private final TreeMap<String, Fitted> parts = new TreeMap<>();
  private final TreeMap<String, Control> controls = new TreeMap<>();
  private final TreeMap<String, Resistor> resistors = new TreeMap<>();
  private final TreeMap<String, SeriesResistor> series = new TreeMap<>();
  private final TreeMap<String, Lamp> lamps = new TreeMap<>();
  private final List<RailSegment> rails = new ArrayList<>();
  private final List<Net> nets = new ArrayList<>();

  Sketch() {
    rails.add(new RailSegment("VCC", true, ""));
    rails.add(new RailSegment("GND", false, ""));
  }

  Sketch part(String label, String type, String family) {
    return fedFrom("VCC", "GND", label, type, family);
  }

  /** An empty rail name leaves that leg unwired. */
  Sketch fedFrom(String supply, String ground, String label, String type, String family) {
    Part part = PARTS.part(type).orElseThrow();
    parts.put(label, new Fitted(label, part, PARTS.family(family).orElseThrow(), "", true));
    for (PinSpec pin : part.pins()) {
      String rail = pin.kind() == PinKind.SUPPLY ? supply : ground;
      boolean fed = pin.kind() == PinKind.SUPPLY || pin.kind() == PinKind.GROUND;
      if (fed && !rail.isEmpty()) {
        wire(rail, label + "." + pin.number());
      }
    }
    return this;
  }

  /** A switch that starts at the level given. */
  Sketch control(String label, boolean level) {
    return control(new Control(label, Control.Kind.SWITCH, "", "GND", "VCC", 1000, level));
  }

  Sketch control(Control control) {
    controls.put(control.label(), control);
    return this;
  }

  /** A resistor to a rail. */
  Sketch resistor(String label, String to, int ohms) {
    resistors.put(label, new Resistor(label, to, ohms));
    return this;
  }

  /** A resistor between two lines. */
  Sketch series(String label, int ohms) {
    series.put(label, new SeriesResistor(label, ohms));
    return this;
  }

  Sketch lamp(String label, String otherSide, int ohms) {
    lamps.put(label, new Lamp(label, "", otherSide, ohms, !otherSide.equals("VCC")));
    return this;
  }

  Sketch segment(String label, String linkedTo) {
    rails.add(new RailSegment(label, linkedTo.equals("VCC"), linkedTo));
    return this;
  }

  /** Joins ends one after the other; from a rail, each to the rail. */
  Sketch wire(String... ends) {
    nets.add(new Net("N" + nets.size(), Arrays.stream(ends).map(this::end).toList(), true));
    return this;
  }

  End end(String name) {
    int dot = name.indexOf('.');
    if (dot > 0 && parts.containsKey(name.substring(0, dot))) {
      String label = name.substring(0, dot);
      String pin = name.substring(dot + 1);
      int number =
          parts
              .get(label)
              .part()
              .pinNamed(pin)
              .map(PinSpec::number)
              .orElseGet(() -> Integer.parseInt(pin));
      return End.pin(label, number);
    }
    if (dot > 0 && series.containsKey(name.substring(0, dot))) {
      int leg = Integer.parseInt(name.substring(dot + 1));
      return series.get(name.substring(0, dot)).ends().get(leg - 1);
    }
    if (controls.containsKey(name)) {
      return new End(End.Kind.CONTROL, name, 0);
    }
    if (controls.values().stream()
        .flatMap(c -> c.terminals().stream())
        .anyMatch(end -> end.label().equals(name))) {
      return new End(End.Kind.THROW, name, 0);
    }
    if (resistors.containsKey(name)) {
      return new End(End.Kind.RESISTOR, name, 0);
    }
    if (lamps.containsKey(name)) {
      return new End(End.Kind.LAMP, name, 0);
    }
    return new End(End.Kind.RAIL, name, 0);
  }

  /** The leg of a pin, its row when {@code /row} follows, or the row of any other end. */
  Point point(String name) {
    boolean row = name.endsWith("/row");
    End end = end(row ? name.substring(0, name.length() - 4) : name);
    return new Point(end, !row && end.kind() == End.Kind.PIN);
  }

  Wiring wiring() {
    return new Wiring(
        new Module(
            "sketch",
            "",
            "",
            parts,
            rails,
            nets,
            controls,
            lamps,
            new TreeMap<>(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            PARTS,
            new Passives(resistors, series, List.of()),
            OnPaper.NOTHING));
  }

  /** Switched on as meant. */
  Running on() {
    return on(new Variation());
  }

  Running on(Variation variation) {
    return new Running(new Boards(wiring(), List.of(variation)));
  }

  static Part type(String type) {
    return PARTS.part(type).orElseThrow();
  }

  static straywire.parts.Family family(String name) {
    return PARTS.family(name).orElseThrow();
  }

  /** The sketch built once and under power. */
  final class Running {
    final Boards boards;
    private BoardState state;

    private Running(Boards boards) {
      this.boards = boards;
      state = boards.powerUp(boards.off());
    }

    BoardState state() {
      return state;
    }

    Running set(String control, boolean high) {
      return set(Map.of(control, high));
    }

    Running set(Map<String, Boolean> levels) {
      state = boards.move(state, levels);
      return this;
    }

    /** Low, then high. */
    Running pulse(String control) {
      return set(control, false).set(control, true);
    }

    Running powerCycle() {
      return powerCycle(Map.of());
    }

    /** Switches moved while the power is off. */
    Running powerCycle(Map<String, Boolean> meanwhile) {
      state = boards.powerUp(boards.move(boards.powerDown(state), meanwhile));
      return this;
    }

    Signal at(String point) {
      long[] lanes = boards.signals(state, 0, Sketch.this.point(point));
      for (Signal signal : Signal.values()) {
        if (lanes[signal.ordinal()] != 0) {
          return signal;
        }
      }
      throw new AssertionError("no signal at " + point);
    }

    /** lit, dark, or either. */
    String lamp(String label) {
      Boards.Glow glow = boards.glow(state, 0, label);
      return glow.lit() != 0 ? "lit" : glow.dark() != 0 ? "dark" : "either";
    }

    /** The outputs as a number, high bit first; what is not high counts as 0. */
    int number(String... outputs) {
      int number = 0;
      for (String output : outputs) {
        number = 2 * number + (at(output) == Signal.HIGH ? 1 : 0);
      }
      return number;
    }

    boolean joined(String from, String to) {
      Point a = Sketch.this.point(from);
      return boards.joined(0, a, Sketch.this.point(to), state.controls()) != 0;
    }

    /** What an unknown level shows, such as {@code U1 cell 5 inverted}; empty when nothing. */
    List<String> shownAt(String point) {
      List<String> shown = new ArrayList<>();
      boards.trace(
          state,
          0,
          Sketch.this.point(point),
          1,
          (label, part, cell, inverted, lanes) -> {
            if (lanes != 0) {
              shown.add(label + " cell " + cell + (inverted ? " inverted" : ""));
            }
          });
      return shown;
    }
  }
}
