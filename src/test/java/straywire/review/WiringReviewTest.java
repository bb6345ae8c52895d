package straywire.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import straywire.module.Module;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;

/** Small modules with one thing wrong on paper, each beside a neighbour that is right. */
class WiringReviewTest {
  private static final WiringReview REVIEW = WiringReview.shipped();

  private static final String SWITCH =
      "{kind: switch, closes-to: GND, pull-to: VCC, pull-ohms: 1000}";
  private static final String BUTTON =
      "{kind: button, closes-to: GND, pull-to: VCC, pull-ohms: 10000}";
  private static final String CHANGE_OVER = BUTTON.replace("}", ", other-throw: back}");
  private static final String BETWEEN = "{kind: %s, low-throw: low, high-throw: high}";
  private static final String PULLED_DOWN =
      "{kind: switch, closes-to: VCC, pull-to: GND, pull-ohms: %d}";

  /** What goes wrong, where, and the nearly equal module where it does not. */
  private record Pair(String finding, String place, Module wrong, Module right) {}

  /** A module in short: parts as {@code U1 74x00 LS}, nets as {@code N: U1.3 U2.1}. */
  private static final class Drawing {
    private final StringBuilder parts = new StringBuilder("parts:\n");
    private final StringBuilder controls = new StringBuilder();
    private final StringBuilder lamps = new StringBuilder();
    private final StringBuilder nets = new StringBuilder("nets:\n");
    private String rest = "";

    static Drawing of(String... parts) {
      Drawing drawing = new Drawing();
      for (String part : parts) {
        String[] words = part.split(" ");
        drawing.parts.append("  %s: {type: \"%s\", family: \"%s\"}\n".formatted((Object[]) words));
      }
      return drawing;
    }

    Drawing control(String label, String fields) {
      controls.append("  ").append(label).append(": ").append(fields).append('\n');
      return this;
    }

    Drawing lamp(String label, String to, int ohms) {
      lamps.append("  %s: {to: %s, ohms: %d}\n".formatted(label, to, ohms));
      return this;
    }

    Drawing net(String net) {
      String[] named = net.split(": ");
      nets.append("  %s: [%s]\n".formatted(named[0], named[1].replace(" ", ", ")));
      return this;
    }

    Drawing with(String lines) {
      rest = lines + "\n";
      return this;
    }

    Module module() {
      String yaml =
          "format: straywire-module/1\nname: sketch\ntitle: sketch\n"
              + "rails:\n  VCC: {level: supply}\n  GND: {level: ground}\n"
              + parts
              + (controls.isEmpty() ? "" : "controls:\n" + controls)
              + (lamps.isEmpty() ? "" : "lamps:\n" + lamps)
              + rest
              + nets;
      return ModuleFile.parse("sketch.yaml", yaml, new ShippedParts());
    }
  }

  private static Pair pair(String finding, String place, Drawing wrong, Drawing right) {
    return new Pair(finding, place, wrong.module(), right.module());
  }

  private static List<Pair> pairs() {
    List<Pair> pairs = new ArrayList<>();
    supply(pairs);
    outputs(pairs);
    inputs(pairs);
    loads(pairs);
    clocks(pairs);
    quiet(pairs);
    return pairs;
  }

  private static void supply(List<Pair> pairs) {
    Drawing powered = Drawing.of("U1 74x00 LS").net("VCC: VCC U1.14").net("GND: GND U1.7");
    pairs.add(pair("SUP-01", "U1.14", Drawing.of("U1 74x00 LS").net("GND: GND U1.7"), powered));
    pairs.add(pair("SUP-02", "U1.14", Drawing.of("U1 74x00 HC").net("GND: GND U1.7"), powered));
    pairs.add(pair("SUP-03", "U1.7", Drawing.of("U1 74x00 LS").net("VCC: VCC U1.14"), powered));
    pairs.add(
        pair(
            "SUP-04",
            "U1.7",
            Drawing.of("U1 74x00 LS").net("VCC: VCC U1.7").net("GND: GND U1.14"),
            powered));
    // The inverters' ground two legs too low: leg 8 of a part with 16 legs.
    pairs.add(
        pair(
            "SUP-05",
            "U1.8",
            Drawing.of("U1 74x04 LS").net("VCC: VCC U1.14").net("GND: GND U1.8"),
            Drawing.of("U1 74x04 LS").net("VCC: VCC U1.14").net("GND: GND U1.7 U1.9")));
    pairs.add(
        pair(
            "SUP-06",
            "U1.14",
            Drawing.of("U1 74x93 LS").net("VCC: VCC U1.14").net("GND: GND U1.7"),
            Drawing.of("U1 74x93 LS").net("VCC: VCC U1.5 U1.14").net("GND: GND U1.10")));
    pairs.add(
        pair(
            "SUP-07",
            "U1.13",
            Drawing.of("U1 74x93 LS").lamp("L", "GND", 1000).net("N: U1.13 L"),
            Drawing.of("U1 74x93 LS")
                .lamp("L", "GND", 1000)
                .net("N: U1.12 L")
                .net("G: GND U1.13")));
  }

