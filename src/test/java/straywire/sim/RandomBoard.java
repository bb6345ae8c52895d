package straywire.sim;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import straywire.logic.PartLogic;
import straywire.logic.PinKind;
import straywire.logic.PinSpec;
import straywire.module.ChangeOver;
import straywire.module.Contents;
import straywire.module.Control;
import straywire.module.End;
import straywire.module.Fitted;
import straywire.module.Lamp;
import straywire.module.Module;
import straywire.module.Net;
import straywire.module.OnPaper;
import straywire.module.Passives;
import straywire.module.RailSegment;
import straywire.module.Resistor;
import straywire.module.SeriesResistor;
import straywire.parts.Family;
import straywire.parts.OwnParts;
import straywire.parts.Part;
import straywire.parts.ShippedParts;

/**
 * Modules, variations and work for the hand drawn from one seed: a few parts of the library with
 * most pins on random nets, some tied to rails, some left open.
 */
final class RandomBoard {
  private static final ShippedParts PARTS = new ShippedParts();

  /** Larger memories make a slow twin slower and test nothing new. */
  private static final int MOST_CELLS = 256;

  private static final List<Part> TYPES =
      PARTS.types().stream()
          .map(t -> PARTS.part(t).orElseThrow())
          .filter(p -> p.logic().cellCount() <= MOST_CELLS)
          .toList();

  private final Random random;
  private final List<Part> types;

  /** Percent of the controls that pass on one of two lines. */
  private final int passing;

  private final TreeMap<String, Fitted> parts = new TreeMap<>();
  private final TreeMap<String, Control> controls = new TreeMap<>();
  private final TreeMap<String, Lamp> lamps = new TreeMap<>();
  private final TreeMap<String, Resistor> resistors = new TreeMap<>();
  private final TreeMap<String, SeriesResistor> series = new TreeMap<>();
  private final List<RailSegment> rails = new ArrayList<>();
  final Module module;
  final Wiring wiring;

  RandomBoard(long seed) {
    this(seed, TYPES, 0);
  }

  /** Every other part keeps what it was told without power. */
  static RandomBoard keeping(long seed) {
    return new RandomBoard(seed, withKeepers(), 0);
  }

  private static List<Part> withKeepers() {
    Part keeper =
        OwnParts.beside(PARTS, Path.of("src/test/resources/parts/keeper.yaml"))
            .part("keeper")
            .orElseThrow();
    List<Part> types = new ArrayList<>(TYPES);
    types.addAll(Collections.nCopies(TYPES.size(), keeper));
    return types;
  }

  /** Most controls pass on one of two lines; one board in four has parts that keep. */
  static RandomBoard passing(long seed) {
    return new RandomBoard(seed, seed % 4 == 0 ? withKeepers() : TYPES, 60);
  }

  private RandomBoard(long seed, List<Part> types, int passing) {
    this.types = types;
    this.passing = passing;
    random = new Random(seed);
    rails.add(new RailSegment("VCC", true, ""));
    rails.add(new RailSegment("GND", false, ""));
    if (chance(30)) {
      rails.add(new RailSegment("VCC.b", true, "VCC"));
      rails.add(new RailSegment("GND.b", false, "GND"));
    }
    int partCount = 1 + random.nextInt(5);
    for (int i = 1; i <= partCount; i++) {
      String label = "U" + i;
      parts.put(label, fitted(label, pick(types)));
    }
    int controlCount = 2 + random.nextInt(5);
    for (int i = 0; i < controlCount; i++) {
      controls.put("S" + i, control("S" + i));
    }
    int resistorCount = random.nextInt(4);
    for (int i = 0; i < resistorCount; i++) {
      resistors.put("R" + i, new Resistor("R" + i, rail(chance(70)), ohms()));
    }
    int seriesCount = random.nextInt(4);
    for (int i = 0; i < seriesCount; i++) {
      series.put("S" + i + "r", new SeriesResistor("S" + i + "r", ohms()));
    }
    int lampCount = 1 + random.nextInt(4);
    for (int i = 0; i < lampCount; i++) {
      lamps.put("L" + i, lamp("L" + i));
    }
    module =
        new Module(
            "random",
            "",
            "",
            parts,
            rails,
            nets(),
            controls,
            lamps,
            new TreeMap<>(Map.of("port", List.of("P0"))),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            PARTS,
            new Passives(resistors, series, List.of()),
            OnPaper.NOTHING);
    wiring = new Wiring(module);
  }

  private boolean chance(int percent) {
    return random.nextInt(100) < percent;
  }

