package straywire.faults;

import java.util.ArrayList;
import java.util.List;
import straywire.module.End;
import straywire.module.Jumper;
import straywire.module.Module;
import straywire.module.Point;

/** What was done wrong with wires. */
public sealed interface WireEdit extends Edit {
  /** A jumper forgotten, loose or broken inside. */
  record JumperRemoved(Jumper jumper) implements WireEdit {
    @Override
    public void build(Building building) {
      building.variation.remove(building.wiring.jumper(jumper));
    }

    @Override
    public List<End> touches(Module module) {
      return List.of(jumper.from(), jumper.to());
    }

    @Override
    public Claim claim() {
      return Claim.of("jumper", jumper.name());
    }

    @Override
    public String words(Module module) {
      return "The " + new BoardWords(module).jumper(jumper) + " is missing or broken";
    }

    @Override
    public String repair(Module module) {
      BoardWords board = new BoardWords(module);
      return "Put in a sound " + board.jumper(jumper) + board.where(touches(module));
    }

    @Override
    public List<String> seenAt(Module module) {
      return List.of("jumper " + jumper);
    }
  }

  /** Two points joined that should not be. A rail is a point, too. */
  record JumperAdded(Point from, Point to) implements WireEdit {
    @Override
    public void build(Building building) {
      building.variation.join(building.wiring.vertex(from), building.wiring.vertex(to));
    }

    @Override
    public List<End> touches(Module module) {
      return List.of(from.end(), to.end());
    }

    @Override
    public Claim claim() {
      return Claim.of("joint", from.toString(), to.toString());
    }

    @Override
    public String words(Module module) {
      BoardWords board = new BoardWords(module);
      return BoardWords.capitalised(board.point(from)) + " is joined to " + board.point(to);
    }

    @Override
    public String repair(Module module) {
      BoardWords board = new BoardWords(module);
      return "Separate "
          + board.point(from)
          + " from "
          + board.point(to)
          + board.where(touches(module));
    }

    /** Touching legs show at either leg; joined rows at the jumpers that end there. */
    @Override
    public List<String> seenAt(Module module) {
      if (from.leg() && to.leg()) {
        return List.of("leg " + from.end(), "leg " + to.end());
      }
      if (from.leg() || to.leg()) {
        return List.of();
      }
      List<String> subjects = new ArrayList<>();
      for (Jumper jumper : module.jumpers()) {
        if (jumper.touches(from.end()) || jumper.touches(to.end())) {
          subjects.add("jumper " + jumper);
        }
      }
      return subjects;
    }
  }

  /**
   * One end of a jumper in another row.
   *
   * @param end the end as meant, one of the jumper's two
   * @param now where it sits
   */
  record EndMoved(Jumper jumper, End end, End now) implements WireEdit {
    @Override
    public void build(Building building) {
      building.move(jumper, end, now);
    }

    @Override
    public List<End> touches(Module module) {
      return List.of(end, now);
    }

    @Override
    public Claim claim() {
      return Claim.of("jumper", jumper.name(), end.toString());
    }

    @Override
    public String words(Module module) {
      BoardWords board = new BoardWords(module);
      return "The "
          + board.jumper(jumper)
          + " ends at "
          + board.end(now)
          + " instead of "
          + board.end(end);
    }

    @Override
    public String repair(Module module) {
      BoardWords board = new BoardWords(module);
      return "On the wire from "
          + board.end(jumper.other(end))
          + " move the end at "
          + board.end(now)
          + " to "
          + board.end(end)
          + board.where(List.of(end));
    }

    @Override
    public List<String> seenAt(Module module) {
      return List.of("jumper " + jumper);
    }
  }
}