  private static void outputs(List<Pair> pairs) {
    pairs.add(
        pair(
            "DRV-01",
            "U1.3",
            Drawing.of("U1 74x00 LS").net("GND: GND U1.7 U1.3"),
            Drawing.of("U1 74x00 LS").net("GND: GND U1.7 U1.1 U1.2")));
    String to = "U1 74x245 LS";
    pairs.add(
        pair(
            "DRV-02",
            "U1.2",
            Drawing.of(to).control("dir", SWITCH).net("G: GND U1.2 U1.19").net("D: dir U1.1"),
            Drawing.of(to).net("V: VCC U1.1").net("G: GND U1.2 U1.19")));
    pairs.add(
        pair(
            "DRV-03",
            "N",
            Drawing.of("U1 74x00 LS", "U2 74x04 LS").net("N: U1.3 U1.6 U2.1"),
            Drawing.of("U1 74x05 LS", "U2 74x04 LS").net("N: U1.2 U1.4 U2.1")));
    // One of the two is a transceiver that is tied the other way, or can be turned.
    pairs.add(
        pair(
            "DRV-03",
            "N",
            Drawing.of("U1 74x04 LS", to.replace("U1", "U2"))
                .control("dir", SWITCH)
                .net("G: GND U2.19")
                .net("D: dir U2.1")
                .net("N: U1.2 U2.2"),
            Drawing.of("U1 74x04 LS", to.replace("U1", "U2"))
                .net("V: VCC U2.1")
                .net("G: GND U2.19")
                .net("N: U1.2 U2.2")));
    pairs.add(
        pair(
            "DRV-04",
            "U1 and U2",
            Drawing.of("U1 74x541 LS", "U2 74x541 LS", "U3 74x04 LS")
                .net("G: GND U1.1 U1.19 U2.1 U2.19")
                .net("N: U1.18 U2.18 U3.1"),
            twoBuffers("read", "read", true)));
    pairs.add(
        pair(
            "DRV-05",
            "U1 and U2",
            twoBuffers("read", "show", false),
            twoBuffers("read", "read", true)));
    pairs.add(pair("DRV-05", "U1 and U2", twoBuffers("read", "read", false), decoded()));
    pairs.add(
        pair(
            "DRV-06",
            "U1 and U2",
            Drawing.of("U1 74x541 LS", "U2 74x541 LS", "U3 74x30 LS", "U4 74x30 LS")
                .control("a", SWITCH)
                .with("ports:\n  far: [P1, P2, P3, P4, P5, P6, P7, P8, Q1, Q2, Q3, Q4, Q5, Q6, Q7]")
                .net("G: GND U1.19 U2.19")
                .net("A: P1 U3.1")
                .net("B: P2 U3.2")
                .net("C: P3 U3.3")
                .net("D: P4 U3.4")
                .net("E: P5 U3.5")
                .net("F: P6 U3.6")
                .net("H: P7 U3.11")
                .net("I: P8 U3.12")
                .net("J: Q1 U4.1")
                .net("K: Q2 U4.2")
                .net("L: Q3 U4.3")
                .net("M: Q4 U4.4")
                .net("O: Q5 U4.5")
                .net("X: U3.8 U1.1")
                .net("Y: U4.8 U2.1")
                .net("N: U1.18 U2.18 a"),
            decoded()));
    pairs.add(
        pair(
            "DRV-07",
            "S",
            Drawing.of("U1 74x04 LS").control("S", SWITCH).net("N: U1.2 S"),
            Drawing.of("U1 74x05 LS").control("S", SWITCH).net("N: U1.2 S")));
    pairs.add(
        pair(
            "DRV-08",
            "S",
            Drawing.of("U1 74x05 LS").control("S", PULLED_DOWN.formatted(1000)).net("N: U1.2 S"),
            Drawing.of("U1 74x05 LS").control("S", PULLED_DOWN.formatted(1000)).net("N: U1.1 S")));
    pairs.add(
        pair(
            "DRV-09",
            "N",
            Drawing.of("U1 74x05 LS", "U2 74x04 LS").net("N: U1.2 U2.1"),
            Drawing.of("U1 74x05 LS").lamp("L", "VCC", 680).net("N: U1.2 L")));
    pairs.add(
        pair(
            "DRV-10",
            "N",
            Drawing.of("U1 74x05 LS").with("ports: {out: [OUT]}").net("N: U1.2 OUT"),
            Drawing.of("U1 74x05 LS")
                .control("S", SWITCH)
                .with("ports: {out: [OUT]}")
                .net("N: U1.2 OUT S")));
    pairs.add(
        pair(
            "DRV-11",
            "U1",
            Drawing.of("U1 74x541 LS", "U2 74x04 LS")
                .control("on", SWITCH)
                .net("G: GND U1.19")
                .net("E: on U1.1")
                .net("N: U1.18 U2.1"),
            // Never let go of.
            Drawing.of("U1 74x541 LS", "U2 74x04 LS")
                .net("G: GND U1.19 U1.1")
                .net("N: U1.18 U2.1")));
    pairs.add(
        pair(
            "DRV-12",
            "U1",
            Drawing.of("U1 74x541 LS", "U2 74x04 HCT")
                .control("on", SWITCH)
                .net("G: GND U1.19")
                .net("E: on U1.1")
                .net("N: U1.18 U2.1"),
            Drawing.of("U1 74x541 LS", "U2 74x04 LS")
                .control("on", SWITCH)
                .net("G: GND U1.19")
                .net("E: on U1.1")
                .net("N: U1.18 U2.1")));
  }

