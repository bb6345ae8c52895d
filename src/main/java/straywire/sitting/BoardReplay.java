package straywire.sitting;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import straywire.faults.Hypothesis;
import straywire.faults.VariationOf;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.module.Point;
import straywire.sim.BoardState;
import straywire.sim.Boards;
import straywire.sim.Lanes;
import straywire.sim.Signal;
import straywire.sim.Variation;
import straywire.sim.Wiring;
import straywire.symptoms.SymptomScores;

/** A few hypotheses, each built on its own board, worked by the entries of a log. */
final class BoardReplay {
  private final Module module;
  private final Boards boards;
  private BoardState state;

  /**
   * Power off.
   *
   * @param controls level of each control that is not at rest
   */
  BoardReplay(Wiring wiring, List<Hypothesis> hypotheses, Map<String, Boolean> controls) {
    module = wiring.module();
    VariationOf compiler = new VariationOf(wiring);
    boards = new Boards(wiring, hypotheses.stream().map(compiler::compile).toList());
    state = boards.move(boards.off(), controls);
  }

  private BoardReplay(Wiring wiring, Variation only) {
    module = wiring.module();
    boards = new Boards(wiring, List.of(only));
    state = boards.off();
  }

  /** One board, built as meant, power off, controls at rest. */
  static BoardReplay healthy(Wiring wiring) {
    return new BoardReplay(wiring, new Variation());
  }

  private BoardReplay(BoardReplay other) {
    module = other.module;
    boards = other.boards;
    state = other.state;
  }

  /** The same moment, to be worked on its own. */
  BoardReplay copy() {
    return new BoardReplay(this);
  }

  /** Does what an entry says; readings change nothing, work that was not logged forgets. */
  void act(Entry entry) {
    state =
        SymptomScores.leavesMemoryUnknown(entry)
            ? boards.forget(state)
            : boards.after(state, entry);
  }

  BoardState state() {
    return state;
  }

  /** What a lamp does on the board of hypothesis {@code lane}: 1 lit, 0 dark, ? either. */
  char mark(int lane, String lamp) {
    Boards.Glow glow = boards.glow(state, Lanes.group(lane), lamp);
    int bit = lane % Lanes.COUNT;
    return Lanes.has(glow.lit(), bit) ? '1' : Lanes.has(glow.dark(), bit) ? '0' : '?';
  }

  /** The marks of several lamps in their order. */
  String marks(int lane, List<String> lamps) {
    StringBuilder marks = new StringBuilder();
    lamps.forEach(lamp -> marks.append(mark(lane, lamp)));
    return marks.toString();
  }

  /** Lamps of all lanes of a group at once. */
  Boards.Glow glow(int group, String lamp) {
    return boards.glow(state, group, lamp);
  }

  Signal signal(int lane, Point point) {
    long[] lanes = boards.signals(state, Lanes.group(lane), point);
    List<Signal> shown = new ArrayList<>();
    for (Signal signal : Signal.values()) {
      if (Lanes.has(lanes[signal.ordinal()], lane % Lanes.COUNT)) {
        shown.add(signal);
      }
    }
    return shown.get(0);
  }

  /** Do two outputs fight anywhere on the board of this lane? */
  boolean fights(int lane) {
    for (long[] lanes : boards.allSignals(state, Lanes.group(lane))) {
      long fighting = lanes[Signal.FIGHT.ordinal()] | lanes[Signal.FIGHT_LOW.ordinal()];
      if (Lanes.has(fighting, lane % Lanes.COUNT)) {
        return true;
      }
    }
    return false;
  }
}
