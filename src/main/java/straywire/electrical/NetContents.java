package straywire.electrical;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import straywire.electrical.Currents.Rated;
import straywire.logic.PinKind;
import straywire.logic.PinSpec;
import straywire.module.Contact;
import straywire.module.End;
import straywire.module.Fitted;
import straywire.module.Lamp;
import straywire.module.Module;
import straywire.module.Net;
import straywire.module.RailSegment;
import straywire.module.Resistor;
import straywire.parts.Family;

/**
 * What hangs on one net of a module as meant, as far as currents go; empty sockets left out.
 *
 * @param drivers pins that can drive, in the order of the net
 * @param inputs pins that only listen
 * @param pulls resistors to a rail, by way of resistors between lines as well
 * @param contacts of switches and buttons
 * @param port true when another module may drive or load it
 * @param fedOhms resistors between lines by way of which an output, a contact or a port may drive
 *     it, ohms, the least of several; 0 for none
 */
public record NetContents(
    Net net,
    List<Pin> drivers,
    List<Pin> inputs,
    List<Lamp> lamps,
    List<Pull> pulls,
    List<Contact> contacts,
    boolean port,
    int fedOhms) {

  /** A pin of a part in its place. */
  public record Pin(Fitted part, PinSpec spec) {
    @Override
    public String toString() {
      return part.label() + "." + spec.number();
    }
  }

  /**
   * A resistor from the net to a rail.
   *
   * @param ohms of all on the way
   * @param beyond true when it lies beyond another net, which has it too
   */
  public record Pull(int ohms, boolean toSupply, boolean beyond) {
    Branch branch() {
      return new Branch.Resistor(ohms, toSupply ? Branch.SUPPLY_VOLTS : 0);
    }
  }

  public NetContents {
    drivers = List.copyOf(drivers);
    inputs = List.copyOf(inputs);
    lamps = List.copyOf(lamps);
    pulls = List.copyOf(pulls);
    contacts = List.copyOf(contacts);
  }

  /** All nets of a module, in the order of its file. */
  public static List<NetContents> of(Module module) {
    return module.nets().stream().map(net -> of(module, net)).toList();
  }

  private static NetContents of(Module module, Net net) {
    List<Pin> drivers = drivers(module, net);
    List<Pin> inputs = pins(module, net).filter(p -> p.spec().kind() == PinKind.INPUT).toList();
    List<Lamp> lamps =
        net.ends().stream()
            .filter(end -> end.kind() == End.Kind.LAMP)
            .map(end -> module.lamps().get(end.label()))
            .toList();
    List<Pull> pulls = new ArrayList<>(pulls(module, net, 0));
    int fedOhms = 0;
    for (Behind behind : Behind.of(module, net)) {
      Optional<RailSegment> rail = module.railOf(behind.net());
      if (rail.isPresent()) {
        pulls.add(new Pull(behind.ohms(), rail.get().supply(), behind.resistors() > 1));
      } else {
        pulls.addAll(pulls(module, behind.net(), behind.ohms()));
        boolean feeds =
            port(behind.net())
                || !contacts(module, behind.net()).isEmpty()
                || !drivers(module, behind.net()).isEmpty();
        if (feeds && (fedOhms == 0 || behind.ohms() < fedOhms)) {
          fedOhms = behind.ohms();
        }
      }
    }
    return new NetContents(
        net, drivers, inputs, lamps, pulls, contacts(module, net), port(net), fedOhms);
  }

  private static Stream<Pin> pins(Module module, Net net) {
    return net.ends().stream()
        .filter(end -> end.kind() == End.Kind.PIN)
        .filter(end -> module.parts().get(end.label()).fitted())
        .map(
            end -> {
              Fitted part = module.parts().get(end.label());
              return new Pin(part, part.part().pin(end.pin()));
            });
  }

  private static List<Pin> drivers(Module module, Net net) {
    return pins(module, net).filter(pin -> pin.spec().kind().drives()).toList();
  }

  private static List<Contact> contacts(Module module, Net net) {
    return module.contacts().stream()
        .filter(contact -> net.ends().contains(contact.terminal()))
        .toList();
  }

  private static boolean port(Net net) {
    return net.ends().stream().anyMatch(end -> end.kind() == End.Kind.PORT);
  }

  /** Resistors from a net to rails, felt through {@code ohms} more. */
  private static List<Pull> pulls(Module module, Net net, int ohms) {
    List<Pull> pulls = new ArrayList<>();
    for (Contact contact : contacts(module, net)) {
      if (contact.pullOhms() > 0) {
        pulls.add(new Pull(ohms + contact.pullOhms(), supply(module, contact.pullTo()), ohms > 0));
      }
    }
    for (Resistor resistor : module.passives().resistors().values()) {
      if (net.ends().contains(resistor.end())) {
        pulls.add(new Pull(ohms + resistor.ohms(), supply(module, resistor.to()), ohms > 0));
      }
    }
    return pulls;
  }

  private static boolean supply(Module module, String rail) {
    return module.rail(rail).map(RailSegment::supply).orElse(false);
  }

  public String name() {
    return net.name();
  }

  /** Listening pins by family: inputs, and bidirectional pins other than {@code driver}. */
  public SortedMap<String, List<Pin>> listeners(Optional<Pin> driver) {
    SortedMap<String, List<Pin>> byFamily = new TreeMap<>();
    List<Pin> listening = new ArrayList<>(inputs);
    drivers.stream()
        .filter(p -> p.spec().kind() == PinKind.BIDIRECTIONAL)
        .filter(p -> !driver.equals(Optional.of(p)))
        .forEach(listening::add);
    for (Pin pin : listening) {
      byFamily.computeIfAbsent(pin.part().family().name(), f -> new ArrayList<>()).add(pin);
    }
    return byFamily;
  }

  /** Usual voltage while {@code driver} is high or low and every other output has let go. */
  public double volts(Pin driver, boolean high) {
    List<Branch> branches = loads(Optional.of(driver));
    branches.add(
        high
            ? Branch.OutputHigh.of(driver.part(), driver.spec().number())
            : Branch.OutputLow.of(driver.part(), driver.spec().number()));
    return OperatingPoint.volts(branches);
  }

  /** Usual voltage while nothing but resistors, lamps and inputs holds the net; contacts open. */
  public double releasedVolts() {
    return OperatingPoint.volts(loads(Optional.empty()));
  }

  private List<Branch> loads(Optional<Pin> driver) {
    List<Branch> branches = new ArrayList<>();
    for (Map.Entry<String, List<Pin>> family : listeners(driver).entrySet()) {
      Family of = family.getValue().get(0).part().family();
      branches.add(new Branch.Inputs(of, family.getValue().size()));
    }
    lamps.forEach(lamp -> branches.add(Branch.Led.of(lamp)));
    pulls.forEach(pull -> branches.add(pull.branch()));
    return branches;
  }

  /** Current of a lit lamp, milliamps, its net held by the first output on it, or by a rail. */
  public double lampMilliamps(Lamp lamp) {
    double rail = lamp.lightsOnHigh() ? Branch.SUPPLY_VOLTS : 0;
    double volts = drivers.isEmpty() ? rail : volts(drivers.get(0), lamp.lightsOnHigh());
    return Math.abs(Branch.Led.of(lamp).milliamps(volts));
  }

  /**
   * What {@code driver} has to carry here, against its rating. Lamps without a resistor are left
   * out: they overload whatever drives them.
   */
  public FanOut fanOut(Pin driver) {
    ElectricalTable table = ElectricalTable.shipped();
    Rated low = table.rated(driver.part(), driver.spec().number(), false);
    Rated high = table.rated(driver.part(), driver.spec().number(), true);
    double sinks = 0;
    double sources = 0;
    for (List<Pin> family : listeners(Optional.of(driver)).values()) {
      Currents.Input input = table.currents(family.get(0).part().family()).input();
      sinks += family.size() * input.lowMilliamps();
      sources += family.size() * input.highMilliamps();
    }
    for (Lamp lamp : lamps.stream().filter(l -> l.ohms() > 0).toList()) {
      sinks -= Math.min(0, Branch.Led.of(lamp).milliamps(volts(driver, false)));
    }
    for (Pull pull : pulls) {
      sinks += pull.toSupply() ? (Branch.SUPPLY_VOLTS - low.volts()) / pull.ohms() * 1000 : 0;
      sources += pull.toSupply() ? 0 : high.volts() / pull.ohms() * 1000;
    }
    return new FanOut(sinks, low.milliamps(), sources, high.milliamps());
  }
}