  /** Two buffers on a line, enabled by {@code a} and by {@code b} or its inverse. */
  private static Drawing twoBuffers(String a, String b, boolean inverse) {
    Drawing drawing =
        Drawing.of("U1 74x541 LS", "U2 74x541 LS", "U3 74x04 LS")
            .control("read", SWITCH)
            .control("show", SWITCH)
            .net("G: GND U1.19 U2.19")
            .net("N: U1.18 U2.18 U3.1");
    if (inverse) {
      return drawing.net("A: " + a + " U1.1 U3.3").net("B: U3.4 U2.1");
    }
    return a.equals(b)
        ? drawing.net("A: " + a + " U1.1 U2.1")
        : drawing.net("A: " + a + " U1.1").net("B: " + b + " U2.1");
  }

  /** Two buffers that a decoder keeps apart. */
  private static Drawing decoded() {
    return Drawing.of("U1 74x541 LS", "U2 74x541 LS", "U3 74x138 LS", "U4 74x04 LS")
        .control("S0", SWITCH)
        .control("S1", SWITCH)
        .net("V: VCC U3.6")
        .net("G: GND U1.19 U2.19 U3.4 U3.5 U3.3")
        .net("A: S0 U3.1")
        .net("B: S1 U3.2")
        .net("X: U3.14 U1.1")
        .net("Y: U3.13 U2.1")
        .net("N: U1.18 U2.18 U4.1");
  }

  private static void inputs(List<Pair> pairs) {
    // A register whose outputs are used, with an enable, a clear and a clock left open.
    Drawing register = Drawing.of("U1 74x173 LS").lamp("L", "GND", 2200).net("N: U1.3 L");
    Drawing tied =
        Drawing.of("U1 74x173 LS")
            .control("C", BUTTON)
            .lamp("L", "GND", 2200)
            .net("N: U1.3 L")
            .net("G: GND U1.1 U1.2 U1.9 U1.10 U1.15 U1.14")
            .net("K: C U1.7");
    pairs.add(pair("OPEN-01", "U1.1", register, tied));
    pairs.add(pair("OPEN-01", "U1.15", register, tied));
    pairs.add(pair("OPEN-02", "U1.7", register, tied));
    // The other half of a double flip-flop is not used, and its clear may stay open.
    Drawing half =
        Drawing.of("U1 74x74 LS")
            .lamp("L", "GND", 2200)
            .net("N: U1.5 L")
            .net("V: VCC U1.4 U1.1 U1.2 U1.3");
    pairs.add(
        pair(
            "OPEN-01",
            "U1.13",
            Drawing.of("U1 74x74 LS").lamp("L", "GND", 2200).net("N: U1.9 L"),
            half));
    pairs.add(
        pair(
            "OPEN-03",
            "U1.2",
            Drawing.of("U1 74x00 LS").lamp("L", "GND", 2200).net("N: U1.3 L"),
            Drawing.of("U1 74x00 LS").lamp("L", "GND", 2200).net("N: U1.6 L")));
    pairs.add(
        pair(
            "OPEN-04",
            "U1.2",
            Drawing.of("U1 74x00 HC").lamp("L", "GND", 2200).net("N: U1.3 L"),
            Drawing.of("U1 74x00 LS").lamp("L", "GND", 2200).net("N: U1.3 L")));
    pairs.add(
        pair(
            "OPEN-05",
            "U1.2",
            Drawing.of("U1 74x00 HC").lamp("L", "GND", 2200).net("N: U1.6 L"),
            Drawing.of("U1 74x00 HC").lamp("L", "GND", 2200).net("N: U1.6 L").net("G: GND U1.2")));
    pairs.add(
        pair(
            "OPEN-06",
            "N",
            Drawing.of("U1 74x00 LS").net("N: U1.1 U1.4"),
            Drawing.of("U1 74x00 LS").with("ports: {in: [IN]}").net("N: U1.1 U1.4 IN")));
    String bare = "{kind: switch, closes-to: GND}";
    pairs.add(
        pair(
            "OPEN-07",
            "S",
            Drawing.of("U1 74x00 LS").control("S", bare).net("N: U1.1 S"),
            Drawing.of("U1 74x00 LS").control("S", SWITCH).net("N: U1.1 S")));
    pairs.add(
        pair(
            "OPEN-08",
            "S",
            Drawing.of("U1 74x00 LS")
                .control("S", "{kind: switch, closes-to: VCC}")
                .net("N: U1.1 S"),
            Drawing.of("U1 74x00 LS").control("S", bare).net("N: U1.1 S")));
    // A change-over between the rails needs no resistor.
    pairs.add(
        pair(
            "OPEN-08",
            "S",
            Drawing.of("U1 74x00 HC").control("S", bare).net("N: U1.1 S"),
            Drawing.of("U1 74x00 HC")
                .control("S", "{kind: switch, closes-to: GND, other-rail: VCC}")
                .net("N: U1.1 S")));
    Drawing wired =
        Drawing.of("U1 74x00 LS").control("S", SWITCH).lamp("L", "GND", 2200).net("N: U1.1 S L");
    pairs.add(
        pair(
            "OPEN-09",
            "S",
            Drawing.of("U1 74x00 LS").control("S", SWITCH).net("V: VCC U1.14"),
            wired));
    pairs.add(
        pair(
            "OPEN-10",
            "L",
            Drawing.of("U1 74x00 LS").lamp("L", "GND", 2200).net("V: VCC U1.14"),
            wired));
    pairs.add(
        pair(
            "OPEN-11",
            "back",
            Drawing.of("U1 74x00 LS").control("S", CHANGE_OVER).net("N: U1.1 S"),
            Drawing.of("U1 74x00 LS")
                .control("S", CHANGE_OVER)
                .net("N: U1.1 S")
                .net("R: U1.2 back")));
    betweenLines(pairs);
  }

