package straywire.steps;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import straywire.faults.Hypothesis;
import straywire.faults.Visibility;
import straywire.module.Control;
import straywire.module.Module;
import straywire.module.Point;
import straywire.module.Word;
import straywire.observe.Instruments;
import straywire.observe.Question;
import straywire.observe.RankingNumber;
import straywire.observe.RankingNumbers;
import straywire.observe.ReadingTable;
import straywire.observe.Step;
import straywire.observe.StepSeconds;
import straywire.ranking.AfterRepair;
import straywire.ranking.LiveSet;
import straywire.ranking.Posterior;
import straywire.sim.BoardState;
import straywire.sim.Lanes;
import straywire.sim.Signal;

/**
 * Works out what every step of the menu would tell, and along the way which hypotheses no step
 * tells apart.
 */
public final class NextStep {
  private final Module module;
  private final LiveSet live;
  private final StepMenu menu;
  private final Instruments instruments;
  private final ReadingTable table;
  private final RankingNumbers numbers;
  private final StepSeconds seconds;
  private final List<StepChoice.Worth<Step>> worths = new ArrayList<>();

  /** The menu tries a setting with and without each button in turn: moved once for all. */
  private Map<String, Boolean> lastSet = Map.of();

  private List<BoardState> afterSet = List.of();

  /** Fingerprint of everything predicted, by hypothesis: equal ones are told apart by no step. */
  private final long[] prints;

  public NextStep(
      Module module,
      LiveSet live,
      Instruments instruments,
      ReadingTable table,
      StepSeconds seconds,
      List<Question> questions) {
    this.module = module;
    this.live = live;
    this.instruments = instruments;
    this.table = table;
    numbers = table.numbers();
    this.seconds = seconds;
    menu = new StepMenu(module, instruments);
    prints = new long[live.size()];
    if (live.state().powered()) {
      works();
      touches();
      rounds();
    }
    looks();
    beeps();
    exchanges();
    questions(questions);
  }

  /** Steps worth taking, best first. */
  public List<StepChoice.Worth<Step>> ranked() {
    return StepChoice.ranked(worths);
  }

  long[] prints() {
    return prints;
  }

  /** What to expect from a step under each of some live hypotheses, as a short reading. */
  List<String> expected(Step step, List<Hypothesis> leaders) {
    List<String> readings = new ArrayList<>();
    for (Hypothesis leader : leaders) {
      int h = live.hypotheses.indexOf(leader);
      readings.add(h < 0 ? "" : expected(step, h));
    }
    return readings;
  }

  private String expected(Step step, int h) {
    if (step instanceof Step.Work s) {
      List<BoardState> after = after(s);
      List<String> words = new ArrayList<>();
      for (Word word : module.lampWords()) {
        if (s.words().contains(word.label())) {
          words.add(
              word.label()
                  + " "
                  + Prediction.pictures(live, after, word.members(), numbers)[h].marks(
                      word.members().size()));
        }
      }
      return String.join(", ", words);
    }
    if (step instanceof Step.Measure s) {
      return table.wording(touched(s.point(), s.holding(), h));
    }
    if (step instanceof Step.MeasureRound s) {
      List<String> readings = new ArrayList<>();
      for (Signal[] point : Prediction.at(live, live.states(), s.points())) {
        readings.add(table.wording(point[h]));
      }
      return readings.stream().distinct().count() == 1
          ? "all " + readings.get(0)
          : String.join("; ", readings);
    }
    if (step instanceof Step.Probe s) {
      return table.probeWording(touched(s.point(), s.holding(), h));
    }
    if (step instanceof Step.Inspect s) {
      return new Visibility(module).shows(live.hypotheses.get(h), s.subject())
          ? "not as meant"
          : "as meant";
    }
    if (step instanceof Step.Beep s) {
      return joined(s)[h] > 0.5 ? "joined" : "not joined";
    }
    if (step instanceof Step.Exchange s) {
      return AfterRepair.mends(
              new straywire.module.Entry.Exchanged(s.part()), live.hypotheses.get(h))
          ? "cured"
          : "no change";
    }
    return "";
  }

  private Signal touched(Point point, Optional<String> hold, int h) {
    return Prediction.at(live, held(hold), List.of(point))[0][h];
  }

  private List<BoardState> held(Optional<String> hold) {
    return hold.isEmpty()
        ? live.states()
        : live.move(live.states(), Map.of(hold.get(), !rest(hold.get())));
  }

  private void offer(Step step, double bits) {
    if (bits >= numbers.of(RankingNumber.LEAST_BITS)) {
      worths.add(new StepChoice.Worth<>(step, bits, seconds.of(step)));
    }
  }

  private void works() {
    List<String> lamps = new ArrayList<>();
    for (Word word : module.lampWords()) {
      lamps.addAll(word.members());
    }
    for (Step.Work step : menu.work(live.state(), live.hypotheses)) {
      List<BoardState> after = after(step);
      Prediction.Picture[] all = Prediction.pictures(live, after, lamps, numbers);
      for (int h = 0; h < all.length; h++) {
        mix(h, all[h].hashCode());
      }
      offer(step, Prediction.information(live.weights, all, lamps.size(), table.lampSlip()));
      int from = 0;
      for (Word word : module.lampWords()) {
        int count = word.members().size();
        if (count < lamps.size()) {
          offer(
              new Step.Work(step.set(), step.press(), List.of(word.label())),
              Prediction.information(
                  live.weights, part(all, from, count), count, table.lampSlip()));
        }
        from += count;
      }
    }
  }

