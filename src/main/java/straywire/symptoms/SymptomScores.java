package straywire.symptoms;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.WeakHashMap;
import java.util.function.ToDoubleFunction;
import straywire.advice.SymptomEntry;
import straywire.advice.SymptomTable;
import straywire.faults.Edit;
import straywire.faults.Hypothesis;
import straywire.faults.VariationOf;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.observe.RankingNumber;
import straywire.observe.RankingNumbers;
import straywire.observe.ReadingTable;
import straywire.sim.Boards;
import straywire.sim.Variation;
import straywire.sim.Wiring;

/**
 * Probability that a person who works the module without writing it down says yes to a symptom,
 * under every hypothesis: the share of seeded draws of an exercise in which the symptom's predicate
 * holds, with a floor. Computed when first asked for, kept by the edits of a hypothesis; the same
 * for the same module and seed. One thread at a time.
 *
 * <p>Such an answer says that the person pressed, set and may have switched off and on: after it
 * the memory is unknown again ({@link #leavesMemoryUnknown}).
 */
public final class SymptomScores {
  private static final double NOTHING_SAID = 0.5;

  private final Module module;
  private final Wiring wiring;
  private final VariationOf compiler;
  private final ReadingTable table;
  private final SymptomTable symptoms = SymptomTable.shipped();
  private final SymptomDraws draws;
  private final List<SymptomRoles> roles;
  private final List<Kept> grounds = new ArrayList<>();

  /** The ground of one word with the rows computed so far, by edits and by boards. */
  private record Kept(
      SymptomGround ground, Map<List<Edit>, float[]> byEdits, Map<Boards, float[][]> byBoards) {}

  /**
   * Nothing is simulated yet.
   *
   * @param seed of the draws
   */
  public SymptomScores(Module module, Wiring wiring, ReadingTable table, long seed) {
    this.module = module;
    this.wiring = wiring;
    this.table = table;
    compiler = new VariationOf(wiring);
    draws = new SymptomDraws(table, seed);
    roles = new ArrayList<>();
  }

  private List<Kept> grounds() {
    if (roles.isEmpty()) {
      roles.addAll(new SymptomRoleFinder(wiring).find());
      for (SymptomRoles role : roles) {
        SymptomGround ground = new SymptomGround(wiring, role, draws);
        grounds.add(new Kept(ground, new HashMap<>(), new WeakHashMap<>()));
      }
    }
    return grounds;
  }

  /** Whether a symptom is computed here, by its id; the others are weighed by rule. */
  public static boolean computes(String symptom) {
    return SymptomPredicate.of(symptom).isPresent();
  }

  /**
   * Whether an entry tells of work that was not logged, after which nothing is known of what the
   * module remembers, nor whether it was switched off and on.
   */
  public static boolean leavesMemoryUnknown(Entry entry) {
    return entry instanceof Entry.Symptom e
        && e.entries().isEmpty()
        && e.answer() != Entry.Answer.UNKNOWN
        && computes(e.symptom());
  }

  /**
   * Questions that make sense for this module, in the order of the table, words as in the module.
   */
  public List<SymptomQuestion> questions() {
    List<SymptomQuestion> questions = new ArrayList<>();
    for (SymptomEntry entry : symptoms.entries()) {
      SymptomPredicate.of(entry.id())
          .ifPresent(
              predicate -> {
                for (Kept kept : grounds()) {
                  if (kept.ground().offers(predicate)) {
                    questions.add(question(entry, kept.ground().roles.lamps().label()));
                  }
                }
              });
    }
    return questions;
  }

  private SymptomQuestion question(SymptomEntry entry, String word) {
    boolean several = module.lampWords().size() > 1;
    String text = several ? word + ": " + entry.question() : entry.question();
    return new SymptomQuestion(entry.id(), word, text, entry.seconds());
  }

  /**
   * Whether the symptom makes sense at the place, taken as in {@link #yes(List, String, String)}.
   */
  public boolean offers(String symptom, String place) {
    return !spots(predicate(symptom), place).isEmpty();
  }

  /**
   * Probability of yes under each hypothesis, 0.02 to 0.98; 0.5 for a symptom that makes no sense
   * there.
   *
   * @param place a lamp word; a lamp, for its word or, where the symptom is about single lamps, for
   *     that lamp; anything else, or nothing, for any word
   * @throws IllegalArgumentException when the symptom is not computed
   */
  public double[] yes(List<Hypothesis> hypotheses, String symptom, String place) {
    double[] yes = new double[hypotheses.size()];
    List<Spot> spots = spots(predicate(symptom), place);
    Arrays.fill(yes, spots.isEmpty() ? NOTHING_SAID : 0);
    for (Spot spot : spots) {
      compute(spot.kept(), hypotheses);
      for (int h = 0; h < yes.length; h++) {
        float[] row = spot.kept().byEdits().get(hypotheses.get(h).edits());
        yes[h] = Math.max(yes[h], row[spot.at()]);
      }
    }
    return yes;
  }

  /** The same for boards whose lanes are hypotheses. */
  public double[] yes(Boards boards, String symptom, String place) {
    double[] yes = new double[boards.lanes()];
    List<Spot> spots = spots(predicate(symptom), place);
    Arrays.fill(yes, spots.isEmpty() ? NOTHING_SAID : 0);
    for (Spot spot : spots) {
      float[][] rows =
          spot.kept().byBoards().computeIfAbsent(boards, b -> spot.kept().ground().rows(b));
      for (int lane = 0; lane < yes.length; lane++) {
        yes[lane] = Math.max(yes[lane], rows[lane][spot.at()]);
      }
    }
    return yes;
  }

