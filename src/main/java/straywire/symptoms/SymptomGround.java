package straywire.symptoms;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import straywire.module.Entry;
import straywire.sim.Boards;
import straywire.sim.Variation;
import straywire.sim.Wiring;

/**
 * Everything about the symptoms of one word of lamps that no hypothesis changes: its roles, the
 * exercise, what the module as meant shows, and which symptoms make sense.
 */
final class SymptomGround {
  /** Least probability of either answer. */
  static final double FLOOR = 0.02;

  /** The same where a lamp is unknown for another reason than bits that nobody wrote. */
  static final double WIDE_FLOOR = 0.1;

  final SymptomRoles roles;
  final SymptomLooks looks;

  private final List<Entry> entries;
  private final SymptomDraws draws;
  private final Set<SymptomPredicate> offered = EnumSet.noneOf(SymptomPredicate.class);

  SymptomGround(Wiring wiring, SymptomRoles roles, SymptomDraws draws) {
    this.roles = roles;
    this.draws = draws;
    entries = SymptomExercise.of(wiring.module(), roles);
    Boards sound = new Boards(wiring, List.of(new Variation()));
    SymptomSights sights = SymptomSights.of(roles, entries, sound, draws);
    looks = sights.meant(roles, 0);
    double[] meant = shares(sights, 0);
    for (SymptomPredicate predicate : SymptomPredicate.values()) {
      if (predicate.answerable(looks) && tells(predicate, meant)) {
        offered.add(predicate);
      }
    }
  }

  /** The module as meant says no, in word and bits, to all but what is normal for it. */
  private boolean tells(SymptomPredicate predicate, double[] meant) {
    if (predicate.normal()) {
      return meant[at(predicate)] > 0;
    }
    for (int i = 0; i <= roles.width(); i++) {
      if (meant[at(predicate) + i] > 0) {
        return false;
      }
    }
    return true;
  }

  boolean offers(SymptomPredicate predicate) {
    return offered.contains(predicate);
  }

  /** Where a row has the share of the word; those of its lamps follow, the last lamp first. */
  int at(SymptomPredicate predicate) {
    return predicate.ordinal() * (1 + roles.width());
  }

  /** Bit of a lamp, -1 when it is not of this word. */
  int bit(String lamp) {
    int index = roles.lamps().members().indexOf(lamp);
    return index < 0 ? -1 : roles.width() - 1 - index;
  }

  /** For each lane a row of probabilities that each symptom is there, floor included. */
  float[][] rows(Boards boards) {
    SymptomSights sights = SymptomSights.of(roles, entries, boards, draws);
    float[][] rows = new float[boards.lanes()][];
    for (int lane = 0; lane < rows.length; lane++) {
      double floor = sights.erratic(looks, lane) ? WIDE_FLOOR : FLOOR;
      double[] shares = shares(sights, lane);
      rows[lane] = new float[shares.length];
      for (int i = 0; i < shares.length; i++) {
        rows[lane][i] = (float) (floor + (1 - 2 * floor) * shares[i]);
      }
    }
    return rows;
  }

  /** Mean degree of each symptom over the draws. */
  private double[] shares(SymptomSights sights, int lane) {
    SymptomTrial trial = new SymptomTrial(looks);
    double[] shares = new double[SymptomPredicate.values().length * (1 + roles.width())];
    int count = sights.settled(lane) ? 1 : SymptomDraws.COUNT;
    for (int draw = 0; draw < count; draw++) {
      sights.fill(trial, lane, draw);
      for (SymptomPredicate predicate : SymptomPredicate.values()) {
        if (predicate.answerable(looks)) {
          SymptomHeld held = predicate.held(trial);
          shares[at(predicate)] += held.degree() / count;
          for (long left = held.bits(); left != 0; left &= left - 1) {
            shares[at(predicate) + 1 + Long.numberOfTrailingZeros(left)] += 1.0 / count;
          }
        }
      }
    }
    return shares;
  }
}
