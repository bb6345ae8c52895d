package straywire.faults;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import straywire.logic.PinKind;
import straywire.module.End;
import straywire.module.Fitted;
import straywire.module.Jumper;
import straywire.module.Module;
import straywire.module.Point;
import straywire.module.RailSegment;

/** Jumpers missing, moved, exchanged, past an inverter or joined to a neighbour. */
final class WireFaults {
  private final Module module;
  private final Places places;
  private final BoardWords board;

  WireFaults(Module module, Places places) {
    this.module = module;
    this.places = places;
    this.board = new BoardWords(module);
  }

  /** One jumper, or several that were forgotten together. */
  Draft jumperMissing() {
    places.needSome("a jumper");
    List<Jumper> jumpers = new ArrayList<>();
    for (int at = 0; at < places.count(); at++) {
      jumpers.add(places.jumper(at));
    }
    String names = jumpers.stream().map(Jumper::name).collect(Collectors.joining(" "));
    List<Edit> edits = jumpers.stream().<Edit>map(WireEdit.JumperRemoved::new).toList();
    Draft draft = Draft.plain(module, names, edits);
    return jumpers.size() == 1
        ? draft
        : draft.saying(
            "All of these are missing: "
                + jumpers.stream().map(board::jumper).collect(Collectors.joining(", ")));
  }

  Draft supplyJumperMissing() {
    places.need(1, "a jumper from a rail to a part's supply or ground pin");
    Jumper jumper = places.jumper(0);
    End rail = railEnd(jumper);
    End pin = other(jumper, rail);
    if (!places.powers(pin)) {
      throw places.wrong("jumper " + jumper + " does not run to a supply or ground pin");
    }
    boolean supply = places.spec(pin).kind() == PinKind.SUPPLY;
    return Draft.plain(module, jumper.name(), new WireEdit.JumperRemoved(jumper))
        .saying(
            pin.label()
                + " has no "
                + (supply ? "supply" : "ground")
                + ": the "
                + board.jumper(jumper)
                + " is missing or broken");
  }

  Draft endMoved() {
    places.need(3, "a jumper, its end as meant and the end it sits at");
    Jumper jumper = places.jumper(0);
    End end = places.endOf(jumper, 1);
    End now = places.end(2);
    if (now.equals(end)) {
      throw places.wrong("end " + end + " of jumper " + jumper + " is moved to where it is meant");
    }
    return Draft.plain(
        module, jumper + " " + end + " to " + now, new WireEdit.EndMoved(jumper, end, now));
  }

  Draft endsSwapped() {
    places.need(4, "a jumper, its end, another jumper and its end");
    List<WireEdit.EndMoved> moves = reversed(wireEnds(0));
    if (moves.isEmpty()) {
      throw places.wrong("both ends are " + places.label(1) + ", so there is nothing to exchange");
    }
    // The exchange of a with b is that of b with a: one order for both.
    moves.sort(Comparator.comparing(WireEdit.EndMoved::end));
    WireEdit.EndMoved first = moves.get(0);
    WireEdit.EndMoved second = moves.get(1);
    return Draft.plain(
            module,
            first.jumper() + " " + first.end() + " with " + second.jumper() + " " + second.end(),
            List.copyOf(moves))
        .saying(
            "The wires from "
                + board.end(other(first.jumper(), first.end()))
                + " and from "
                + board.end(other(second.jumper(), second.end()))
                + " are exchanged at "
                + board.end(first.end())
                + " and "
                + board.end(second.end()));
  }

  Draft orderReversed() {
    places.needPairs(0, 2, "two or more pairs of a jumper and its end");
    List<WireEnd> ends = wireEnds(0);
    List<WireEdit.EndMoved> moves = reversed(ends);
    if (moves.isEmpty()) {
      throw places.wrong("all ends are " + places.label(1) + ", so there is no order to reverse");
    }
    String jumpers = ends.stream().map(w -> w.jumper().name()).collect(Collectors.joining(" "));
    String at = ends.stream().map(w -> w.end().toString()).collect(Collectors.joining(" "));
    return Draft.plain(module, jumpers + " at " + at, List.copyOf(moves))
        .saying(
            "The wires from "
                + named(ends.stream().map(w -> other(w.jumper(), w.end())))
                + " sit in reverse order at "
                + named(ends.stream().map(WireEnd::end)));
  }

