package straywire.sim;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import straywire.faults.ChipEdit;
import straywire.faults.ControlEdit;
import straywire.faults.Edit;
import straywire.faults.LampEdit;
import straywire.faults.LegEdit;
import straywire.faults.WireEdit;
import straywire.logic.PinKind;
import straywire.logic.PinSpec;
import straywire.module.Control;
import straywire.module.End;
import straywire.module.Fitted;
import straywire.module.Jumper;
import straywire.module.Lamp;
import straywire.module.Module;
import straywire.module.Point;

/**
 * A module as built under some edits, written out as structural Verilog: one wire for all copper
 * that hangs together, one instance for each part, switch and lamp. Goes from the edits straight to
 * text and shares nothing with the simulation; the parts are the ones of {@code
 * src/test/resources/verilog}.
 */
final class VerilogBoard {
  private record PartModule(String name, String parameters) {}

  private static final Map<String, PartModule> PART_MODULES =
      Map.of(
          "74x189", new PartModule("ram", ".COMPLEMENT(1)"),
          "74x219", new PartModule("ram", ".COMPLEMENT(0)"),
          "74x04", new PartModule("six_gates", ".KIND(\"NOT\")"),
          "74x14", new PartModule("six_gates", ".KIND(\"NOT\")"),
          "74x05", new PartModule("six_gates", ".KIND(\"OPEN_NOT\")"),
          "74x07", new PartModule("six_gates", ".KIND(\"OPEN_SAME\")"),
          "74x245", new PartModule("transceiver", ""));

  private final Module module;
  private final List<String> shorting = new ArrayList<>();
  private final Map<String, Boolean> rails = new HashMap<>();
  private final Set<String> onSupply = new HashSet<>();
  private final Set<String> onGround = new HashSet<>();
  private final Map<String, String> wireOf = new HashMap<>();
  private final Map<String, List<String>> joined = new LinkedHashMap<>();
  private final List<String> lines = new ArrayList<>();
  private final Map<End, Boolean> heldOutputs = new TreeMap<>();
  private final Map<End, Boolean> heldInputs = new TreeMap<>();
  private final Set<End> cutOutputs = new HashSet<>();
  private final Map<String, ChipEdit.PartReplaced> replaced = new TreeMap<>();
  private final Map<String, ControlEdit.ControlFault> controlFaults = new TreeMap<>();
  private final Set<String> darkLamps = new HashSet<>();

  private VerilogBoard(Module module) {
    this.module = module;
  }

  /**
   * The text of a module named {@code name} with the controls' contacts as inputs (1 is closed) and
   * the lamps as outputs (1 is lit), both named as on the board.
   *
   * @throws IllegalArgumentException for an edit or part type that has no Verilog here
   */
  static String text(Module module, List<Edit> edits, String name) {
    return new VerilogBoard(module).write(edits, name);
  }

  private String write(List<Edit> edits, String name) {
    module.rails().forEach(r -> rails.put(row(new End(End.Kind.RAIL, r.label(), 0)), r.supply()));
    lay(edits);
    module.parts().values().forEach(this::part);
    module.controls().values().forEach(this::control);
    module.lamps().values().forEach(this::lamp);
    lines.add(0, "wire alive;");
    // Every control of the modules written here closes to ground.
    boolean joined = onSupply.stream().anyMatch(onGround::contains);
    lines.add("assign alive = ~(1'b" + (joined ? 1 : 0) + String.join("", shorting) + ");");
    return framed(name);
  }

  private void lay(List<Edit> edits) {
    Map<Jumper, List<End>> jumpers = new LinkedHashMap<>();
    module.jumpers().forEach(j -> jumpers.put(j, new ArrayList<>(List.of(j.from(), j.to()))));
    Set<End> lifted = new HashSet<>();
    edits.forEach(edit -> apply(edit, jumpers, lifted));
    jumpers.values().forEach(ends -> join(row(ends.get(0)), row(ends.get(1))));
    for (Fitted fitted : module.parts().values()) {
      for (PinSpec pin : fitted.part().pins()) {
        End end = End.pin(fitted.label(), pin.number());
        if (!lifted.contains(end)) {
          join(leg(end), row(end));
        }
      }
    }
  }