  /** A change-over that passes on one of two lines. */
  private static void betweenLines(List<Pair> pairs) {
    Drawing passing =
        Drawing.of("U1 74x00 LS", "U2 74x04 LS")
            .control("S", BETWEEN.formatted("switch"))
            .net("L: U1.3 low")
            .net("H: U1.6 high")
            .net("N: S U2.1");
    String[] parts = {"U1 74x00 LS", "U2 74x04 LS"};
    pairs.add(
        pair(
            "OPEN-11",
            "high",
            Drawing.of(parts)
                .control("S", BETWEEN.formatted("switch"))
                .net("L: U1.3 low")
                .net("N: S U2.1"),
            passing));
    pairs.add(
        pair(
            "OPEN-09",
            "S",
            Drawing.of(parts)
                .control("S", BETWEEN.formatted("switch"))
                .net("L: U1.3 low")
                .net("H: U1.6 high"),
            passing));
    pairs.add(pair("OPEN-06", "N", Drawing.of(parts).net("N: U1.1 U2.1"), passing));
    pairs.add(
        pair(
            "DRV-03",
            "N",
            Drawing.of(parts)
                .control("S", BETWEEN.formatted("switch"))
                .net("L: U1.3 low")
                .net("H: U1.6 high")
                .net("N: S U2.2"),
            passing));
    pairs.add(
        pair(
            "DRV-07",
            "low",
            Drawing.of(parts)
                .control("S", BETWEEN.formatted("switch"))
                .net("G: GND low")
                .net("H: VCC high")
                .net("N: S U2.2"),
            Drawing.of(parts)
                .control("S", BETWEEN.formatted("switch"))
                .net("G: GND low")
                .net("H: VCC high")
                .net("N: S U2.1")));
    // Each throw is left open in the other position unless a resistor holds it.
    for (String family : List.of("LS", "HC")) {
      pairs.add(
          pair(
              family.equals("LS") ? "OPEN-07" : "OPEN-08",
              "low",
              Drawing.of("U1 74x00 " + family)
                  .control("S", BETWEEN.formatted("button"))
                  .net("G: GND S")
                  .net("L: U1.1 low")
                  .net("H: U1.5 high"),
              Drawing.of("U1 74x00 " + family)
                  .control("S", BETWEEN.formatted("button"))
                  .with("resistors: {R: {to: VCC, ohms: 1k}}")
                  .net("G: GND S")
                  .net("L: U1.1 low R")
                  .net("H: U1.5 high")));
    }
  }