  Draft inverterBypassed() {
    places.needPairs(1, 1, "a part and pairs of input pin and output pin");
    String part = places.part(0).label();
    List<Edit> edits = new ArrayList<>();
    List<String> gates = new ArrayList<>();
    List<String> words = new ArrayList<>();
    List<String> repairs = new ArrayList<>();
    for (int at = 1; at < places.count(); at += 2) {
      End in = places.input(places.pinOf(part, at));
      End out = places.output(places.pinOf(part, at + 1));
      Edit joined = joined(row(in), row(out));
      if (edits.contains(joined)) {
        throw places.wrong("inverter " + in + ", " + out + " is named twice");
      }
      edits.add(joined);
      edits.add(new LegEdit.ContactOpen(out));
      gates.add(in + "-" + out);
      words.add(board.end(in) + " to " + board.end(out));
      repairs.add(
          "Take the wire past the inverter out; bring its signal to "
              + board.end(in)
              + " and take it on from "
              + board.end(out)
              + board.where(List.of(in, out))
              + ".");
    }
    return new Draft(
        String.join(" ", gates),
        edits,
        (gates.size() == 1 ? "The inverter " : "The inverters ")
            + String.join(", ", words)
            + (gates.size() == 1 ? " is" : " are")
            + " left out: "
            + (gates.size() == 1 ? "the wire runs past it" : "the wires run past them"),
        Draft.POWER_OFF + String.join(" ", repairs));
  }

  Draft wrongRail() {
    places.need(2, "a jumper to a rail and the rail segment it goes to instead");
    Jumper jumper = places.jumper(0);
    End meant = railEnd(jumper);
    RailSegment now = places.rail(1);
    if (module.rail(meant.label()).orElseThrow().supply() == now.supply()) {
      throw places.wrong(
          now.label() + " is at the same level as " + meant + ", so it is not wrong");
    }
    End other = other(jumper, meant);
    Draft draft =
        Draft.plain(
                module,
                jumper + " to " + now.label(),
                new WireEdit.EndMoved(jumper, meant, rail(now.label())))
            .saying(
                board.end(other)
                    + " is tied to "
                    + board.rail(now.label())
                    + " instead of "
                    + board.rail(meant.label()));
    return places.powers(other)
        ? draft.cured(Draft.MAY_BE_HOT + Draft.repairs(module, draft.edits()) + suspect(other))
        : draft;
  }

  /** The supply and ground jumpers of a part with these pins elsewhere, at its corners. */
  Draft supplyAtCorners() {
    places.need(1, "a part");
    Fitted fitted = places.part(0);
    End supply = End.pin(fitted.label(), fitted.part().pinOf(PinKind.SUPPLY));
    End ground = End.pin(fitted.label(), fitted.part().pinOf(PinKind.GROUND));
    int count = fitted.part().pinCount();
    if (supply.pin() == 0 || ground.pin() == 0) {
      throw places.wrong("part " + fitted.label() + " has no supply and ground");
    }
    List<Edit> edits = new ArrayList<>();
    for (Jumper jumper : module.jumpers()) {
      if (jumper.touches(supply) && supply.pin() != count) {
        edits.add(new WireEdit.EndMoved(jumper, supply, End.pin(fitted.label(), count)));
      }
      if (jumper.touches(ground) && ground.pin() != count / 2) {
        edits.add(new WireEdit.EndMoved(jumper, ground, End.pin(fitted.label(), count / 2)));
      }
    }
    if (edits.isEmpty()) {
      throw places.wrong("part " + fitted.label() + " has its supply and ground at the corners");
    }
    return new Draft(
        fitted.label(),
        edits,
        board.part(fitted.label())
            + " is supplied at its corners, as most parts are, instead of at pins "
            + supply.pin()
            + " and "
            + ground.pin(),
        Draft.MAY_BE_HOT + Draft.repairs(module, edits) + suspect(supply));
  }

