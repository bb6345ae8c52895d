package straywire.steps;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import straywire.faults.Hypothesis;
import straywire.faults.VariationOf;
import straywire.module.Control;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.observe.Instruments;
import straywire.observe.Step;
import straywire.ranking.Diagnosis;
import straywire.sim.BoardState;
import straywire.sim.Boards;
import straywire.sim.Variation;

/**
 * What a sound-looking module may still hide: faults that the log has not ruled out, and of these
 * the ones that no setting of the controls and no look at the lamps can show.
 */
public final class Unseen {
  /** Candidates looked at, most probable first. */
  private static final int MOST = 2048;

  /** Less probable ones are not worth a line. */
  private static final double LEAST = 1e-5;

  /** Random settings tried beyond the by-hand exercise. */
  private static final int RANDOM_STEPS = 240;

  private static final long SEED = 1;

  private Unseen() {}

  /**
   * One fault that was not ruled out.
   *
   * @param invisible true when working the module shows it at no lamp, as far as it is simulated,
   *     for this module alone, not once its contents or its lines come from elsewhere
   * @param check a look or a beep that does show it; empty when only an exchange would
   */
  public record Hidden(
      Hypothesis hypothesis, double probability, boolean invisible, Optional<Step> check) {}

  /** Single faults not ruled out by the log, most probable first. */
  public static List<Hidden> of(Diagnosis diagnosis) {
    List<Diagnosis.Candidate> open =
        diagnosis.candidates().stream()
            .filter(c -> !c.hypothesis().edits().isEmpty() && c.probability() >= LEAST)
            .filter(c -> straywire.faults.HypothesisPairs.members(c.hypothesis().id()).size() == 1)
            .limit(MOST)
            .toList();
    boolean[] shows = shown(diagnosis, open.stream().map(Diagnosis.Candidate::hypothesis).toList());
    StepMenu menu = new StepMenu(diagnosis.module(), Instruments.USUAL);
    List<Hidden> hidden = new ArrayList<>();
    for (int i = 0; i < open.size(); i++) {
      Hypothesis hypothesis = open.get(i).hypothesis();
      hidden.add(
          new Hidden(
              hypothesis,
              open.get(i).probability(),
              !shows[i],
              check(diagnosis, menu, hypothesis)));
    }
    return hidden;
  }

  private static Optional<Step> check(Diagnosis diagnosis, StepMenu menu, Hypothesis hypothesis) {
    Module module = diagnosis.module();
    Stream<Step> looks =
        hypothesis.edits().stream().flatMap(e -> e.seenAt(module).stream()).map(Step.Inspect::new);
    return Stream.concat(
            looks, menu.beeps(List.of(hypothesis), diagnosis.state().controls()).stream())
        .findFirst();
  }

  /** For each hypothesis, whether any lamp ever differs from those of a sound module. */
  private static boolean[] shown(Diagnosis diagnosis, List<Hypothesis> hypotheses) {
    Module module = diagnosis.module();
    VariationOf compiler = new VariationOf(diagnosis.wiring());
    List<Variation> variations = new ArrayList<>();
    variations.add(new Variation());
    hypotheses.forEach(h -> variations.add(compiler.compile(h)));
    Boards boards = new Boards(diagnosis.wiring(), variations);
    boolean[] shows = new boolean[variations.size()];
    BoardState state = boards.powerUp(boards.off());
    compare(boards, state, shows);
    for (Map<String, Boolean> move : moves(module)) {
      state = boards.move(state, move);
      compare(boards, state, shows);
    }
    return Arrays.copyOfRange(shows, 1, shows.length);
  }

  /** The by-hand exercise, then random settings with every button tried. */
  private static List<Map<String, Boolean>> moves(Module module) {
    List<Map<String, Boolean>> moves = new ArrayList<>();
    for (Entry entry : module.exercise()) {
      if (entry instanceof Entry.Set e) {
        moves.add(e.levels());
      } else if (entry instanceof Entry.Press e) {
        press(module, e.button(), moves);
      }
    }
    Random random = new Random(SEED);
    List<Control> controls = List.copyOf(module.controls().values());
    List<String> buttons =
        controls.stream().filter(c -> c.kind() == Control.Kind.BUTTON).map(Control::label).toList();
    for (int i = 0; i < RANDOM_STEPS; i++) {
      Map<String, Boolean> levels = new TreeMap<>();
      for (Control control : controls) {
        if (control.kind() == Control.Kind.SWITCH) {
          levels.put(control.label(), random.nextBoolean());
        }
      }
      moves.add(levels);
      if (!buttons.isEmpty() && random.nextBoolean()) {
        press(module, buttons.get(random.nextInt(buttons.size())), moves);
      }
    }
    return moves;
  }

  private static void press(Module module, String button, List<Map<String, Boolean>> moves) {
    boolean rest = module.controls().get(button).restLevel();
    moves.add(Map.of(button, !rest));
    moves.add(Map.of(button, rest));
  }

  private static void compare(Boards boards, BoardState state, boolean[] shows) {
    for (String lamp : boards.lamps()) {
      Boards.Glow sound = boards.glow(state, 0, lamp);
      long lit = -(sound.lit() & 1);
      long dark = -(sound.dark() & 1);
      for (int g = 0; g < boards.groups(); g++) {
        Boards.Glow glow = boards.glow(state, g, lamp);
        long differ = ((glow.lit() ^ lit) | (glow.dark() ^ dark)) & boards.used(g);
        for (long left = differ; left != 0; left &= left - 1) {
          shows[g * Long.SIZE + Long.numberOfTrailingZeros(left)] = true;
        }
      }
    }
  }
}
