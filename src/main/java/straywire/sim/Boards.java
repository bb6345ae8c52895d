package straywire.sim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import straywire.module.Control;
import straywire.module.End;
import straywire.module.Entry;
import straywire.module.Lamp;
import straywire.module.Point;
import straywire.parts.Part;

/** A module built in many ways at once: lane i is the module under variation i. */
public final class Boards {
  private static final int WORTH_SHARING = 6;

  /**
   * So many standings of a group stay compiled; eight change-overs have more than fit in memory.
   */
  private static final int KEPT_STANDINGS = 32;

  private final Wiring wiring;
  private final List<Variation> variations;
  final LaneGroup[] groups;

  /** For each group, its lanes by what the change-overs between lines join, as used of late. */
  private final List<Map<Standing, Standpoint>> standpoints = new ArrayList<>();

  private final Standpoint[] fixed;

  /** A lane group, and what reads its states. */
  private record Standpoint(LaneGroup group, SignalReader reader, UnknownTrace trace) {
    static Standpoint of(Wiring wiring, List<Variation> variations, Standing standing) {
      LaneGroup group = new LaneGroup(wiring, variations, standing);
      return new Standpoint(group, new SignalReader(group), new UnknownTrace(group));
    }
  }

  public Boards(Wiring wiring, List<Variation> variations) {
    this.wiring = wiring;
    this.variations = List.copyOf(variations);
    int count = Lanes.groups(variations.size());
    groups = new LaneGroup[count];
    fixed = new Standpoint[count];
    Standing rest = Standing.atRest(wiring, rest());
    for (int g = 0; g < count; g++) {
      standpoints.add(keptStandings());
    }
    eachGroup(
        g -> {
          fixed[g] = Standpoint.of(wiring, variationsOf(g), rest);
          standpoints.get(g).put(rest, fixed[g]);
          groups[g] = fixed[g].group();
        });
  }

  private static Map<Standing, Standpoint> keptStandings() {
    return new LinkedHashMap<>(KEPT_STANDINGS, 0.75f, true) {
      @Override
      protected boolean removeEldestEntry(Map.Entry<Standing, Standpoint> eldest) {
        return size() > KEPT_STANDINGS;
      }
    };
  }

  private List<Variation> variationsOf(int group) {
    int from = group * Lanes.COUNT;
    return variations.subList(from, Math.min(from + Lanes.COUNT, variations.size()));
  }

  /** The lanes of a group with copper as the controls stand; compiled when needed. */
  private Standpoint at(int group, Map<String, Boolean> controls) {
    return wiring.passes().isEmpty() ? fixed[group] : at(group, Standing.atRest(wiring, controls));
  }

  private Standpoint at(int group, Standing standing) {
    return standpoints
        .get(group)
        .computeIfAbsent(standing, s -> Standpoint.of(wiring, variationsOf(group), s));
  }

  private Map<String, Boolean> rest() {
    Map<String, Boolean> rest = new TreeMap<>();
    for (Control control : wiring.module().controls().values()) {
      rest.put(control.label(), control.restLevel());
    }
    return rest;
  }

  /**
   * Groups have nothing in common but what never changes, so each may have its own thread; a few
   * are done before another thread has woken up.
   */
  private void eachGroup(IntConsumer work) {
    IntStream each = IntStream.range(0, groups.length);
    (groups.length < WORTH_SHARING ? each : each.parallel()).forEach(work);
  }

  public int lanes() {
    return variations.size();
  }

  public int groups() {
    return groups.length;
  }

  public Wiring wiring() {
    return wiring;
  }

  /** Lanes in use of one group. */
  public long used(int group) {
    return groups[group].used();
  }

  /** Power off, every control at its rest position. */
  public BoardState off() {
    return new BoardState(false, rest(), new long[0][]);
  }

  /** Power switched off: only what is kept without power stays, and the controls stay put. */
  public BoardState powerDown(BoardState state) {
    return new BoardState(false, state.controls(), keeps() ? state.groups() : new long[0][]);
  }