  /**
   * Natural log of the probability of an answer in each lane of the boards; 0 for "don't know".
   *
   * @throws IllegalArgumentException when the symptom is not computed
   */
  public double[] logWeights(Boards boards, String symptom, String place, Entry.Answer answer) {
    if (answer == Entry.Answer.UNKNOWN) {
      return new double[boards.lanes()];
    }
    double[] logs = yes(boards, symptom, place);
    for (int lane = 0; lane < logs.length; lane++) {
      logs[lane] = log(logs[lane], answer);
    }
    return logs;
  }

  /** What an answer that is not about logged entries says of each hypothesis. */
  public SymptomWeights weights(Entry.Symptom entry) {
    return weights(entry, List.of(), hypothesis -> 0);
  }

  /**
   * The same for one of several answers.
   *
   * @param before reported unasked since the last repair
   * @param byRule what rules say of the entry, as natural logs
   */
  public SymptomWeights weights(
      Entry.Symptom entry, List<Entry.Symptom> before, ToDoubleFunction<Hypothesis> byRule) {
    return new SymptomWeights(this, entry, before, byRule);
  }

  static double log(double yes, Entry.Answer answer) {
    return switch (answer) {
      case YES -> Math.log(yes);
      case NO -> Math.log(1 - yes);
      case UNKNOWN -> 0;
    };
  }

  /**
   * Probability of what a person reports unasked, under each hypothesis. What is there is reported
   * alike often, and with the rate of mistaken reports anything is. What shows nothing, such as a
   * sound module, seldom draws a first complaint, and a further one by mistake only.
   *
   * @param before other things reported already, which would not be said again
   */
  double[] told(List<Hypothesis> hypotheses, Entry.Symptom said, List<Entry.Symptom> before) {
    SymptomPredicate about = predicate(said.symptom());
    double[] there = new double[hypotheses.size()];
    double[] left = new double[hypotheses.size()];
    int reports = 0;
    for (Kept kept : grounds()) {
      compute(kept, hypotheses);
      for (SymptomPredicate predicate : SymptomPredicate.values()) {
        if (!predicate.normal() && kept.ground().offers(predicate)) {
          reports++;
          if (before.stream().noneMatch(s -> s.symptom().equals(predicate.id()))) {
            add(left, hypotheses, new Spot(kept, kept.ground().at(predicate)));
          }
        }
      }
    }
    for (Spot spot : spots(about, said.place())) {
      add(there, hypotheses, spot);
    }
    double mistaken = table.numbers().of(RankingNumber.MISTAKEN_REPORT);
    boolean first = before.stream().noneMatch(SymptomWeights::abnormal);
    double least = first ? table.numbers().of(RankingNumber.SOUND_COMPLAINT) : mistaken;
    double[] told = new double[there.length];
    for (int h = 0; h < told.length; h++) {
      double something = Math.min(1, left[h]);
      double rightly = (1 - mistaken) * something;
      double share = there[h] == 0 ? 0 : Math.min(1, there[h] / Math.max(left[h], there[h]));
      double chosen = rightly * share + (1 - rightly) / Math.max(1, reports);
      told[h] = Math.max(least, something) * chosen;
    }
    return told;
  }

  private static void add(double[] sums, List<Hypothesis> hypotheses, Spot spot) {
    for (int h = 0; h < sums.length; h++) {
      sums[h] += beyondFloor(spot.kept().byEdits().get(hypotheses.get(h).edits())[spot.at()]);
    }
  }

  /** A share without the least probability of either answer to a question. */
  private static double beyondFloor(double yes) {
    return Math.max(0, (yes - SymptomGround.FLOOR) / (1 - 2 * SymptomGround.FLOOR));
  }

  RankingNumbers numbers() {
    return table.numbers();
  }

  private void compute(Kept kept, List<Hypothesis> hypotheses) {
    List<Hypothesis> missing = new ArrayList<>();
    for (Hypothesis hypothesis : hypotheses) {
      if (!kept.byEdits().containsKey(hypothesis.edits())) {
        missing.add(hypothesis);
      }
    }
    if (!missing.isEmpty()) {
      List<Variation> variations = missing.stream().map(compiler::compile).toList();
      float[][] rows = kept.ground().rows(new Boards(wiring, variations));
      for (int h = 0; h < rows.length; h++) {
        kept.byEdits().put(missing.get(h).edits(), rows[h]);
      }
    }
  }

  private static SymptomPredicate predicate(String symptom) {
    return SymptomPredicate.of(symptom)
        .orElseThrow(() -> new IllegalArgumentException("Symptom " + symptom + " is not computed"));
  }

  /** Where in the rows of a word an answer stands. */
  private record Spot(Kept kept, int at) {}

  private List<Spot> spots(SymptomPredicate predicate, String place) {
    List<Spot> named = new ArrayList<>();
    List<Spot> any = new ArrayList<>();
    boolean placed = false;
    for (Kept kept : grounds()) {
      SymptomGround ground = kept.ground();
      int bit = ground.bit(place);
      boolean here = bit >= 0 || ground.roles.lamps().label().equals(place);
      placed |= here;
      if (ground.offers(predicate)) {
        int lamp = bit >= 0 && predicate.ofLamps() ? 1 + bit : 0;
        any.add(new Spot(kept, ground.at(predicate)));
        if (here) {
          named.add(new Spot(kept, ground.at(predicate) + lamp));
        }
      }
    }
    return placed ? named : any;
  }

  /** The grounds, for checking answers about logged entries. */
  List<SymptomGround> all() {
    return grounds().stream().map(Kept::ground).toList();
  }

  Wiring wiring() {
    return wiring;
  }
}