  private static Prediction.Picture[] part(Prediction.Picture[] all, int from, int count) {
    long mask = (1L << count) - 1;
    Prediction.Picture[] part = new Prediction.Picture[all.length];
    for (int h = 0; h < all.length; h++) {
      part[h] = new Prediction.Picture(all[h].lit() >>> from & mask, all[h].sure() >>> from & mask);
    }
    return part;
  }

  private List<BoardState> after(Step.Work step) {
    List<BoardState> states = set(step.set());
    if (step.press().isPresent()) {
      boolean rest = rest(step.press().get());
      states = live.move(states, Map.of(step.press().get(), !rest));
      states = live.move(states, Map.of(step.press().get(), rest));
    }
    return states;
  }

  private List<BoardState> set(Map<String, Boolean> levels) {
    if (levels.isEmpty()) {
      return live.states();
    }
    if (!levels.equals(lastSet)) {
      lastSet = levels;
      afterSet = live.move(live.states(), levels);
    }
    return afterSet;
  }

  private boolean rest(String button) {
    Control control = module.controls().get(button);
    return control.restLevel();
  }

  private void touches() {
    List<Point> all = menu.points(live.hypotheses);
    for (Map.Entry<Optional<String>, List<Point>> touch : menu.holds(all).entrySet()) {
      Optional<String> hold = touch.getKey();
      List<Point> points = touch.getValue();
      List<BoardState> states = held(hold);
      Signal[][] predicted = Prediction.at(live, states, points);
      for (int i = 0; i < predicted.length; i++) {
        Point point = points.get(i);
        Signal[] signals = predicted[i];
        for (int h = 0; h < signals.length; h++) {
          mix(h, signals[h].ordinal());
        }
        if (instruments.meter()) {
          offer(
              new Step.Measure(point, hold), Prediction.information(live.weights, signals, table));
        }
        if (instruments.logicProbe()) {
          offer(
              new Step.Probe(point, hold),
              Prediction.probeInformation(live.weights, signals, table));
        }
      }
    }
  }

  /** A round counts as one look at a picture of signals; a meter seldom confuses two of them. */
  private void rounds() {
    for (Step.MeasureRound round : menu.rounds()) {
      Signal[][] signals = Prediction.at(live, live.states(), round.points());
      Map<List<Signal>, Double> classes = new LinkedHashMap<>();
      for (int h = 0; h < live.size(); h++) {
        List<Signal> readings = new ArrayList<>();
        for (Signal[] point : signals) {
          readings.add(point[h]);
        }
        classes.merge(readings, live.weights[h], Double::sum);
      }
      double[] shares = classes.values().stream().mapToDouble(Double::doubleValue).toArray();
      offer(round, numbers.of(RankingNumber.ROUND_TELLS) * Posterior.entropy(shares));
    }
  }

  private void looks() {
    Visibility visibility = new Visibility(module);
    List<Set<String>> showing = live.hypotheses.stream().map(visibility::subjects).toList();
    for (String subject : menu.subjects(live.hypotheses)) {
      double[] wrong = new double[live.size()];
      for (int h = 0; h < wrong.length; h++) {
        boolean shows = showing.get(h).contains(subject);
        wrong[h] = numbers.looksWrong(shows);
        mix(h, shows ? 1 : 2);
      }
      offer(new Step.Inspect(subject), Prediction.information(live.weights, wrong));
    }
  }

  private void beeps() {
    for (Step.Beep beep : menu.beeps(live.hypotheses, live.state().controls())) {
      double[] joined = joined(beep);
      for (int h = 0; h < joined.length; h++) {
        mix(h, joined[h] > 0.5 ? 3 : 4);
      }
      offer(beep, Prediction.information(live.weights, joined));
    }
  }

  private double[] joined(Step.Beep beep) {
    double[] joined = new double[live.size()];
    Map<String, Boolean> controls = new TreeMap<>(live.state().controls());
    controls.putAll(beep.set());
    live.eachGroup(
        live.states(),
        (boards, state, group, first) -> {
          long lanes = boards.joined(group, beep.from(), beep.to(), controls);
          for (long left = boards.used(group); left != 0; left &= left - 1) {
            int bit = Long.numberOfTrailingZeros(left);
            joined[first + bit] = numbers.beeps(Lanes.has(lanes, bit));
          }
        });
    return joined;
  }

  private void exchanges() {
    for (String part : menu.parts(live.hypotheses)) {
      double[] cured = new double[live.size()];
      for (int h = 0; h < cured.length; h++) {
        Hypothesis hypothesis = live.hypotheses.get(h);
        boolean mends = AfterRepair.mends(new straywire.module.Entry.Exchanged(part), hypothesis);
        cured[h] = numbers.cures(mends);
        mix(h, mends ? 5 : 6);
      }
      offer(new Step.Exchange(part), Prediction.information(live.weights, cured));
    }
  }

  /** An answer tells faults apart by odds only, so that it leaves the fingerprints alone. */
  private void questions(List<Question> questions) {
    for (Question question : questions) {
      offer(question.step, Prediction.information(live.weights, question.yes(live.hypotheses)));
    }
  }

  /** Multiply-and-add hash step; the multiplier is Knuth's MMIX constant. */
  private void mix(int hypothesis, int value) {
    prints[hypothesis] = prints[hypothesis] * 6364136223846793005L + value + 1442695040888963407L;
  }
}