  private static void loads(List<Pair> pairs) {
    String[] parts = {"U1 74x00 LS", "U2 74x04 74", "U3 74x04 LS"};
    pairs.add(
        pair(
            "LOAD-01",
            "U1.3",
            Drawing.of(parts).net("N: U1.3 U2.1 U2.3 U2.5 U2.9 U2.11 U2.13"),
            Drawing.of(parts).net("N: U1.3 U2.1 U2.3 U2.5 U2.9 U2.11")));
    pairs.add(
        pair(
            "LOAD-02",
            "U1.3",
            Drawing.of(parts).control("S", PULLED_DOWN.formatted(1000)).net("N: U1.3 U3.1 S"),
            Drawing.of(parts).control("S", SWITCH).net("N: U1.3 U3.1 S")));
    pairs.add(
        pair(
            "LOAD-03",
            "U1.3",
            Drawing.of("U1 74x00 LS", "U2 74x04 HC").net("N: U1.3 U2.1"),
            Drawing.of("U1 74x00 LS", "U2 74x04 HCT").net("N: U1.3 U2.1")));
    pairs.add(
        pair(
            "LOAD-04",
            "L",
            Drawing.of(parts).lamp("L", "GND", 0).net("N: U1.3 U3.1 L"),
            Drawing.of(parts).lamp("L", "GND", 1000).net("N: U1.3 U3.1 L")));
    pairs.add(
        pair(
            "LOAD-05",
            "L",
            Drawing.of(parts).lamp("L", "GND", 0).net("N: U1.3 L"),
            Drawing.of(parts).lamp("L", "GND", 0).net("N: U1.3 U3.1 L")));
    pairs.add(
        pair(
            "LOAD-06",
            "L",
            Drawing.of(parts).lamp("L", "VCC", 0).net("N: U1.3 L"),
            Drawing.of(parts).lamp("L", "VCC", 680).net("N: U1.3 L")));
    Drawing ten = Drawing.of(parts).control("S", PULLED_DOWN.formatted(10000)).net("N: S U3.1");
    Drawing three = Drawing.of(parts).control("S", PULLED_DOWN.formatted(3300)).net("N: S U3.1");
    Drawing small = Drawing.of(parts).control("S", PULLED_DOWN.formatted(470)).net("N: S U3.1");
    pairs.add(pair("LOAD-07", "S", ten, three));
    pairs.add(pair("LOAD-08", "S", three, small));
    pairs.add(pair("LOAD-07", "R", released("10k"), released("1k")));
    pairs.add(pair("OPEN-08", "B", unpulled(""), unpulled("P: {to: VCC, ohms: 10k}, ")));
    pairs.add(pair("LOAD-11", "N", behind("4k7"), behind("470")));
    // A lamp with next to no resistor leaves an LS high near 2 V, one with 2.2 k leaves 3.4.
    pairs.add(
        pair(
            "LOAD-09",
            "U1.3",
            Drawing.of(parts).lamp("L", "GND", 10).net("N: U1.3 U3.1 L"),
            Drawing.of(parts).lamp("L", "GND", 2200).net("N: U1.3 U3.1 L")));
    Drawing hungry = Drawing.of("U1 74x04 LS");
    StringBuilder lit = new StringBuilder("G: GND");
    for (int lamp = 0; lamp < 40; lamp++) {
      hungry.lamp("L" + lamp, "VCC", 33);
      lit.append(" L").append(lamp);
    }
    hungry.net(lit.toString());
    // The lamp is not to blame where the input would misread the output anyway.
    pairs.add(
        pair(
            "LOAD-03",
            "U1.3",
            Drawing.of("U1 74x00 LS", "U2 74x04 HC").lamp("L", "GND", 2200).net("N: U1.3 U2.1 L"),
            Drawing.of("U1 74x00 HC", "U2 74x04 HC").lamp("L", "GND", 2200).net("N: U1.3 U2.1 L")));
    pairs.add(pair("LOAD-10", "sketch", hungry, Drawing.of("U1 74x04 LS").net("V: VCC U1.14")));
  }

  /** A line of a buffer that may let go, held down by a resistor. */
  private static Drawing released(String ohms) {
    return Drawing.of("U1 74x541 LS", "U2 74x04 LS")
        .control("on", SWITCH)
        .with("resistors: {R: {to: GND, ohms: " + ohms + "}}")
        .net("G: GND U1.19")
        .net("E: on U1.1")
        .net("N: U1.18 U2.1 R");
  }

  /** A button that reaches an HC input through a resistor, with a pull-up there or none. */
  private static Drawing unpulled(String pull) {
    return Drawing.of("U1 74x14 HC")
        .control("B", "{kind: button, closes-to: GND}")
        .with("resistors: {" + pull + "R: {ohms: 1k}}")
        .net("L: B R.1")
        .net("N: R.2 U1.1" + (pull.isEmpty() ? "" : " P"));
  }