  Draft bridged() {
    places.need(2, "two points");
    Point a = places.point(0);
    Point b = places.point(1);
    if (a.equals(b)) {
      throw places.wrong("a bridge joins two points, got only " + a);
    }
    Edit edit = joined(a, b);
    return Draft.plain(module, points(a, b), edit)
        .cured(
            Draft.POWER_OFF
                + "Look for a whisker, a stray strand or touching legs. "
                + edit.repair(module)
                + ".");
  }

  Draft shorted(boolean high) {
    places.need(1, "a pin");
    End pin = places.pin(0);
    if (places.powers(pin)) {
      throw places.wrong(pin + " is a supply or ground pin; a short there joins the rails");
    }
    RailSegment rail =
        module.rails().stream()
            .filter(r -> r.supply() == high && r.linkedTo().isEmpty())
            .findFirst()
            .orElseThrow(
                () -> places.wrong("the module has no " + (high ? "supply" : "ground") + " rail"));
    return new Draft(
        pin.toString(),
        List.of(joined(new Point(pin, true), new Point(rail(rail.label()), false))),
        board.end(pin) + " is shorted to " + board.rail(rail.label()),
        Draft.MAY_BE_HOT
            + "Look for a whisker or a stray wire at "
            + board.end(pin)
            + board.where(List.of(pin))
            + "; if there is none the short is inside a part on that line: exchange "
            + pin.label()
            + " first.");
  }

  /** A jumper's end, as meant. */
  private record WireEnd(Jumper jumper, End end) {}

  private List<WireEnd> wireEnds(int from) {
    List<WireEnd> ends = new ArrayList<>();
    for (int at = from; at < places.count(); at += 2) {
      Jumper jumper = places.jumper(at);
      WireEnd end = new WireEnd(jumper, places.endOf(jumper, at + 1));
      if (ends.contains(end)) {
        throw places.wrong("end " + end.end() + " of jumper " + jumper + " is named twice");
      }
      ends.add(end);
    }
    return ends;
  }

  /** Each end moves to the place of its mirror image in the list; the middle one stays. */
  private static List<WireEdit.EndMoved> reversed(List<WireEnd> ends) {
    List<WireEdit.EndMoved> moves = new ArrayList<>();
    for (int i = 0; i < ends.size(); i++) {
      End now = ends.get(ends.size() - 1 - i).end();
      if (!now.equals(ends.get(i).end())) {
        moves.add(new WireEdit.EndMoved(ends.get(i).jumper(), ends.get(i).end(), now));
      }
    }
    return moves;
  }

  private End railEnd(Jumper jumper) {
    if (jumper.from().kind() == End.Kind.RAIL) {
      return jumper.from();
    }
    if (jumper.to().kind() == End.Kind.RAIL) {
      return jumper.to();
    }
    throw places.wrong("jumper " + jumper + " does not run to a rail");
  }

  private static End other(Jumper jumper, End end) {
    return jumper.from().equals(end) ? jumper.to() : jumper.from();
  }

  private String named(Stream<End> ends) {
    return ends.map(board::end).collect(Collectors.joining(", "));
  }

  private static String suspect(End pin) {
    return " Treat " + pin.label() + " as suspect until it has been tested.";
  }

  /** A joint has no direction: the lesser point comes first, so that equal joints are equal. */
  private static Edit joined(Point a, Point b) {
    return a.compareTo(b) < 0 ? new WireEdit.JumperAdded(a, b) : new WireEdit.JumperAdded(b, a);
  }

  private static String points(Point a, Point b) {
    return a.compareTo(b) < 0 ? a + " " + b : b + " " + a;
  }

  private static Point row(End pin) {
    return new Point(pin, false);
  }

  private static End rail(String label) {
    return new End(End.Kind.RAIL, label, 0);
  }
}