  /** Power switched on with the controls where they are. */
  public BoardState powerUp(BoardState state) {
    long[][] off = powerDown(state).groups();
    long[][] words = new long[groups.length][];
    eachGroup(
        g ->
            words[g] =
                at(g, state.controls())
                    .group()
                    .powerUp(
                        state.controls(),
                        off.length == 0 ? Optional.empty() : Optional.of(off[g])));
    return new BoardState(true, state.controls(), words);
  }

  /** Whether any part in any lane keeps its contents without power. */
  public boolean keeps() {
    return Arrays.stream(groups).anyMatch(g -> g.keeping != 0);
  }

  /** Whether a remembered bit of a part holds its value without power in a lane. */
  public boolean keeps(int lane, String part, int cell) {
    return groups[Lanes.group(lane)].keeps(part, cell, Lanes.bit(lane & 63));
  }

  /**
   * Moves controls, all at once.
   *
   * @throws IllegalArgumentException when the module has no such control
   */
  public BoardState move(BoardState state, Map<String, Boolean> levels) {
    return move(state, levels, true);
  }

  private BoardState move(BoardState state, Map<String, Boolean> levels, boolean startsOver) {
    Map<String, Boolean> controls = new TreeMap<>(state.controls());
    for (Map.Entry<String, Boolean> level : levels.entrySet()) {
      if (controls.put(level.getKey(), level.getValue()) == null) {
        throw new IllegalArgumentException(
            "Module " + wiring.module().name() + " has no control " + level.getKey());
      }
    }
    if (!state.powered()) {
      return new BoardState(false, controls, state.groups());
    }
    HandMove move = HandMove.of(wiring, state.controls(), controls, levels);
    long[][] words = new long[groups.length][];
    eachGroup(
        g -> {
          words[g] = state.groups()[g].clone();
          if (startsOver) {
            groups[g].startOver(words[g]);
          }
          move.work(words[g], standing -> at(g, standing).group());
        });
    return new BoardState(true, controls, words);
  }

  /** A button down and up again. */
  public BoardState press(BoardState state, String button) {
    boolean rest = rest(button);
    return move(move(state, Map.of(button, !rest)), Map.of(button, rest), false);
  }

  /** Whether the last thing the hand did may have made an unknown bit of a part another one. */
  public boolean moved(BoardState state, int lane, String part, int cell) {
    int group = Lanes.group(lane);
    return state.powered()
        && groups[group].moved(state.groups()[group], part, cell, Lanes.bit(lane & 63)) != 0;
  }

  /**
   * The state after what an entry says of the hand; readings change nothing. After a repair, made
   * with the power off, nothing is known of what is kept without power: it was taken in with the
   * fault there, or came with a part from the drawer.
   */
  public BoardState after(BoardState state, Entry entry) {
    if (entry instanceof Entry.Power e) {
      return e.on() ? powerUp(state) : powerDown(state);
    }
    if (entry instanceof Entry.Set e) {
      return move(state, e.levels());
    }
    if (entry instanceof Entry.Press e) {
      return press(state, e.button());
    }
    if (entry instanceof Entry.Hold e) {
      return move(state, Map.of(e.button(), !rest(e.button())));
    }
    if (entry instanceof Entry.Release e) {
      return move(state, Map.of(e.button(), rest(e.button())));
    }
    boolean cure = entry instanceof Entry.Repaired || entry instanceof Entry.Exchanged;
    return cure && !state.powered() ? mended(state) : state;
  }

  /**
   * After work on the module: power off, nothing remembered, and no button held, since the hand was
   * needed.
   */
  public BoardState mended(BoardState state) {
    return new BoardState(false, handsOff(state), new long[0][]);
  }

  private Map<String, Boolean> handsOff(BoardState state) {
    Map<String, Boolean> controls = new TreeMap<>(state.controls());
    for (Control control : wiring.module().controls().values()) {
      if (control.kind() == Control.Kind.BUTTON) {
        controls.put(control.label(), control.restLevel());
      }
    }
    return controls;
  }