  /** A switch that reaches an LS input through a resistor. */
  private static Drawing behind(String ohms) {
    return Drawing.of("U1 74x04 LS")
        .control("S", SWITCH)
        .with("resistors: {R: {ohms: " + ohms + "}}")
        .net("L: S R.1")
        .net("N: R.2 U1.1");
  }

  /** A button that reaches a Schmitt inverter, and from there a clock, through a resistor. */
  private static Drawing throughResistor(String capacitors) {
    return Drawing.of("U1 74x74 LS", "U2 74x14 LS")
        .control("step", BUTTON)
        .with("resistors: {R: {ohms: 1k}}\ncapacitors-to-ground: {" + capacitors + "}")
        .net("L: step R.1")
        .net("B: R.2 U2.1")
        .net("K: U2.2 U1.3");
  }

  private static void clocks(List<Pair> pairs) {
    String[] parts = {"U1 74x74 LS", "U2 74x14 LS", "U3 74x04 LS", "U4 74x00 LS"};
    String quiet = "capacitors-to-ground: {step: 1u}";
    Drawing good =
        Drawing.of(parts)
            .control("step", BUTTON)
            .with(quiet)
            .net("B: step U2.1")
            .net("K: U2.2 U1.3");
    pairs.add(
        pair(
            "CLK-01", "step", Drawing.of(parts).control("step", BUTTON).net("K: step U1.3"), good));
    // A Schmitt inverter without a capacitor does not quiet it.
    pairs.add(
        pair(
            "CLK-01",
            "step",
            Drawing.of(parts).control("step", BUTTON).net("B: step U2.1").net("K: U2.2 U1.3"),
            good));
    // Nor does a resistor on the way; the capacitor may lie behind it.
    pairs.add(pair("CLK-01", "step", throughResistor(""), throughResistor("R.2: 1u")));
    pairs.add(pair("CLK-03", "step", throughResistor("R.2: 10n"), throughResistor("R.2: 1u")));
    // Cross-coupled gates latch: what bounces before them does not reach the clock.
    pairs.add(
        pair(
            "CLK-01",
            "step",
            Drawing.of(parts)
                .control("step", BUTTON)
                .control("back", BUTTON)
                .net("S: step U4.1")
                .net("R: back U4.5")
                .net("K: U4.3 U1.3"),
            Drawing.of(parts)
                .control("step", BUTTON)
                .control("back", BUTTON)
                .net("S: step U4.1")
                .net("R: back U4.5")
                .net("K: U4.3 U4.4 U1.3")
                .net("Q: U4.6 U4.2")));
    // The two throws of one button before the same gates.
    pairs.add(
        pair(
            "CLK-01",
            "back",
            Drawing.of(parts).control("step", CHANGE_OVER).net("K: back U1.3"),
            Drawing.of(parts)
                .control("step", CHANGE_OVER)
                .net("S: step U4.1")
                .net("R: back U4.5")
                .net("K: U4.3 U4.4 U1.3")
                .net("Q: U4.6 U4.2")));
    // The same with the common on a line of the drawing, and without the latch.
    pairs.add(
        pair(
            "CLK-01",
            "step",
            Drawing.of(parts)
                .control("step", BETWEEN.formatted("button"))
                .net("G: GND step")
                .net("S: low U4.1")
                .net("R: high U4.5")
                .net("K: U4.3 U1.3"),
            Drawing.of(parts)
                .control("step", BETWEEN.formatted("button"))
                .net("G: GND step")
                .net("S: low U4.1")
                .net("R: high U4.5")
                .net("K: U4.3 U4.4 U1.3")
                .net("Q: U4.6 U4.2")));
    // A button upstream of a switch clocks as well; the switch itself has a say.
    pairs.add(
        pair(
            "CLK-01",
            "beat",
            Drawing.of(parts)
                .control("beat", BUTTON)
                .control("S", BETWEEN.formatted("switch"))
                .net("L: beat low")
                .net("H: U4.3 high")
                .net("K: S U1.3"),
            Drawing.of(parts)
                .control("beat", BUTTON)
                .control("S", BETWEEN.formatted("switch"))
                .net("L: beat low")
                .net("H: U4.3 high")
                .net("K: S U4.4")));
    pairs.add(
        pair(
            "CLK-04",
            "S",
            Drawing.of(parts)
                .control("S", BETWEEN.formatted("switch"))
                .net("L: U4.3 low")
                .net("H: U4.6 high")
                .net("K: S U1.3"),
            Drawing.of(parts)
                .control("S", BETWEEN.formatted("switch"))
                .net("L: U4.3 low")
                .net("H: U4.6 high")
                .net("K: S U1.2")));
    pairs.add(
        pair(
            "CLK-02",
            "step",
            Drawing.of(parts)
                .control("step", BUTTON)
                .with(quiet)
                .net("B: step U3.1")
                .net("K: U3.2 U1.3"),
            good));
    pairs.add(
        pair(
            "CLK-03",
            "step",
            Drawing.of(parts)
                .control("step", BUTTON)
                .with("capacitors-to-ground: {step: 100n}")
                .net("B: step U2.1")
                .net("K: U2.2 U1.3"),
            good));
    pairs.add(
        pair(
            "CLK-04",
            "run",
            Drawing.of(parts)
                .control("run", SWITCH)
                .with("ports: {clock: [CK]}")
                .net("C: CK U4.1")
                .net("R: run U4.2")
                .net("K: U4.3 U1.3"),
            Drawing.of(parts)
                .control("run", SWITCH)
                .with("ports: {clock: [CK]}")
                .net("K: CK U1.3")
                .net("R: run U1.2")));
  }

