package straywire.review;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import straywire.electrical.Branch;
import straywire.electrical.ElectricalTable;
import straywire.electrical.FanOut;
import straywire.electrical.NetContents;
import straywire.electrical.NetContents.Pin;
import straywire.electrical.PullDown;
import straywire.electrical.SupplyEstimate;
import straywire.logic.PinKind;
import straywire.logic.PinSpec;
import straywire.module.Contact;
import straywire.module.End;
import straywire.module.Fitted;
import straywire.module.Lamp;
import straywire.module.Module;
import straywire.module.Net;
import straywire.module.Pass;
import straywire.module.RailSegment;
import straywire.module.Timing;
import straywire.parts.Family;
import straywire.parts.Part;
import straywire.review.ReviewFact.BareLamp;
import straywire.review.ReviewFact.ContactOnNet;
import straywire.review.ReviewFact.ContactOnOutput;
import straywire.review.ReviewFact.CountedAs;
import straywire.review.ReviewFact.Electrolytic;
import straywire.review.ReviewFact.EntryCapacitor;
import straywire.review.ReviewFact.InputUse;
import straywire.review.ReviewFact.JoinedOutputs;
import straywire.review.ReviewFact.Listening;
import straywire.review.ReviewFact.Load;
import straywire.review.ReviewFact.LoadedHigh;
import straywire.review.ReviewFact.LowThroughResistor;
import straywire.review.ReviewFact.Mixing;
import straywire.review.ReviewFact.NetFact;
import straywire.review.ReviewFact.OpenInput;
import straywire.review.ReviewFact.OutputOnRail;
import straywire.review.ReviewFact.PartCapacitor;
import straywire.review.ReviewFact.PullDownOn;
import straywire.review.ReviewFact.Released;
import straywire.review.ReviewFact.SecondEntry;
import straywire.review.ReviewFact.SupplyNeed;
import straywire.review.ReviewFact.Talkers;
import straywire.review.ReviewFact.TiedTwoWay;

/** Says what the wiring review computes of a module as flat facts. Empty sockets are left out. */
final class ReviewFacts {
  /** What may hold a line through a resistor. */
  private static final Set<End.Kind> PULLING =
      EnumSet.of(End.Kind.RESISTOR, End.Kind.CONTROL, End.Kind.THROW);

  private static final ElectricalTable TABLE = ElectricalTable.shipped();
  private static final int ELECTROLYTIC_NANOFARADS = 1000;

  /** Leg counts of the packages on a board: ground at half, supply at the last. */
  private static final List<Integer> PACKAGES = List.of(8, 14, 16, 20, 24);

  private final Module module;
  private final List<NetContents> nets;
  private final PartDependence dependence = new PartDependence();
  private final Steering steering;
  private final List<ReviewFact> facts = new ArrayList<>();

  private ReviewFacts(Module module) {
    this.module = module;
    this.nets = NetContents.of(module);
    this.steering = new Steering(module, nets, dependence);
  }

  static List<ReviewFact> of(Module module, SupplyEstimate supply) {
    ReviewFacts review = new ReviewFacts(module);
    for (Fitted part : module.parts().values()) {
      if (part.fitted()) {
        review.part(part);
      }
    }
    for (NetContents net : review.nets) {
      if (net.net().onRail()) {
        review.tied(net);
      } else {
        review.net(net);
      }
    }
    module.passes().forEach(review::pass);
    review.sharedLines();
    review.facts.addAll(new ClockPaths(module, review.steering, review.nets).edges());
    review.unlinkedRails();
    review.capacitors();
    review.facts.add(
        new SupplyNeed(
            module.name(),
            supply.usualMilliamps(),
            supply.mostMilliamps(),
            supply.dropMillivolts(),
            supply.farVolts()));
    return List.copyOf(review.facts);
  }

