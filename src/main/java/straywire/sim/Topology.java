package straywire.sim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import straywire.module.RailSegment;

/**
 * The copper of one lane group. Vertices joined in every lane fall into one node; edges present in
 * some lanes only stay edges; nodes linked by such edges form a cluster. Jumpers to a main rail
 * become rail levels at their other end, so that a rail never welds its nets into one cluster.
 */
final class Topology {
  final long used;
  final int nodeCount;
  private final int[] nodeOfVertex;

  /** Edges present in some lanes only. */
  private final int[] edgeFrom;

  private final int[] edgeTo;
  private final long[] edgeLanes;

  private final int[] clusterOfNode;
  private final int[][] clusterNodes;
  private final int[][] clusterEdges;

  /** Lanes in which a node is wired to a supply, or ground, rail that has power. */
  final long[] railHigh;

  final long[] railLow;

  /**
   * @param passing lanes in which each contact between lines is closed, in the order of {@link
   *     Wiring#passes}; such edges never weld, so that nodes are numbered alike however these stand
   */
  Topology(Wiring wiring, List<Variation> variations, long[] passing) {
    used = Lanes.first(variations.size());
    SortedMap<Long, Long> extra = new TreeMap<>();
    long[] present = new long[wiring.edgeCount()];
    Arrays.fill(present, used);
    for (int lane = 0; lane < variations.size(); lane++) {
      for (int edge : variations.get(lane).edgesOff) {
        present[edge] &= ~Lanes.bit(lane);
      }
      for (int[] ends : variations.get(lane).edgesOn) {
        extra.merge(((long) ends[0] << 32) | ends[1], Lanes.bit(lane), (a, b) -> a | b);
      }
    }
    int[] mainRail = mainRails(wiring);
    UnionFind union = new UnionFind(wiring.vertexCount());
    List<long[]> partial = new ArrayList<>();
    for (int edge = 0; edge < present.length; edge++) {
      sort(wiring.edgeFrom(edge), wiring.edgeTo(edge), present[edge], mainRail, union, partial);
    }
    extra.forEach(
        (ends, lanes) ->
            sort((int) (ends >>> 32), (int) (long) ends, lanes, mainRail, union, partial));
    for (int pass = 0; pass < passing.length; pass++) {
      if (passing[pass] != 0) {
        partial.add(
            new long[] {
              wiring.row(wiring.passes().get(pass).thrown()),
              wiring.row(wiring.passes().get(pass).common()),
              passing[pass]
            });
      }
    }

    nodeOfVertex = union.numbered();
    nodeCount = union.count();
    railHigh = new long[nodeCount];
    railLow = new long[nodeCount];
    for (int vertex = 0; vertex < mainRail.length; vertex++) {
      if (mainRail[vertex] != 0) {
        (mainRail[vertex] > 0 ? railHigh : railLow)[nodeOfVertex[vertex]] = used;
      }
    }
    List<long[]> edges = new ArrayList<>();
    for (long[] edge : partial) {
      int from = (int) edge[0];
      int to = (int) edge[1];
      if (mainRail[from] != 0 || mainRail[to] != 0) {
        feed(mainRail[from], to, edge[2]);
        feed(mainRail[to], from, edge[2]);
      } else if (nodeOfVertex[from] != nodeOfVertex[to]) {
        edges.add(new long[] {nodeOfVertex[from], nodeOfVertex[to], edge[2]});
      }
    }
    edgeFrom = edges.stream().mapToInt(e -> (int) e[0]).toArray();
    edgeTo = edges.stream().mapToInt(e -> (int) e[1]).toArray();
    edgeLanes = edges.stream().mapToLong(e -> e[2]).toArray();

    UnionFind clusters = new UnionFind(nodeCount);
    for (int edge = 0; edge < edgeFrom.length; edge++) {
      clusters.join(edgeFrom[edge], edgeTo[edge]);
    }
    clusterOfNode = clusters.numbered();
    clusterNodes = members(clusterOfNode, clusters.count());
    int[] clusterOfEdge = new int[edgeFrom.length];
    for (int edge = 0; edge < edgeFrom.length; edge++) {
      clusterOfEdge[edge] = clusterOfNode[edgeFrom[edge]];
    }
    clusterEdges = members(clusterOfEdge, clusters.count());
    spread(railHigh);
    spread(railLow);
  }

  /** An edge in all lanes welds, one to a main rail or in some lanes stays apart. */
  private void sort(
      int from, int to, long lanes, int[] mainRail, UnionFind union, List<long[]> partial) {
    if (lanes == used && mainRail[from] == 0 && mainRail[to] == 0) {
      union.join(from, to);
    } else if (lanes != 0) {
      partial.add(new long[] {from, to, lanes});
    }
  }

  private void feed(int level, int vertex, long lanes) {
    if (level != 0) {
      (level > 0 ? railHigh : railLow)[nodeOfVertex[vertex]] |= lanes;
    }
  }

  private static int[] mainRails(Wiring wiring) {
    int[] mainRail = new int[wiring.vertexCount()];
    for (RailSegment rail : wiring.module().rails()) {
      if (rail.linkedTo().isEmpty()) {
        mainRail[wiring.rail(rail.label())] = rail.supply() ? 1 : -1;
      }
    }
    return mainRail;
  }

  private static int[][] members(int[] groupOf, int groups) {
    int[] size = new int[groups];
    for (int group : groupOf) {
      size[group]++;
    }
    int[][] members = new int[groups][];
    for (int group = 0; group < groups; group++) {
      members[group] = new int[size[group]];
    }
    for (int i = groupOf.length - 1; i >= 0; i--) {
      members[groupOf[i]][--size[groupOf[i]]] = i;
    }
    return members;
  }

  int node(int vertex) {
    return nodeOfVertex[vertex];
  }

  /** Lets a mark at each node reach every node joined to it, lane by lane. */
  void spread(long[] marks) {
    for (int[] edges : clusterEdges) {
      spread(marks, edges);
    }
  }

  private void spread(long[] marks, int[] edges) {
    boolean moved = edges.length > 0;
    while (moved) {
      moved = false;
      for (int edge : edges) {
        long both = (marks[edgeFrom[edge]] | marks[edgeTo[edge]]) & edgeLanes[edge];
        long from = marks[edgeFrom[edge]] | both;
        long to = marks[edgeTo[edge]] | both;
        moved |= from != marks[edgeFrom[edge]] || to != marks[edgeTo[edge]];
        marks[edgeFrom[edge]] = from;
        marks[edgeTo[edge]] = to;
      }
    }
  }

  /** Nodes that may be joined to {@code node} in some lane, itself included, rising. */
  int[] cluster(int node) {
    return clusterNodes[clusterOfNode[node]];
  }

  /** Lanes in which each node is joined to {@code node}; marks of other clusters stay as given. */
  void reach(int node, long lanes, long[] marks) {
    int cluster = clusterOfNode[node];
    for (int member : clusterNodes[cluster]) {
      marks[member] = 0;
    }
    marks[node] = lanes;
    spread(marks, clusterEdges[cluster]);
  }
}
