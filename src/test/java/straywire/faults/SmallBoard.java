package straywire.faults;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
import straywire.module.RailSegment;
import straywire.parts.Family;
import straywire.parts.NoLogic;
import straywire.parts.Part;
import straywire.parts.PartLibrary;

/** A memory, an inverter chip and two lamps; U9 is an empty socket. Parts have no function. */
final class SmallBoard {
  static final Part MEMORY =
      part("74x189", "A0 /CS /WE D1 /O1 D2 /O2 GND /O3 D3 /O4 D4 A3 A2 A1 VCC");
  static final Part PLAIN_MEMORY =
      part("74x219", "A0 /CS /WE D1 O1 D2 O2 GND O3 D3 O4 D4 A3 A2 A1 VCC");
  static final Part INVERTERS = part("74x04", "1A 1Y 2A 2Y 3A 3Y GND 4Y 4A 5Y 5A 6Y 6A VCC");
  static final Part OLD_COUNTER =
      part("74x90", "CKB R01 R02 NC VCC R91 R92 QC QB GND QD QA NC CKA");

  static final Part NETWORK = part("network", "VCC R01 R02");

  static final Family LS = family("LS");
  static final Family HC = family("HC");

  static Module module() {
    TreeMap<String, Fitted> parts = new TreeMap<>();
    parts.put("U1", new Fitted("U1", MEMORY, LS, "", true));
    parts.put("U3", new Fitted("U3", INVERTERS, LS, "", true));
    parts.put("U4", new Fitted("U4", OLD_COUNTER, LS, "", true));
    parts.put("RN1", new Fitted("RN1", NETWORK, LS, "", true));
    parts.put("U9", new Fitted("U9", INVERTERS, LS, "", false));
    TreeMap<String, Control> controls = new TreeMap<>();
    controls.put(
        "A0", new Control("A0", Control.Kind.SWITCH, "address 1", "GND", "VCC", 1000, false));
    controls.put("write", new Control("write", Control.Kind.BUTTON, "write", "GND", "", 0, true));
    TreeMap<String, Lamp> lamps = new TreeMap<>();
    lamps.put("R1", new Lamp("R1", "memory 1", "GND", 2200, true));
    lamps.put("R0", new Lamp("R0", "memory 0", "GND", 2200, true));
    lamps.put("B0", new Lamp("B0", "", "GND", 0, true));
    TreeMap<String, List<String>> ports = new TreeMap<>();
    ports.put("bus", List.of("BUS0"));
    List<Net> nets =
        List.of(
            net("VCC", rail("VCC"), pin("U1.16"), pin("U3.14")),
            net("GND", rail("GND"), pin("U1.8"), pin("U1.2"), pin("U3.7")),
            net("GNDR", rail("GND.right"), pin("U3.13")),
            net("WRITE", new End(End.Kind.CONTROL, "write", 0), pin("U1.3")),
            net("A0", new End(End.Kind.CONTROL, "A0", 0), pin("U1.1")),
            net("N1", pin("U1.5"), pin("U3.1")),
            net("N0", pin("U1.7"), pin("U3.3")),
            net("N2", pin("U1.9"), pin("U3.5")),
            net("M1", pin("U3.2"), lamp("R1")),
            net("M0", pin("U3.4"), lamp("R0"), new End(End.Kind.PORT, "BUS0", 0)));
    return new Module(
        "small",
        "Small board",
        "",
        parts,
        List.of(
            new RailSegment("VCC", true, ""),
            new RailSegment("GND", false, ""),
            new RailSegment("GND.right", false, "GND")),
        nets,
        controls,
        lamps,
        ports,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        new Library(),
        Passives.NONE,
        OnPaper.NOTHING);
  }

  static End pin(String label) {
    int dot = label.indexOf('.');
    return End.pin(label.substring(0, dot), Integer.parseInt(label.substring(dot + 1)));
  }

  static End rail(String label) {
    return new End(End.Kind.RAIL, label, 0);
  }

  static End lamp(String label) {
    return new End(End.Kind.LAMP, label, 0);
  }

  private static Net net(String name, End... ends) {
    return new Net(name, List.of(ends), true);
  }

  private static Part part(String type, String names) {
    List<PinSpec> pins = new ArrayList<>();
    for (String name : names.split(" ")) {
      pins.add(new PinSpec(pins.size() + 1, name, kind(name)));
    }
    return new Part(type, type, "", pins, false, new NoLogic());
  }

  private static PinKind kind(String name) {
    return switch (name) {
      case "VCC" -> PinKind.SUPPLY;
      case "GND" -> PinKind.GROUND;
      case "NC" -> PinKind.NOT_CONNECTED;
      default -> name.matches("/?O\\d|\\dY|Q\\w") ? PinKind.OUTPUT : PinKind.INPUT;
    };
  }

  private static Family family(String name) {
    Family.Band band = new Family.Band(0, 0, 0);
    return new Family(name, 3, 2, 3, 2, true, false, 0.8, 2.0, band, band, band);
  }

  private SmallBoard() {}

  private record Library() implements PartLibrary {
    @Override
    public Optional<Part> part(String type) {
      return List.of(MEMORY, PLAIN_MEMORY, INVERTERS, OLD_COUNTER).stream()
          .filter(p -> p.type().equals(type))
          .findFirst();
    }

    @Override
    public Optional<Family> family(String name) {
      return List.of(LS, HC).stream().filter(f -> f.name().equals(name)).findFirst();
    }

    @Override
    public List<String> types() {
      return List.of("74x04", "74x189", "74x219", "74x90");
    }
  }
}