  private int ohms() {
    return pick(List.of(330, 1000, 1000, 2200, 10000));
  }

  private <T> T pick(List<T> from) {
    return from.get(random.nextInt(from.size()));
  }

  private Fitted fitted(String label, Part part) {
    Family family = family();
    boolean there = !chance(3);
    return new Fitted(label, part, family, "", there, contents(part));
  }

  private Contents contents(Part part) {
    TreeMap<Integer, Long> words = new TreeMap<>();
    if (part.logic().keeps() && chance(50)) {
      PartLogic.Store store = part.logic().store().orElseThrow();
      for (int address = 0; address < store.words(); address++) {
        if (chance(80)) {
          words.put(address, random.nextLong() & (1L << store.bits()) - 1);
        }
      }
    }
    return new Contents(words);
  }

  private Family family() {
    String name = chance(50) ? "LS" : chance(50) ? "HC" : pick(PARTS.families());
    return PARTS.family(name).orElseThrow();
  }

  private String rail(boolean supply) {
    return pick(rails.stream().filter(r -> r.supply() == supply).toList()).label();
  }

  private Control control(String label) {
    if (passing > 0 && chance(passing)) {
      return new Control(
          label,
          chance(30) ? Control.Kind.BUTTON : Control.Kind.SWITCH,
          "",
          "",
          "",
          0,
          chance(50),
          Optional.of(new ChangeOver.BetweenLines(label + "a", label + "b")));
    }
    boolean closesHigh = chance(20);
    boolean pulls = !chance(15);
    return new Control(
        label,
        chance(30) ? Control.Kind.BUTTON : Control.Kind.SWITCH,
        "",
        rail(closesHigh),
        pulls ? rail(!closesHigh) : "",
        pulls ? ohms() : 0,
        chance(50),
        changeOver(label, closesHigh));
  }

  private Optional<ChangeOver> changeOver(String label, boolean closesHigh) {
    return switch (random.nextInt(5)) {
      case 0 -> Optional.of(new ChangeOver.OtherThrow(label + "b"));
      case 1 -> Optional.of(new ChangeOver.OtherRail(rail(!closesHigh)));
      default -> Optional.empty();
    };
  }

  private Lamp lamp(String label) {
    boolean toSupply = chance(20);
    return new Lamp(label, "", rail(toSupply), chance(15) ? 0 : 1000, !toSupply);
  }