  private void part(Fitted fitted) {
    Part part = fitted.part();
    for (PinSpec input : part.pins()) {
      if (input.kind() == PinKind.INPUT && !timed(fitted, input)) {
        boolean used =
            part.pins().stream()
                .filter(p -> p.kind().drives() && wired(fitted, p))
                .anyMatch(p -> dependence.depends(part, p.number(), input.number()));
        facts.add(new InputUse(End.pin(fitted.label(), input.number()).toString(), used));
      }
    }
    module
        .library()
        .notes(part.type())
        .ifPresent(notes -> facts.add(new OpenInput(fitted.label(), notes.openInput())));
    countedAs(fitted, PinKind.GROUND, false);
    countedAs(fitted, PinKind.SUPPLY, true);
    facts.add(
        new PartCapacitor(
            fitted.label(), module.onPaper().nanofarads(fitted.label()), TABLE.spikes(fitted)));
  }

  /** True for a leg whose wiring the timing section of the module file stands for. */
  private boolean timed(Fitted part, PinSpec pin) {
    return module.passives().timings().stream()
        .filter(t -> t.part().equals(part.label()))
        .anyMatch(
            t ->
                switch (pin.name()) {
                  case "THRES" -> true;
                  case "/TRIG" -> t instanceof Timing.Astable;
                  case "/CLK(RS)" ->
                      t instanceof Timing.Crystal || t instanceof Timing.RcOscillator;
                  default -> false;
                });
  }

  private boolean wired(Fitted part, PinSpec pin) {
    return module.netOf(End.pin(part.label(), pin.number())).isPresent();
  }

  private void countedAs(Fitted fitted, PinKind power, boolean supply) {
    Part part = fitted.part();
    int right = part.pinOf(power);
    if (right == 0 || tiedTo(fitted, right, supply)) {
      return;
    }
    for (int legs : PACKAGES) {
      int leg = supply ? legs : legs / 2;
      if (leg <= part.pinCount() && leg != right && tiedTo(fitted, leg, supply)) {
        facts.add(
            new CountedAs(
                fitted.label(),
                End.pin(fitted.label(), leg).toString(),
                legs,
                part.pinCount(),
                supply ? "supply" : "ground",
                End.pin(fitted.label(), right).toString()));
      }
    }
  }

  private boolean tiedTo(Fitted part, int pin, boolean supply) {
    return module
        .netOf(End.pin(part.label(), pin))
        .flatMap(module::railOf)
        .map(rail -> rail.supply() == supply)
        .orElse(false);
  }

  private void tied(NetContents net) {
    RailSegment segment = module.railOf(net.net()).orElseThrow();
    String rail = segment.label();
    boolean supply = segment.supply();
    for (Pin pin : net.drivers()) {
      boolean harmless = kind(pin) == PinKind.OPEN_COLLECTOR && !supply;
      if (kind(pin) != PinKind.BIDIRECTIONAL && !harmless) {
        facts.add(new OutputOnRail(pin.toString(), rail));
      }
      if (pin.spec().kind() == PinKind.BIDIRECTIONAL && steering.mayDrive(pin, !supply)) {
        facts.add(new TiedTwoWay(pin.toString(), rail));
      }
    }
    for (Lamp lamp : net.lamps()) {
      if (lamp.ohms() == 0) {
        facts.add(new BareLamp(lamp.label(), "", lamp.lightsOnHigh(), 0, 0, "", 0));
      }
    }
  }

  private void net(NetContents net) {
    List<Pin> drivers = net.drivers();
    facts.add(
        new NetFact(
            net.name(),
            drivers.size(),
            !drivers.isEmpty() && drivers.stream().allMatch(p -> kind(p) == PinKind.OPEN_COLLECTOR),
            net.inputs().size(),
            net.contacts().size() + passesOn(net),
            !net.inputs().isEmpty() || net.lamps().stream().anyMatch(Lamp::lightsOnHigh),
            net.pulls().stream().anyMatch(NetContents.Pull::toSupply),
            net.pulls().stream().anyMatch(p -> !p.toSupply()),
            net.port(),
            net.fedOhms() > 0));
    contacts(net);
    pullDowns(net);
    throughResistor(net);
    drivers.forEach(driver -> driver(net, driver));
    bareLamps(net);
    joined(net);
  }

  private int passesOn(NetContents net) {
    return (int)
        module.passes().stream()
            .filter(pass -> pass.ends().stream().anyMatch(net.net().ends()::contains))
            .count();
  }