  private static void quiet(List<Pair> pairs) {
    String[] parts = {"U1 74x00 LS", "U2 555 74"};
    Drawing all =
        Drawing.of(parts)
            .with("capacitors-to-ground: {U1: 100n, U2: 10u, VCC: 47u}")
            .net("V: VCC U1.14 U2.8");
    pairs.add(
        pair(
            "QUIET-01",
            "U2",
            Drawing.of(parts).with("capacitors-to-ground: {U1: 100n}").net("V: VCC U1.14 U2.8"),
            all));
    Drawing none = Drawing.of(parts).net("V: VCC U1.14 U2.8");
    pairs.add(pair("QUIET-02", "sketch", none, all));
    pairs.add(pair("QUIET-03", "VCC", none, all));
    pairs.add(pair("QUIET-04", "U2", none, all));
  }

  private static SortedSet<String> found(Module module) {
    SortedSet<String> found = new TreeSet<>();
    REVIEW.of(module).open().forEach(f -> found.add(f.rule() + " " + f.place()));
    return found;
  }

  @TestFactory
  Stream<DynamicTest> whatIsWrongOnPaperIsFoundAndItsNeighbourIsNot() {
    return pairs().stream()
        .map(
            pair ->
                dynamicTest(
                    pair.finding() + " at " + pair.place(),
                    () -> {
                      String finding = pair.finding() + " " + pair.place();
                      assertThat(found(pair.wrong())).contains(finding);
                      assertThat(found(pair.right())).doesNotContain(finding);
                    }));
  }

  @Test
  void everyFindingOfTheRulesIsSketched() {
    SortedSet<String> sketched = new TreeSet<>();
    pairs().forEach(pair -> sketched.add(pair.finding()));
    SortedSet<String> rules = new TreeSet<>(REVIEW.sentences().keySet());
    rules.removeIf(rule -> rule.startsWith("CARE"));
    rules.remove("SUP-08");
    assertThat(sketched).containsExactlyElementsOf(rules);
  }

  @Test
  void twoSupplySegmentsWithoutALinkAreNoted() {
    String yaml =
        """
        format: straywire-module/1
        name: sketch
        title: sketch
        rails:
          VCC: {level: supply}
          VCC.right: {level: supply}
          GND: {level: ground}
        parts:
          U1: {type: 74x00, family: LS}
        nets:
          V: [VCC, U1.14]
          W: [VCC.right, U1.1]
        """;
    Module split = ModuleFile.parse("sketch.yaml", yaml, new ShippedParts());
    assertThat(found(split)).contains("SUP-08 VCC.right").doesNotContain("SUP-08 VCC");
    String linked =
        yaml.replace("VCC.right: {level: supply}", "VCC.right: {level: supply, linked-to: VCC}");
    assertThat(found(ModuleFile.parse("sketch.yaml", linked, new ShippedParts())))
        .doesNotContain("SUP-08 VCC.right");
  }

  @Test
  void theWorstComesFirstAndTheSameEveryTime() {
    Module module =
        Drawing.of("U1 74x00 LS", "U2 74x00 LS")
            .net("V: VCC U1.7 U2.14")
            .net("G: GND U1.14")
            .net("N: U1.3 U2.1")
            .module();
    List<Finding> findings = REVIEW.of(module).open();
    assertThat(findings).isSortedAccordingTo(Finding.ORDER);
    assertThat(findings.get(0).severity()).isEqualTo(Severity.STOP);
    assertThat(REVIEW.of(module)).isEqualTo(WiringReview.shipped().of(module));
  }

  @Test
  void aBadDrawingGivesEachFindingOnce() {
    Module module = twoBuffers("read", "show", false).module();
    List<Finding> findings = REVIEW.of(module).open();
    assertThat(findings).extracting(f -> f.rule() + f.place()).doesNotHaveDuplicates();
  }

  @Test
  void aSettingInWhichTwoTalkersFightIsTold() {
    assertThat(REVIEW.of(twoBuffers("read", "show", false).module()).open())
        .filteredOn(f -> f.rule().equals("DRV-05"))
        .singleElement()
        .extracting(Finding::reason)
        .isEqualTo("Two outputs of U1 and U2 drive N together with read low, show low.");
  }

