package straywire.sim;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import straywire.module.End;
import straywire.module.Lamp;
import straywire.module.Point;

/** The lanes of a board against {@link SlowBoard}, and boards of some lanes against all. */
class LanesAgreeTest {
  private static final int MOVES = 10;

  @Test
  void everyPointOfRandomModulesShowsWhatTheSlowTwinShows() {
    Set<Signal> shown = EnumSet.noneOf(Signal.class);
    for (long seed = 1; seed <= 40; seed++) {
      shown.addAll(agree(seed, seed % 20 == 0 ? 69 : 5));
    }
    assertThat(shown).as("signals that occurred at all").containsExactly(Signal.values());
  }

  @Tag("slow")
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4})
  void everyPointOfManyMoreRandomModulesShowsWhatTheSlowTwinShows(int block) {
    for (long seed = 10_000L * block; seed < 10_000L * block + 25; seed++) {
      agree(seed, 69);
    }
  }

  @Test
  void modulesWithMemoriesThatKeepTheirContentsShowWhatTheSlowTwinShowsOverPowerCycles() {
    for (long seed = 3000; seed < 3040; seed++) {
      agree(seed, RandomBoard.keeping(seed), seed % 20 == 0 ? 69 : 9, 2);
    }
  }

  @Tag("slow")
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4})
  void manyMoreModulesWithMemoriesThatKeepTheirContentsShowWhatTheSlowTwinShows(int block) {
    for (long seed = 50_000L * block; seed < 50_000L * block + 25; seed++) {
      agree(seed, RandomBoard.keeping(seed), 69, 2);
    }
  }

  @Test
  void modulesWithChangeOversBetweenLinesShowWhatTheSlowTwinShows() {
    for (long seed = 4000; seed < 4040; seed++) {
      agree(seed, RandomBoard.passing(seed), seed % 20 == 0 ? 69 : 9, Integer.MAX_VALUE);
    }
  }

  @Tag("slow")
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4})
  void manyMoreModulesWithChangeOversBetweenLinesShowWhatTheSlowTwinShows(int block) {
    for (long seed = 70_000L * block; seed < 70_000L * block + 40; seed++) {
      agree(seed, RandomBoard.passing(seed), 69, 4);
    }
  }

  private static Set<Signal> agree(long seed, int others) {
    return agree(seed, new RandomBoard(seed), others, Integer.MAX_VALUE);
  }

  /**
   * @param cut every how many moves the power is cut, beyond what the seed cuts
   */
  private static Set<Signal> agree(long seed, RandomBoard drawn, int others, int cut) {
    List<Variation> variations = drawn.variations(others);
    Boards boards = new Boards(drawn.wiring, variations);
    List<SlowBoard> slow = slow(drawn, variations);
    BoardState state = boards.powerUp(boards.off());
    slow.forEach(SlowBoard::powerUp);
    Set<Signal> shown = compare(seed, "after power-up", boards, state, slow);
    for (int i = 1; i <= MOVES; i++) {
      if (drawn.cutsPower() || i % cut == 0) {
        Map<String, Boolean> meanwhile = drawn.moves();
        state = boards.powerUp(boards.move(boards.powerDown(state), meanwhile));
        slow.forEach(SlowBoard::powerDown);
        slow.forEach(s -> s.move(meanwhile));
        slow.forEach(SlowBoard::powerUp);
        shown.addAll(compare(seed, "power cut before move " + i, boards, state, slow));
      }
      Map<String, Boolean> moves = drawn.moves();
      state = boards.move(state, moves);
      slow.forEach(s -> s.move(moves));
      shown.addAll(compare(seed, "after move " + i + " " + moves, boards, state, slow));
    }
    return shown;
  }

  private static List<SlowBoard> slow(RandomBoard drawn, List<Variation> variations) {
    return variations.stream().map(v -> new SlowBoard(drawn.wiring, v)).toList();
  }

  /** Returns the signals seen, for a look at what the seeds exercise. */
  private static Set<Signal> compare(
      long seed, String when, Boards boards, BoardState state, List<SlowBoard> slow) {
    Set<Signal> shown = EnumSet.noneOf(Signal.class);
    for (int group = 0; group < boards.groups(); group++) {
      compareKept(seed + ", " + when, boards, state, group, slow);
      long[][] all = boards.allSignals(state, group);
      for (int vertex = 0; vertex < all.length; vertex++) {
        Point point = boards.wiring().point(vertex);
        for (int i = 0; i < Long.bitCount(boards.used(group)); i++) {
          int lane = group * Lanes.COUNT + i;
          Signal expected = slow.get(lane).signal(point);
          shown.add(expected);
          if (only(all[vertex], i, seed) != expected) {
            throw new AssertionError(
                "seed %d, %s, lane %d, %s: expected %s, shows %s"
                    .formatted(seed, when, lane, point, expected, only(all[vertex], i, seed)));
          }
        }
      }
    }
    return shown;
  }

  private static void compareKept(
      String when, Boards boards, BoardState state, int group, List<SlowBoard> slow) {
    for (PartSeat seat : boards.groups[group].seats) {
      for (int bit = 0; seat.keeps && bit < Long.bitCount(boards.used(group)); bit++) {
        if (Lanes.has(seat.lanes, bit)) {
          int lane = bit;
          long[] expected = slow.get(group * Lanes.COUNT + lane).remembered(seat.label);
          long[] kept = new long[2 * seat.part.logic().cellCount()];
          Arrays.setAll(kept, i -> state.groups()[group][seat.stateAt + i] >>> lane & 1);
          assertThat(kept)
              .as("seed %s, group %d, lane %d, %s", when, group, lane, seat.label)
              .isEqualTo(Arrays.copyOf(expected, kept.length));
        }
      }
    }
  }

  /** The one signal that a lane shows. */
  private static Signal only(long[] lanes, int lane, long seed) {
    List<Signal> shown = new ArrayList<>();
    for (Signal signal : Signal.values()) {
      if (Lanes.has(lanes[signal.ordinal()], lane)) {
        shown.add(signal);
      }
    }
    assertThat(shown).as("seed %d, lane %d", seed, lane).hasSize(1);
    return shown.get(0);
  }

  @Test
  void aLampIsLitOrDarkWhereTheSlowTwinSaysSo() {
    for (long seed = 500; seed < 515; seed++) {
      RandomBoard drawn = new RandomBoard(seed);
      List<Variation> variations = drawn.variations(20);
      Boards boards = new Boards(drawn.wiring, variations);
      List<SlowBoard> slow = slow(drawn, variations);
      BoardState state = boards.powerUp(boards.off());
      slow.forEach(SlowBoard::powerUp);
      for (int i = 0; i < 4; i++) {
        Map<String, Boolean> moves = drawn.moves();
        state = boards.move(state, moves);
        slow.forEach(s -> s.move(moves));
        for (String lamp : boards.lamps()) {
          Boards.Glow glow = boards.glow(state, 0, lamp);
          for (int lane = 0; lane < boards.lanes(); lane++) {
            Set<Boolean> may = slow.get(lane).mayLight(lamp);
            String where = "seed " + seed + ", lane " + lane + ", lamp " + lamp;
            assertThat(Lanes.has(glow.lit(), lane)).as(where).isEqualTo(may.equals(Set.of(true)));
            assertThat(Lanes.has(glow.dark(), lane)).as(where).isEqualTo(may.equals(Set.of(false)));
          }
        }
      }
    }
  }

  @Test
  void aLampShowsTheSignalOfItsNetUnlessItCannotLight() {
    for (long seed = 600; seed < 620; seed++) {
      RandomBoard drawn = new RandomBoard(seed);
      List<Variation> variations = drawn.variations(20);
      Boards boards = new Boards(drawn.wiring, variations);
      List<SlowBoard> slow = slow(drawn, variations);
      BoardState state = boards.move(boards.powerUp(boards.off()), drawn.moves());
      for (Lamp lamp : drawn.module.lamps().values()) {
        Point point = new Point(new End(End.Kind.LAMP, lamp.label(), 0), false);
        long[] net = boards.signals(state, 0, point);
        long[] eye = boards.lampSignals(state, 0, lamp.label());
        for (int lane = 0; lane < boards.lanes(); lane++) {
          boolean dead = slow.get(lane).deadLamp(lamp.label());
          if (dead || lamp.lightsOnHigh()) {
            assertThat(only(eye, lane, seed))
                .as("seed %d, lane %d, lamp %s", seed, lane, lamp.label())
                .isEqualTo(dead ? Signal.NOTHING : only(net, lane, seed));
          }
        }
      }
    }
  }

  @Test
  void boardsOfSomeLanesGoOnLikeTheBoardsTheyCameFrom() {
    for (long seed = 1000; seed < 1030; seed++) {
      RandomBoard drawn = seed < 1015 ? new RandomBoard(seed) : RandomBoard.passing(seed);
      Boards all = new Boards(drawn.wiring, drawn.variations(90));
      BoardState whole = all.powerUp(all.off());
      for (int i = 0; i < 4; i++) {
        whole = all.move(whole, drawn.moves());
      }
      int[] chosen = drawn.someOf(all.lanes());
      Boards few = all.select(chosen);
      BoardState part = all.carry(whole, chosen, few);
      sameInChosenLanes(seed + ", as carried", all, whole, few, part, chosen);
      for (int i = 0; i < 4; i++) {
        Map<String, Boolean> moves = drawn.moves();
        whole = all.move(whole, moves);
        part = few.move(part, moves);
        sameInChosenLanes(seed + ", after " + moves, all, whole, few, part, chosen);
      }
    }
  }

  private static void sameInChosenLanes(
      String seed, Boards all, BoardState whole, Boards few, BoardState part, int[] chosen) {
    for (int i = 0; i < chosen.length; i++) {
      long[][] in = all.allSignals(whole, Lanes.group(chosen[i]));
      long[][] out = few.allSignals(part, Lanes.group(i));
      for (int vertex = 0; vertex < in.length; vertex++) {
        Signal expected = only(in[vertex], chosen[i] & 63, 0);
        Signal shown = only(out[vertex], i & 63, 0);
        if (shown != expected) {
          throw new AssertionError(
              "seed %s, lane %d taken as %d, %s: expected %s, shows %s"
                  .formatted(seed, chosen[i], i, all.wiring().point(vertex), expected, shown));
        }
      }
    }
  }

  @Test
  void continuityIsWhatTheSlowTwinFindsJoined() {
    for (long seed = 2000; seed < 2008; seed++) {
      RandomBoard drawn = seed < 2005 ? new RandomBoard(seed) : RandomBoard.passing(seed);
      List<Variation> variations = drawn.variations(20);
      Boards boards = new Boards(drawn.wiring, variations);
      List<SlowBoard> slow = slow(drawn, variations);
      List<Point> points = drawn.wiring.points();
      Map<String, Boolean> controls = new TreeMap<>(boards.off().controls());
      controls.putAll(drawn.moves());
      slow.forEach(board -> board.move(controls));
      for (int from = 0; from < points.size(); from++) {
        for (int to = 0; to < points.size(); to += 7) {
          long joined = boards.joined(0, points.get(from), points.get(to), controls);
          for (int lane = 0; lane < variations.size(); lane++) {
            boolean expected = slow.get(lane).joined(points.get(from), points.get(to));
            assertThat(Lanes.has(joined, lane))
                .as("seed %d, lane %d, %s to %s", seed, lane, points.get(from), points.get(to))
                .isEqualTo(expected);
          }
        }
      }
    }
  }
}