  private void apply(Edit edit, Map<Jumper, List<End>> jumpers, Set<End> lifted) {
    if (edit instanceof WireEdit.JumperRemoved e) {
      jumpers.remove(e.jumper());
    } else if (edit instanceof WireEdit.JumperAdded e) {
      join(e.from().toString(), e.to().toString());
    } else if (edit instanceof LegEdit.LegsInOneRow e) {
      join(leg(e.pin()), leg(e.other()));
    } else if (edit instanceof WireEdit.EndMoved e) {
      jumpers.get(e.jumper()).set(e.jumper().from().equals(e.end()) ? 0 : 1, e.now());
    } else if (edit instanceof LegEdit.ContactOpen e) {
      lifted.add(e.pin());
    } else if (edit instanceof LegEdit.LegElsewhere e) {
      lifted.add(e.pin());
      e.row().ifPresent(r -> join(leg(e.pin()), row(r)));
    } else if (edit instanceof ChipEdit.OutputHeld e) {
      heldOutputs.put(e.pin(), e.high());
    } else if (edit instanceof ChipEdit.OutputDead e) {
      cutOutputs.add(e.pin());
    } else if (edit instanceof ChipEdit.InputHeld e) {
      heldInputs.put(e.pin(), e.high());
    } else if (edit instanceof ChipEdit.PartReplaced e) {
      replaced.put(e.part(), e);
    } else if (edit instanceof ControlEdit.ControlChanged e) {
      controlFaults.put(e.contact(), e.fault());
    } else if (edit instanceof LampEdit.LampChanged e) {
      // A bare LED among LS parts changes levels, but no logic.
      if (e.fault() != LampEdit.LampFault.NO_RESISTOR) {
        darkLamps.add(e.lamp());
      }
    } else {
      throw new IllegalArgumentException("No Verilog for " + edit);
    }
  }

  private static String leg(End pin) {
    return new Point(pin, true).toString();
  }

  private static String row(End end) {
    return new Point(end, false).toString();
  }

  private void join(String a, String b) {
    joined.computeIfAbsent(a, k -> new ArrayList<>()).add(b);
    joined.computeIfAbsent(b, k -> new ArrayList<>()).add(a);
  }

  /** The wire of a point, with all the copper that hangs on it; a rail only feeds it. */
  private String wire(String point) {
    if (!wireOf.containsKey(point)) {
      String wire = "n" + wireOf.size();
      lines.add("wire " + wire + ";  // " + point);
      name(point, wire);
      if (onSupply.contains(wire)) {
        lines.add("rail #(.SUPPLY(1)) " + wire + "_supply (" + wire + ");");
      }
      if (onGround.contains(wire)) {
        lines.add("rail #(.SUPPLY(0)) " + wire + "_ground (" + wire + ");");
      }
    }
    return wireOf.get(point);
  }

  private void name(String point, String wire) {
    if (rails.containsKey(point)) {
      (rails.get(point) ? onSupply : onGround).add(wire);
    } else if (wireOf.putIfAbsent(point, wire) == null) {
      joined.getOrDefault(point, List.of()).forEach(next -> name(next, wire));
    }
  }

  private void part(Fitted fitted) {
    String type = fitted.part().type();
    String family = fitted.family().name();
    if (replaced.containsKey(fitted.label())) {
      type = replaced.get(fitted.label()).type();
      family = replaced.get(fitted.label()).family();
    }
    PartModule known = PART_MODULES.get(type);
    if (known == null || !Set.of("LS", "HC").contains(family)) {
      throw new IllegalArgumentException("No Verilog for a " + type + " of family " + family);
    }
    List<String> ports = new ArrayList<>();
    for (PinSpec pin : fitted.part().pins()) {
      if (pin.kind().drives() || pin.kind().listens()) {
        End end = End.pin(fitted.label(), pin.number());
        ports.add(".p" + pin.number() + "(" + portWire(end, family, fitted.part().bus()) + ")");
      }
    }
    if (known.name().equals("ram")) {
      ports.add(".alive(alive)");
    }
    String feed = feed(fitted);
    if (family.equals("HC") && !feed.equals("FULL")) {
      throw new IllegalArgumentException("No Verilog for an HC part without supply");
    }
    lines.add(
        "%s #(.FAMILY(\"%s\"), .FEED(\"%s\")%s) %s (%s);"
            .formatted(
                known.name(),
                family,
                feed,
                known.parameters().isEmpty() ? bothWays(fitted.label()) : ", " + known.parameters(),
                fitted.label(),
                String.join(", ", ports)));
  }