  private static PinKind kind(Pin pin) {
    return pin.spec().kind();
  }

  /** What a contact between lines leaves open, and what it joins. */
  private void pass(Pass pass) {
    Optional<Net> thrown = module.netOf(pass.thrown());
    Optional<Net> common = module.netOf(pass.common());
    if (thrown.isEmpty() || common.isEmpty()) {
      return;
    }
    NetContents at = steering.contents(thrown.get().name());
    NetContents from = steering.contents(common.get().name());
    if (!at.net().onRail()) {
      facts.add(
          new ContactOnNet(
              pass.label(),
              at.name(),
              onSupply(from),
              !at.pulls().isEmpty() || at.port() || at.fedOhms() > 0,
              listening(at)));
    }
    if (at.net().onRail() && !from.net().onRail()) {
      outputs(pass.label(), from, onSupply(at));
    } else if (from.net().onRail() && !at.net().onRail()) {
      outputs(pass.label(), at, onSupply(from));
    } else if (!at.net().onRail()) {
      for (Pin a : at.drivers()) {
        from.drivers().forEach(b -> joined(from.name(), a, b));
      }
    }
  }

  private boolean onSupply(NetContents net) {
    return module.railOf(net.net()).map(RailSegment::supply).orElse(false);
  }

  private void contacts(NetContents net) {
    for (Contact contact : net.contacts()) {
      boolean toSupply = module.rail(contact.closesTo()).orElseThrow().supply();
      boolean changesOver =
          net.contacts().stream()
              .anyMatch(c -> c.control().equals(contact.control()) && !c.equals(contact));
      facts.add(
          new ContactOnNet(
              contact.label(),
              net.name(),
              toSupply,
              changesOver || !net.pulls().isEmpty() || net.fedOhms() > 0,
              listening(net)));
      outputs(contact.label(), net, toSupply);
    }
  }

  /** What would read a line that a contact leaves open, on it or behind resistors. */
  private Listening listening(NetContents net) {
    List<Pin> inputs = new ArrayList<>(net.inputs());
    steering.behind(net).forEach(other -> inputs.addAll(other.inputs()));
    if (inputs.stream().anyMatch(p -> p.part().family().feedsThroughInputs())) {
      return Listening.CMOS;
    }
    return inputs.isEmpty() ? Listening.NOBODY : Listening.BIPOLAR;
  }

  /** Outputs on a net that a contact takes to a rail. */
  private void outputs(String contact, NetContents net, boolean toSupply) {
    for (Pin pin : net.drivers()) {
      boolean fights =
          kind(pin) == PinKind.OPEN_COLLECTOR
              ? toSupply
              : kind(pin) != PinKind.BIDIRECTIONAL || steering.mayDrive(pin, !toSupply);
      facts.add(new ContactOnOutput(contact, pin.toString(), toSupply, fights));
    }
  }

  /** A pull-down matters where nothing else holds the line: no driver, or all may let go. */
  private void pullDowns(NetContents net) {
    boolean alwaysDriven = net.drivers().stream().anyMatch(p -> !letsGo(p));
    List<NetContents.Pull> down = net.pulls().stream().filter(p -> !p.toSupply()).toList();
    if (alwaysDriven || down.isEmpty() || down.size() < net.pulls().size()) {
      return;
    }
    double siemens = down.stream().mapToDouble(p -> 1.0 / p.ohms()).sum();
    int ohms = (int) Math.round(1 / siemens);
    String place =
        net.net().ends().stream()
            .filter(e -> PULLING.contains(e.kind()))
            .findFirst()
            .map(End::toString)
            .orElse(net.name());
    for (List<Pin> listening : net.listeners(Optional.empty()).values()) {
      Family family = listening.get(0).part().family();
      PullDown pull = PullDown.of(ohms, family, listening.size());
      facts.add(
          new PullDownOn(
              place,
              ohms,
              listening.size(),
              pull.usualVolts(),
              pull.worstVolts(),
              family.inputLowMax(),
              PullDown.mostOhms(family, listening.size())));
    }
  }