  @Test
  void resistorsOfTheModuleHoldWhatTheyHold() {
    assertThat(found(released("1k").module())).doesNotContain("DRV-11 U1");
    Drawing pulled =
        Drawing.of("U1 74x05 LS", "U2 74x04 LS")
            .with("resistors: {R: {to: VCC, ohms: 4k7}}")
            .net("N: U1.2 U2.1 R");
    assertThat(found(pulled.module())).doesNotContain("DRV-09 N");
    Drawing lifted =
        Drawing.of("U1 74x00 LS", "U2 74x04 HC")
            .with("resistors: {R: {to: VCC, ohms: 4k7}}")
            .net("N: U1.3 U2.1 R");
    assertThat(found(lifted.module())).doesNotContain("LOAD-03 U1.3");
  }

  @Test
  void theLegsThatTheTimingSectionStandsForAreNotOpen() {
    Drawing free = Drawing.of("U1 555 74").lamp("L", "GND", 1000).net("N: U1.3 L");
    assertThat(found(free.module())).contains("OPEN-03 U1.6", "OPEN-03 U1.2", "OPEN-01 U1.4");
    Drawing runs =
        Drawing.of("U1 555 74")
            .lamp("L", "GND", 1000)
            .with("timing: {U1: {r1: 10k, r2: 68k, c: 10u}}")
            .net("N: U1.3 L");
    assertThat(found(runs.module()))
        .contains("OPEN-01 U1.4")
        .doesNotContain("OPEN-03 U1.6", "OPEN-03 U1.2");
    Drawing shot =
        Drawing.of("U1 555 74")
            .lamp("L", "GND", 1000)
            .with("timing: {U1: {r: 1M, c: 100n}}")
            .net("N: U1.3 L");
    assertThat(found(shot.module())).contains("OPEN-03 U1.2").doesNotContain("OPEN-03 U1.6");
  }

  @Test
  void anOscillatorWithItsCrystalIsNotOpen() {
    Drawing bare = Drawing.of("U1 4060 HC").lamp("L", "GND", 1000).net("N: U1.3 L");
    assertThat(found(bare.module())).anyMatch(f -> f.matches("OPEN-\\d+ U1.11"));
    for (String timing : List.of("{crystal: 32.768k}", "{r: 100k, c: 1n}")) {
      Drawing runs =
          Drawing.of("U1 4060 HC")
              .lamp("L", "GND", 1000)
              .with("timing: {U1: " + timing + "}")
              .net("N: U1.3 L");
      assertThat(found(runs.module())).noneMatch(f -> f.matches("OPEN-\\d+ U1.11"));
    }
  }

  @Test
  void theBareLampIsToldWithItsVoltageAndMargin() {
    Drawing drawing =
        Drawing.of("U1 74x00 LS", "U2 74x04 HC").lamp("L", "GND", 0).net("N: U1.3 U2.1 L");
    assertThat(REVIEW.of(drawing.module()).open())
        .filteredOn(f -> f.rule().equals("LOAD-04"))
        .singleElement()
        .extracting(Finding::consequence)
        .isEqualTo("It holds the high at 2.1 V, and U2.1 needs 3.5 V: misread.");
  }

  @Test
  void aNoteThatTheFileExplainsIsNotOpenAndOneThatIsNoNoteStays() {
    String why = "explained:\n  - {finding: %s, place: %s, because: on purpose}";
    Drawing drawing =
        Drawing.of("U1 74x00 LS")
            .control("S", "{kind: switch, closes-to: GND}")
            .with(why.formatted("OPEN-07", "S"))
            .net("N: U1.1 S");
    Review review = REVIEW.of(drawing.module());
    assertThat(review.meant()).extracting(m -> m.finding().rule()).containsExactly("OPEN-07");
    assertThat(review.idle()).isEmpty();
    assertThat(found(drawing.module())).doesNotContain("OPEN-07 S");

    Drawing wrong =
        Drawing.of("U1 74x00 LS").with(why.formatted("SUP-03", "U1.7")).net("V: VCC U1.14");
    Review refused = REVIEW.of(wrong.module());
    assertThat(found(wrong.module())).contains("SUP-03 U1.7");
    assertThat(refused.meant()).isEmpty();
    assertThat(refused.idle()).hasSize(1);
  }

  @Test
  void anExplanationThatMatchesNothingIsTold() {
    Drawing drawing =
        Drawing.of("U1 74x00 LS")
            .with("explained:\n  - {finding: OPEN-07, place: S, because: on purpose}")
            .net("V: VCC U1.14");
    Review review = REVIEW.of(drawing.module());
    assertThat(review.idle()).extracting(e -> e.finding()).containsExactly("OPEN-07");
    assertThat(review.clean()).isFalse();
  }
}