  private boolean rest(String button) {
    return wiring.module().controls().get(button).restLevel();
  }

  /** The same controls with nothing known of what is remembered, be it kept without power. */
  public BoardState forget(BoardState state) {
    BoardState off = new BoardState(false, state.controls(), new long[0][]);
    return state.powered() ? powerUp(off) : off;
  }

  /**
   * What is at a point, for one group: for each signal, by ordinal, the lanes that show it. Each
   * lane in use is in exactly one.
   */
  public long[] signals(BoardState state, int group, Point point) {
    if (!state.powered()) {
      return nothing(group);
    }
    return at(group, state.controls())
        .reader()
        .read(state.groups()[group], groups[group].node(point));
  }

  private long[] nothing(int group) {
    long[] lanes = new long[Signal.COUNT];
    lanes[Signal.NOTHING.ordinal()] = groups[group].used();
    return lanes;
  }

  /** How a lamp looks in one group: lanes in which it is certainly lit, and certainly dark. */
  public record Glow(long lit, long dark) {}

  /** How a lamp looks; lanes in neither plane may be either. */
  public Glow glow(BoardState state, int group, String lamp) {
    LaneGroup in = groups[group];
    if (!state.powered()) {
      return new Glow(0, in.used());
    }
    long[] words = state.groups()[group];
    int node = in.lampNode(lamp);
    long never = deadLamp(group, lamp) | in.dead(words);
    long high = in.mayBeHigh(words, node);
    long low = in.mayBeLow(words, node);
    long open = in.mayBeOpen(words, node);
    if (!in.lightsOnHigh(lamp)) {
      return new Glow(low & ~high & ~open & ~never, in.used() & (~low | never));
    }
    return new Glow(high & ~low & ~open & ~never, in.used() & (~high | never));
  }

  /** What is at every vertex of the wiring, for one group, each as {@link #signals}. */
  public long[][] allSignals(BoardState state, int group) {
    long[][] all = new long[wiring.vertexCount()][];
    if (!state.powered()) {
      java.util.Arrays.setAll(all, v -> nothing(group));
      return all;
    }
    long[][] byNode = at(group, state.controls()).reader().readAll(state.groups()[group]);
    java.util.Arrays.setAll(all, v -> byNode[groups[group].topology.node(v)]);
    return all;
  }

  /**
   * What the eye gets from a lamp, as {@link #signals}, said of a lamp that lights on a high: a
   * lamp to the supply rail shows the opposite level, one that cannot light shows nothing.
   */
  public long[] lampSignals(BoardState state, int group, String lamp) {
    if (!state.powered()) {
      return nothing(group);
    }
    LaneGroup in = groups[group];
    long[] lanes =
        at(group, state.controls()).reader().read(state.groups()[group], in.lampNode(lamp));
    if (!in.lightsOnHigh(lamp)) {
      lanes = Signal.upsideDown(lanes);
    }
    long dead = deadLamp(group, lamp);
    for (int s = 0; s < lanes.length; s++) {
      lanes[s] &= ~dead;
    }
    lanes[Signal.NOTHING.ordinal()] |= dead;
    return lanes;
  }

  /** Lanes of a group in which a lamp cannot light. */
  public long deadLamp(int group, String lamp) {
    return groups[group].deadLamps.getOrDefault(lamp, 0L);
  }

  /**
   * Lanes of a group in which two points are joined by copper: wires, and change-overs between
   * lines as they stand; not contacts to rails.
   */
  public long wired(BoardState state, int group, Point from, Point to) {
    LaneGroup in = at(group, state.controls()).group();
    return in.joined(in.node(from), in.node(to), Map.of());
  }

  /**
   * Lanes of a group in which two points are joined with power off: by wires, and by contacts.
   *
   * @param controls where they stand
   */
  public long joined(int group, Point from, Point to, Map<String, Boolean> controls) {
    LaneGroup in = at(group, controls).group();
    return in.joined(in.node(from), in.node(to), controls);
  }