  /** Bipolar inputs that a low reaches through resistors alone. */
  private void throughResistor(NetContents net) {
    if (net.fedOhms() == 0 || !net.drivers().isEmpty() || !net.contacts().isEmpty()) {
      return;
    }
    for (List<Pin> listening : net.listeners(Optional.empty()).values()) {
      Family family = listening.get(0).part().family();
      int most = (int) PullDown.mostOhms(family, listening.size());
      if (net.fedOhms() > most) {
        PullDown low = PullDown.of(net.fedOhms(), family, listening.size());
        facts.add(
            new LowThroughResistor(
                net.name(), net.fedOhms(), most, low.usualVolts(), family.inputLowMax()));
      }
    }
  }

  private void driver(NetContents net, Pin driver) {
    FanOut load = net.fanOut(driver);
    facts.add(
        new Load(
            driver.toString(),
            load.usedLowMilliamps(),
            load.allowedLowMilliamps(),
            load.usedHighMilliamps(),
            load.allowedHighMilliamps()));
    if (kind(driver) == PinKind.OPEN_COLLECTOR) {
      return;
    }
    double volts = net.volts(driver, true);
    double sure = TABLE.rated(driver.part(), driver.spec().number(), true).volts();
    boolean lifted = net.pulls().stream().anyMatch(NetContents.Pull::toSupply);
    Family family = driver.part().family();
    for (List<Pin> listening : net.listeners(Optional.of(driver)).values()) {
      Pin listener = listening.get(0);
      Family listens = listener.part().family();
      if (!family.feedsThroughInputs() && sure < listens.inputHighMin()) {
        facts.add(
            new Mixing(
                driver.toString(),
                family.name(),
                listener.toString(),
                listens.name(),
                sure,
                volts,
                listens.inputHighMin(),
                lifted));
      }
    }
    boolean dimmed = net.lamps().stream().anyMatch(l -> l.lightsOnHigh() && l.ohms() > 0);
    boolean bare = net.lamps().stream().anyMatch(l -> l.lightsOnHigh() && l.ohms() == 0);
    if (dimmed && !bare) {
      neediest(net, driver)
          .ifPresent(
              pin ->
                  facts.add(
                      new LoadedHigh(
                          driver.toString(),
                          pin.toString(),
                          volts,
                          pin.part().family().inputHighMin(),
                          volts - pin.part().family().inputHighMin())));
    }
  }

  /** The listening pin that needs the highest high. */
  private static Optional<Pin> neediest(NetContents net, Pin driver) {
    return net.listeners(Optional.of(driver)).values().stream()
        .map(pins -> pins.get(0))
        .max(Comparator.comparing(pin -> pin.part().family().inputHighMin()));
  }

  private void bareLamps(NetContents net) {
    for (Lamp lamp : net.lamps()) {
      if (lamp.ohms() > 0) {
        continue;
      }
      // A contact to the rail that lights it leaves nothing to limit the current.
      boolean contact =
          net.contacts().stream()
              .anyMatch(
                  c -> module.rail(c.closesTo()).orElseThrow().supply() == lamp.lightsOnHigh());
      if (net.drivers().isEmpty() || contact) {
        if (contact) {
          facts.add(new BareLamp(lamp.label(), "", lamp.lightsOnHigh(), 0, 0, "", 0));
        }
        continue;
      }
      Pin driver = net.drivers().get(0);
      double volts = net.volts(driver, lamp.lightsOnHigh());
      Optional<Pin> needs = neediest(net, driver);
      facts.add(
          new BareLamp(
              lamp.label(),
              driver.toString(),
              lamp.lightsOnHigh(),
              volts,
              Math.abs(Branch.Led.of(lamp).milliamps(volts)),
              needs.map(Pin::toString).orElse(""),
              needs.map(p -> p.part().family().inputHighMin()).orElse(0.0)));
    }
  }

  /** Pairs of which one can never let go. */
  private void joined(NetContents net) {
    List<Pin> drivers = net.drivers();
    for (int i = 0; i < drivers.size(); i++) {
      for (int j = i + 1; j < drivers.size(); j++) {
        joined(net.name(), drivers.get(i), drivers.get(j));
      }
    }
  }

