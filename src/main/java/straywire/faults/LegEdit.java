package straywire.faults;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import straywire.module.End;
import straywire.module.Module;

/** What is wrong with how a part sits in its rows. */
public sealed interface LegEdit extends Edit {
  /** A leg without contact to the row it should sit in. */
  record ContactOpen(End pin) implements LegEdit {
    @Override
    public void build(Building building) {
      building.variation.remove(building.wiring.contact(pin));
    }

    @Override
    public List<End> touches(Module module) {
      return List.of(pin);
    }

    @Override
    public Claim claim() {
      return Claim.of("leg", pin.toString());
    }

    @Override
    public String words(Module module) {
      return new BoardWords(module).end(pin) + " has no contact with its row";
    }

    @Override
    public String repair(Module module) {
      BoardWords board = new BoardWords(module);
      return "Lift "
          + pin.label()
          + ", straighten the leg of "
          + board.end(pin)
          + " and press the part home, in other holes if this one is worn"
          + board.where(List.of(pin));
    }

    @Override
    public List<String> seenAt(Module module) {
      return List.of("leg " + pin);
    }
  }

  /**
   * A leg that sits in the row meant for another pin of the same part.
   *
   * @param row the pin whose row it sits in; empty when it meets none
   */
  record LegElsewhere(End pin, Optional<End> row) implements LegEdit {
    @Override
    public void build(Building building) {
      building.variation.remove(building.wiring.contact(pin));
      row.ifPresent(r -> building.variation.join(building.wiring.leg(pin), building.wiring.row(r)));
    }

    @Override
    public List<End> touches(Module module) {
      List<End> touched = new ArrayList<>();
      touched.add(pin);
      row.ifPresent(touched::add);
      return touched;
    }

    @Override
    public Claim claim() {
      return Claim.of("leg", pin.toString());
    }

    @Override
    public String words(Module module) {
      BoardWords board = new BoardWords(module);
      return board.end(pin)
          + row.map(r -> " meets the wires meant for " + board.end(r)).orElse(" meets no wire");
    }

    @Override
    public String repair(Module module) {
      BoardWords board = new BoardWords(module);
      return "Bring the wires meant for "
          + board.end(pin)
          + " to that leg"
          + board.where(List.of(pin));
    }

    @Override
    public List<String> seenAt(Module module) {
      return List.of("part " + pin.label());
    }
  }

  /** Two legs across from each other in one row: the part does not straddle the trench. */
  record LegsInOneRow(End pin, End other) implements LegEdit {
    @Override
    public void build(Building building) {
      building.variation.join(building.wiring.leg(pin), building.wiring.leg(other));
    }

    @Override
    public List<End> touches(Module module) {
      return List.of(pin, other);
    }

    @Override
    public Claim claim() {
      return Claim.of("joint", pin.toString(), other.toString());
    }

    @Override
    public String words(Module module) {
      BoardWords board = new BoardWords(module);
      return board.end(pin) + " shares a row with " + board.end(other);
    }

    @Override
    public String repair(Module module) {
      return "Set " + pin.label() + " across the trench";
    }

    @Override
    public List<String> seenAt(Module module) {
      return List.of("part " + pin.label());
    }
  }
}
