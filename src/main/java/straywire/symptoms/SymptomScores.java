package straywire.symptoms;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.WeakHashMap;
import straywire.advice.SymptomEntry;
import straywire.advice.SymptomTable;
import straywire.faults.Edit;
import straywire.faults.Hypothesis;
import straywire.faults.VariationOf;
import straywire.module.Entry;
import straywire.module.Module;
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
    return new SymptomWeights(this, entry);
  }

  static double log(double yes, Entry.Answer answer) {
    return switch (answer) {
      case YES -> Math.log(yes);
      case NO -> Math.log(1 - yes);
      case UNKNOWN -> 0;
    };
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
