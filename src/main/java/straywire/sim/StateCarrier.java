package straywire.sim;

import java.util.Arrays;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Copies single lanes from states of one lane group into a state of another. Node levels go by
 * vertex and the memory of each part by socket and type, since every group numbers its own nodes.
 */
final class StateCarrier {
  private final LaneGroup into;
  private final long[] state;
  private final int[] vertexOfNode;

  StateCarrier(LaneGroup into) {
    this.into = into;
    state = into.emptyState();
    vertexOfNode = new int[into.nodes];
    Arrays.fill(vertexOfNode, -1);
    for (int vertex = into.wiring.vertexCount() - 1; vertex >= 0; vertex--) {
      vertexOfNode[into.topology.node(vertex)] = vertex;
    }
  }

  /**
   * Copies lanes of one source.
   *
   * @param moves which lane goes where
   */
  void take(LaneGroup from, long[] source, Moves moves) {
    for (int node = 0; node < into.nodes; node++) {
      int origin = from.topology.node(vertexOfNode[node]);
      for (int kind = 0; kind < 3; kind++) {
        copy(source[kind * from.nodes + origin], kind * into.nodes + node, moves);
      }
      copy(source[from.unstableAt(origin)], into.unstableAt(node), moves);
    }
    copy(source[from.shortedAt()], into.shortedAt(), moves);
    for (PartSeat seat : into.seats) {
      for (PartSeat other : from.seats) {
        if (seat.takesPlaceOf(other)) {
          Moves both = moves.within(other.lanes, seat.lanes);
          int length = both.isEmpty() ? 0 : seat.part.logic().stateLength();
          for (int i = 0; i < length; i++) {
            copy(source[other.stateAt + i], seat.stateAt + i, both);
          }
        }
      }
    }
  }

  /** A large memory is mostly alike in all lanes, so that few words go lane by lane. */
  private void copy(long word, int to, Moves moves) {
    long here = word & moves.fromAll;
    if (here == moves.fromAll) {
      state[to] |= moves.toAll;
    } else if (here != 0) {
      for (int i = 0; i < moves.from.length; i++) {
        state[to] |= (word >>> moves.from[i] & 1) << moves.to[i];
      }
    }
  }

  /** Lanes of one group that go to lanes of another. */
  static final class Moves {
    private final int[] from;
    private final int[] to;
    private final long fromAll;
    private final long toAll;

    /** Lane {@code from[i]} goes to lane {@code to[i]}. */
    Moves(int[] from, int[] to) {
      this.from = from;
      this.to = to;
      fromAll = all(from);
      toAll = all(to);
    }

    private static long all(int[] lanes) {
      return Arrays.stream(lanes).mapToLong(Lanes::bit).reduce(0, (a, b) -> a | b);
    }

    /** Those that leave and arrive within these lanes. */
    private Moves within(long leaving, long arriving) {
      if ((fromAll & ~leaving) == 0 && (toAll & ~arriving) == 0) {
        return this;
      }
      int[] kept =
          IntStream.range(0, from.length)
              .filter(i -> Lanes.has(leaving, from[i]) && Lanes.has(arriving, to[i]))
              .toArray();
      return new Moves(
          Arrays.stream(kept).map(i -> from[i]).toArray(),
          Arrays.stream(kept).map(i -> to[i]).toArray());
    }

    private boolean isEmpty() {
      return from.length == 0;
    }
  }

  /** The state, with the drivers worked out from what the parts see and remember. */
  long[] finish(Map<String, Boolean> controls) {
    into.refresh(state, controls);
    return state;
  }
}
