package straywire.sim;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import straywire.module.End;
import straywire.module.Fitted;
import straywire.module.Jumper;
import straywire.module.Lamp;
import straywire.module.Module;
import straywire.module.Pass;
import straywire.module.Point;
import straywire.module.RailSegment;

/**
 * The module as meant, as a graph: a vertex for every leg and every row, an edge for every contact,
 * jumper and rail link. Vertices and edges are numbered from 0 in the order of the module file.
 */
public final class Wiring {
  private final Module module;
  private final Map<Point, Integer> vertices = new HashMap<>();
  private final Map<End, Integer> contacts = new HashMap<>();
  private final Map<Jumper, Integer> jumpers = new HashMap<>();
  private final Map<String, Integer> links = new HashMap<>();
  private final List<Point> points = new ArrayList<>();
  private final List<int[]> edges = new ArrayList<>();
  private final List<Pass> passes;

  public Wiring(Module module) {
    this.module = module;
    passes = module.passes();
    for (RailSegment rail : module.rails()) {
      addRow(new End(End.Kind.RAIL, rail.label(), 0));
    }
    for (Fitted fitted : module.parts().values()) {
      for (int pin = 1; pin <= fitted.part().pinCount(); pin++) {
        End end = End.pin(fitted.label(), pin);
        addRow(end);
        addVertex(new Point(end, true));
        if (fitted.fitted()) {
          contacts.put(end, addEdge(leg(end), row(end)));
        }
      }
    }
    module.terminals().forEach(this::addRow);
    for (Lamp lamp : module.lamps().values()) {
      addRow(new End(End.Kind.LAMP, lamp.label(), 0));
    }
    module.passives().ends().forEach(this::addRow);
    module
        .ports()
        .values()
        .forEach(lines -> lines.forEach(line -> addRow(new End(End.Kind.PORT, line, 0))));
    for (Jumper jumper : module.jumpers()) {
      jumpers.put(jumper, addEdge(row(jumper.from()), row(jumper.to())));
    }
    for (RailSegment rail : module.rails()) {
      if (!rail.linkedTo().isEmpty()) {
        links.put(rail.label(), addEdge(rail(rail.label()), rail(rail.linkedTo())));
      }
    }
  }

  private void addRow(End end) {
    addVertex(new Point(end, false));
  }

  private void addVertex(Point point) {
    vertices.put(point, points.size());
    points.add(point);
  }

  private int addEdge(int from, int to) {
    edges.add(new int[] {from, to});
    return edges.size() - 1;
  }

  public Module module() {
    return module;
  }

  /** Contacts of change-overs between lines: edges that come and go. */
  List<Pass> passes() {
    return passes;
  }

  public int vertexCount() {
    return points.size();
  }

  public Point point(int vertex) {
    return points.get(vertex);
  }

  /** Every point a probe can touch, in vertex order. */
  public List<Point> points() {
    return List.copyOf(points);
  }

  /** The vertex of a point; throws IllegalArgumentException when the module has none such. */
  public int vertex(Point point) {
    Integer vertex = vertices.get(point);
    if (vertex == null) {
      throw new IllegalArgumentException("Module " + module.name() + " has no point " + point);
    }
    return vertex;
  }

  public int leg(End pin) {
    return vertex(new Point(pin, true));
  }

  public int row(End end) {
    return vertex(new Point(end, false));
  }

  public int rail(String segment) {
    return row(new End(End.Kind.RAIL, segment, 0));
  }

  int edgeCount() {
    return edges.size();
  }

  int edgeFrom(int edge) {
    return edges.get(edge)[0];
  }

  int edgeTo(int edge) {
    return edges.get(edge)[1];
  }

  /** Edge between a leg and its row. */
  public int contact(End pin) {
    return known(contacts.get(pin), "contact at", pin);
  }

  public int jumper(Jumper jumper) {
    return known(jumpers.get(jumper), "jumper", jumper);
  }

  /** Edge that feeds a rail segment. */
  public int link(String segment) {
    return known(links.get(segment), "link to", segment);
  }

  private int known(Integer edge, String what, Object name) {
    if (edge == null) {
      throw new IllegalArgumentException(
          "Module " + module.name() + " has no " + what + " " + name);
    }
    return edge;
  }
}
