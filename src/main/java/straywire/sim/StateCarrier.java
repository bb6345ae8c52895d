package straywire.sim;

import java.util.Arrays;
import java.util.Map;

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

  void take(LaneGroup from, long[] source, int fromLane, int toLane) {
    for (int node = 0; node < into.nodes; node++) {
      int origin = from.topology.node(vertexOfNode[node]);
      for (int kind = 0; kind < 3; kind++) {
        copy(source, kind * from.nodes + origin, fromLane, kind * into.nodes + node, toLane);
      }
      copy(source, from.unstableAt(origin), fromLane, into.unstableAt(node), toLane);
    }
    copy(source, from.shortedAt(), fromLane, into.shortedAt(), toLane);
    for (PartSeat seat : into.seats) {
      if (Lanes.has(seat.lanes, toLane)) {
        for (PartSeat other : from.seats) {
          if (other.label.equals(seat.label) && Lanes.has(other.lanes, fromLane)) {
            int length = seat.part.logic().stateLength();
            for (int i = 0; i < length; i++) {
              copy(source, other.stateAt + i, fromLane, seat.stateAt + i, toLane);
            }
          }
        }
      }
    }
  }

  private void copy(long[] source, int from, int fromLane, int to, int toLane) {
    state[to] |= (source[from] >>> fromLane & 1) << toLane;
  }

  /** The state, with the drivers worked out from what the parts see and remember. */
  long[] finish(Map<String, Boolean> controls) {
    into.refresh(state, controls);
    return state;
  }
}