  /** Of a pin that is input and output one stage may be broken while the other works. */
  private String bothWays(String label) {
    long low = 0;
    long high = 0;
    long cut = 0;
    for (PinSpec pin : module.parts().get(label).part().pins()) {
      End end = End.pin(label, pin.number());
      long bit = 1L << (pin.number() - 1);
      if (pin.kind() == PinKind.BIDIRECTIONAL) {
        low |= Boolean.FALSE.equals(heldInputs.get(end)) ? bit : 0;
        high |= Boolean.TRUE.equals(heldInputs.get(end)) ? bit : 0;
        cut |= cutOutputs.contains(end) || heldOutputs.containsKey(end) ? bit : 0;
      }
    }
    return ", .LOW(20'd%d), .HIGH(20'd%d), .CUT(20'd%d)".formatted(low, high, cut);
  }

  private String portWire(End pin, String family, boolean bus) {
    String onBoard = wire(leg(pin));
    if (heldOutputs.containsKey(pin)) {
      lines.add(
          "held_pin #(.FAMILY(\"%s\"), .BUS(%d), .HIGH(%d)) %s_%d_held (%s);"
              .formatted(
                  family,
                  bus ? 1 : 0,
                  heldOutputs.get(pin) ? 1 : 0,
                  pin.label(),
                  pin.pin(),
                  onBoard));
    }
    if (module.parts().get(pin.label()).part().pin(pin.pin()).kind() == PinKind.BIDIRECTIONAL) {
      return onBoard;
    }
    if (heldInputs.containsKey(pin)) {
      return heldInputs.get(pin) ? "1'b1" : "1'b0";
    }
    if (!cutOutputs.contains(pin) && !heldOutputs.containsKey(pin)) {
      return onBoard;
    }
    String inside = pin.label() + "_" + pin.pin() + "_inside";
    lines.add("wire " + inside + ";");
    return inside;
  }

  private String feed(Fitted fitted) {
    String supply = wire(leg(End.pin(fitted.label(), fitted.part().pinOf(PinKind.SUPPLY))));
    String ground = wire(leg(End.pin(fitted.label(), fitted.part().pinOf(PinKind.GROUND))));
    if (!onSupply.contains(supply) || onGround.contains(supply) || onSupply.contains(ground)) {
      return "NONE";
    }
    return onGround.contains(ground) ? "FULL" : "NO_GROUND";
  }

  private void control(Control control) {
    ControlEdit.ControlFault fault = controlFaults.get(control.label());
    String closed = "closed_" + control.label();
    if (fault == ControlEdit.ControlFault.CONTACT_NEVER_CLOSES) {
      closed = "1'b0";
    } else if (fault == ControlEdit.ControlFault.CONTACT_ALWAYS_CLOSED) {
      closed = "1'b1";
    }
    String wire = wire(row(new End(End.Kind.CONTROL, control.label(), 0)));
    if (onSupply.contains(wire)) {
      shorting.add(" | " + closed);
    }
    lines.add(
        "control #(.PULL(%d)) control_%s (%s, %s);"
            .formatted(
                fault == ControlEdit.ControlFault.PULL_MISSING ? 0 : 1,
                control.label(),
                wire,
                closed));
  }

  private void lamp(Lamp lamp) {
    String label = lamp.label();
    lines.add(
        darkLamps.contains(label)
            ? "assign lamp_" + label + " = 1'b0;"
            : "lamp show_%s (%s, alive, lamp_%s);"
                .formatted(label, wire(row(new End(End.Kind.LAMP, label, 0))), label));
  }

  private String framed(String name) {
    List<String> ports = new ArrayList<>();
    module.controls().keySet().forEach(c -> ports.add("input closed_" + c));
    module.lamps().keySet().forEach(l -> ports.add("output lamp_" + l));
    return "module %s (%s);%n  %s%nendmodule%n"
        .formatted(name, String.join(", ", ports), String.join("\n  ", lines));
  }
}