  private void joined(String net, Pin a, Pin b) {
    if (kind(a) == PinKind.OUTPUT || kind(b) == PinKind.OUTPUT) {
      Steering.Verdict verdict = steering.together(a, b);
      facts.add(
          new JoinedOutputs(net, a.toString(), b.toString(), verdict.together(), verdict.when()));
    }
  }

  private record Shared(Pin a, Pin b, Steering.Verdict verdict) {
    String place() {
      return a.part().label().equals(b.part().label())
          ? a.part().label()
          : a.part().label() + " and " + b.part().label();
    }
  }

  /**
   * Lines that several 3-state outputs share, and lines that may be let go, by the parts on them.
   */
  private void sharedLines() {
    Map<String, List<String>> lines = new TreeMap<>();
    Map<String, ReviewFact> first = new TreeMap<>();
    for (NetContents net : nets) {
      List<Pin> talking = net.drivers().stream().filter(ReviewFacts::letsGo).toList();
      if (net.net().onRail() || talking.size() < net.drivers().size() || talking.isEmpty()) {
        continue;
      }
      for (int i = 0; i < talking.size(); i++) {
        for (int j = i + 1; j < talking.size(); j++) {
          Pin a = talking.get(i);
          Pin b = talking.get(j);
          Shared pair = new Shared(a, b, steering.together(a, b));
          Together together = pair.verdict().together();
          String key = "talk " + pair.place() + together + pair.verdict().when();
          lines.computeIfAbsent(key, k -> new ArrayList<>()).add(net.name());
          first.putIfAbsent(key, new Talkers(pair.place(), "", together, pair.verdict().when()));
        }
      }
      released(net, talking, lines, first);
    }
    first.forEach(
        (key, fact) -> {
          String names = spoken(lines.get(key));
          if (fact instanceof Talkers t) {
            facts.add(new Talkers(t.place(), names, t.together(), t.setting()));
          } else if (fact instanceof Released r) {
            facts.add(new Released(r.place(), names, r.cmosListens()));
          }
        });
  }

  private void released(
      NetContents net,
      List<Pin> talking,
      Map<String, List<String>> lines,
      Map<String, ReviewFact> first) {
    List<Pin> listening = new ArrayList<>(net.inputs());
    if (talking.size() > 1) {
      talking.stream().filter(p -> kind(p) == PinKind.BIDIRECTIONAL).forEach(listening::add);
    }
    boolean heard = !listening.isEmpty() || net.port();
    if (!heard || !net.pulls().isEmpty() || !steering.mayAllLetGo(talking)) {
      return;
    }
    String place =
        talking.stream().map(p -> p.part().label()).distinct().collect(Collectors.joining(" and "));
    boolean cmos = listening.stream().anyMatch(p -> p.part().family().feedsThroughInputs());
    String key = "released " + place + cmos;
    lines.computeIfAbsent(key, k -> new ArrayList<>()).add(net.name());
    first.putIfAbsent(key, new Released(place, "", cmos));
  }

  private static boolean letsGo(Pin pin) {
    return kind(pin) == PinKind.TRISTATE || kind(pin) == PinKind.BIDIRECTIONAL;
  }

  private static String spoken(List<String> lines) {
    int count = lines.size();
    return count <= 3
        ? String.join(", ", lines)
        : lines.get(0) + " to " + lines.get(count - 1) + " (" + count + " lines)";
  }

  private void unlinkedRails() {
    for (boolean supply : List.of(true, false)) {
      List<String> entries =
          module.rails().stream()
              .filter(r -> r.supply() == supply && r.linkedTo().isEmpty())
              .map(RailSegment::label)
              .toList();
      entries.stream().skip(1).forEach(r -> facts.add(new SecondEntry(r, entries.get(0))));
    }
  }

  private void capacitors() {
    for (RailSegment rail : module.rails()) {
      if (rail.supply() && rail.linkedTo().isEmpty()) {
        facts.add(new EntryCapacitor(rail.label(), module.onPaper().nanofarads(rail.label())));
      }
    }
    module.onPaper().capacitorsToGround().entrySet().stream()
        .filter(c -> c.getValue() >= ELECTROLYTIC_NANOFARADS)
        .forEach(c -> facts.add(new Electrolytic(c.getKey(), c.getValue())));
  }
}