  private List<Net> nets() {
    int count = 4 + random.nextInt(6 * parts.size());
    List<List<End>> ends = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      ends.add(new ArrayList<>());
    }
    Map<String, List<End>> onRails = new TreeMap<>();
    rails.forEach(r -> onRails.put(r.label(), new ArrayList<>()));
    // Outputs go to nets of their own as far as these reach, so that not everything fights.
    int free = 0;
    for (Fitted fitted : parts.values()) {
      for (PinSpec pin : fitted.part().pins()) {
        End end = End.pin(fitted.label(), pin.number());
        if (pin.kind() == PinKind.SUPPLY || pin.kind() == PinKind.GROUND) {
          if (!chance(2)) {
            onRails.get(rail(pin.kind() == PinKind.SUPPLY)).add(end);
          }
        } else if (pin.kind().drives() && free < count && chance(85)) {
          ends.get(free++).add(end);
        } else if (pin.kind() == PinKind.INPUT
            && (keeps(fitted) || passing > 0)
            && chance(keeps(fitted) ? 70 : 40)) {
          ends.get(byHand(count)).add(end);
        } else if (pin.kind() == PinKind.INPUT && chance(15)) {
          onRails.get(rail(chance(50))).add(end);
        } else if (pin.kind() == PinKind.INPUT || chance(25)) {
          if (!chance(8)) {
            pick(ends).add(end);
          }
        }
      }
    }
    boolean worked = passing > 0 || parts.values().stream().anyMatch(RandomBoard::keeps);
    int number = 0;
    for (Control control : controls.values()) {
      List<End> net = worked ? ends.get(count - 1 - number++ % count) : pick(ends);
      net.add(control.terminal());
      boolean lines = !control.passes().isEmpty();
      for (End thrown : control.terminals().subList(1, control.terminals().size())) {
        (lines && chance(30) ? onRails.get(rail(chance(50))) : pick(ends)).add(thrown);
      }
    }
    resistors.values().forEach(r -> pick(ends).add(r.end()));
    for (SeriesResistor resistor : series.values()) {
      for (End end : resistor.ends()) {
        (chance(15) ? onRails.get(rail(chance(50))) : pick(ends)).add(end);
      }
    }
    lamps.keySet().forEach(l -> pick(ends).add(new End(End.Kind.LAMP, l, 0)));
    pick(ends).add(new End(End.Kind.PORT, "P0", 0));
    List<Net> nets = new ArrayList<>();
    for (List<End> net : ends) {
      if (net.size() > 1) {
        Collections.shuffle(net, random);
        nets.add(new Net("N" + nets.size(), net, chance(70)));
      }
    }
    onRails.forEach(
        (label, net) -> {
          if (!net.isEmpty()) {
            net.add(0, new End(End.Kind.RAIL, label, 0));
            nets.add(new Net(label, net, true));
          }
        });
    return nets;
  }

  private static boolean keeps(Fitted fitted) {
    return fitted.part().logic().keeps();
  }

  /** One of the nets with a control, where modules have parts that are worth working by hand. */
  private int byHand(int nets) {
    return nets - 1 - random.nextInt(Math.min(nets, controls.size()));
  }

  /** The module as meant first, then as many others as asked for. */
  List<Variation> variations(int others) {
    List<Variation> variations = new ArrayList<>(List.of(new Variation()));
    for (int i = 0; i < others; i++) {
      Variation variation = new Variation();
      int edits = 1 + random.nextInt(3);
      for (int e = 0; e < edits; e++) {
        edit(variation);
      }
      variations.add(variation);
    }
    return variations;
  }

  private void edit(Variation variation) {
    Fitted fitted = pick(List.copyOf(parts.values()));
    int pin = 1 + random.nextInt(fitted.part().pinCount());
    if (passing > 0 && chance(40)) {
      control(variation);
      return;
    }
    PinKind kind = fitted.part().pin(pin).kind();
    switch (random.nextInt(12)) {
      case 0, 1, 2 -> variation.remove(random.nextInt(wiring.edgeCount()));
      case 3, 4, 5 -> join(variation);
      case 6, 7 -> hold(variation, fitted.label(), pin, kind);
      case 8 -> replace(variation, fitted);
      case 9 -> {
        if (fitted.contents().known()) {
          variation.program(fitted.label(), pick(List.of(Variation.ContentsFault.values())));
        } else {
          variation.unlist(fitted.label());
        }
      }
      case 10 -> control(variation);
      default -> {
        if (chance(10)) {
          variation.noLogic();
        } else {
          variation.lamp(
              pick(List.copyOf(lamps.keySet())), pick(Arrays.asList(Variation.LampFault.values())));
        }
      }
    }
  }

  private void control(Variation variation) {
    variation.control(
        pick(module.everyContact()).label(), pick(Arrays.asList(Variation.ControlFault.values())));
  }

  private void join(Variation variation) {
    int from = random.nextInt(wiring.vertexCount());
    int to = chance(15) ? wiring.rail(rail(chance(40))) : random.nextInt(wiring.vertexCount());
    if (from != to) {
      variation.join(from, to);
    }
  }

  private void hold(Variation variation, String part, int pin, PinKind kind) {
    if (kind.listens() && chance(50)) {
      variation.holdInput(part, pin, chance(50));
    } else if (kind.drives()) {
      if (chance(30)) {
        variation.killOutput(part, pin);
      } else {
        variation.holdOutput(part, pin, chance(50));
      }
    }
  }

  private void replace(Variation variation, Fitted fitted) {
    List<Part> fitting =
        types.stream().filter(p -> p.pinCount() == fitted.part().pinCount()).toList();
    if (variation.sockets.stream().noneMatch(s -> s.label().equals(fitted.label()))) {
      variation.replace(fitted.label(), pick(fitting), family());
    }
  }

  /** Some controls, each with a level. */
  Map<String, Boolean> moves() {
    Map<String, Boolean> moves = new TreeMap<>();
    int count = 1 + random.nextInt(2);
    for (int i = 0; i < count; i++) {
      moves.put(pick(List.copyOf(controls.keySet())), chance(50));
    }
    return moves;
  }

  boolean cutsPower() {
    return chance(6);
  }

  /** Some of the lanes, in any order. */
  int[] someOf(int lanes) {
    List<Integer> all = new ArrayList<>();
    for (int lane = 0; lane < lanes; lane++) {
      all.add(lane);
    }
    Collections.shuffle(all, random);
    return all.stream().limit(1 + random.nextInt(lanes)).mapToInt(Integer::intValue).toArray();
  }
}