  /**
   * Power off, no button held, and in each part the words that the part of the same type in that
   * socket keeps on other boards, lane by lane: the same lanes in the same order. Nothing else is
   * known.
   *
   * @param fresh sockets whose part is not the one that was there
   */
  public BoardState keptOf(Boards others, BoardState state, Set<String> fresh) {
    if (!keeps() || state.groups().length == 0) {
      return new BoardState(false, handsOff(state), new long[0][]);
    }
    long[][] words = new long[groups.length][];
    for (int g = 0; g < words.length; g++) {
      words[g] = groups[g].newState();
      for (PartSeat seat : groups[g].seats) {
        for (PartSeat other : others.groups[g].seats) {
          if (seat.keeps && seat.takesPlaceOf(other) && !fresh.contains(seat.label)) {
            seat.takeOver(words[g], other, state.groups()[g]);
          }
        }
      }
    }
    return new BoardState(false, handsOff(state), words);
  }

  /** Receives the remembered bit that an unknown level shows. */
  public interface Shown {
    /**
     * In {@code lanes} of the group, the level is remembered bit {@code cell} of part {@code
     * label}.
     *
     * @param part the type that sits in the socket in these lanes
     * @param cell bit number as in {@link straywire.logic.PartLogic}
     */
    void cell(String label, Part part, int cell, boolean inverted, long lanes);
  }

  /** Follows the unknown level at a point back, in those of {@code lanes} where it is one bit. */
  public void trace(BoardState state, int group, Point point, long lanes, Shown shown) {
    LaneGroup in = groups[group];
    at(group, state.controls())
        .trace()
        .follow(
            state.groups()[group],
            in.node(point),
            lanes,
            (seat, cell, inverted, these) ->
                shown.cell(
                    in.seats.get(seat).label, in.seats.get(seat).part, cell, inverted, these));
  }

  /** Follows an unknown lamp back; inverted means that the lamp is lit when the bit is 0. */
  public void traceLamp(BoardState state, int group, String lamp, long lanes, Shown shown) {
    boolean upsideDown = !groups[group].lightsOnHigh(lamp);
    trace(
        state,
        group,
        new Point(new End(End.Kind.LAMP, lamp, 0), false),
        lanes,
        (label, part, cell, inverted, these) ->
            shown.cell(label, part, cell, inverted ^ upsideDown, these));
  }

  /** Boards of some of the lanes, in the order given. */
  public Boards select(int[] lanes) {
    List<Variation> chosen = new ArrayList<>();
    for (int lane : lanes) {
      chosen.add(variations.get(lane));
    }
    return new Boards(wiring, chosen);
  }

  /** The state of the lanes that {@link #select} chose, as a state of those boards. */
  public BoardState carry(BoardState state, int[] lanes, Boards into) {
    if (state.groups().length == 0) {
      return state;
    }
    long[][] words = new long[into.groups.length][];
    for (int g = 0; g < words.length; g++) {
      int from = g * Lanes.COUNT;
      int count = Math.min(Lanes.COUNT, lanes.length - from);
      StateCarrier carrier = new StateCarrier(into.at(g, state.controls()).group());
      for (int source = 0; source < groups.length; source++) {
        int here = source;
        int[] to =
            IntStream.range(0, count).filter(i -> Lanes.group(lanes[from + i]) == here).toArray();
        int[] leaving = Arrays.stream(to).map(i -> lanes[from + i] & 63).toArray();
        if (to.length > 0) {
          carrier.take(groups[source], state.groups()[source], new StateCarrier.Moves(leaving, to));
        }
      }
      words[g] = carrier.finish(state.controls());
    }
    return new BoardState(state.powered(), state.controls(), words);
  }

  /** Labels of the module's lamps, sorted. */
  public List<String> lamps() {
    return wiring.module().lamps().values().stream().map(Lamp::label).toList();
  }
}
