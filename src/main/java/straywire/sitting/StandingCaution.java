package straywire.sitting;

import java.util.List;
import java.util.Optional;
import straywire.advice.Caution;
import straywire.format.BadEntry;
import straywire.module.BenchLog;
import straywire.module.Entry;
import straywire.module.Module;

/**
 * Which urgent caution stands, if any: one that was answered neither by power off and a look at its
 * place, nor by a repair, nor by accepting it. A reading, a press or a power-on is no answer.
 */
final class StandingCaution {
  private static final String SUPPLY = "supply";

  private final Module module;
  private final List<BenchLog.Line> sinceRepair;
  private final boolean powered;

  /**
   * @param sinceRepair standing entries since the last repair
   * @param powered as they leave the power
   */
  StandingCaution(Module module, List<BenchLog.Line> sinceRepair, boolean powered) {
    this.module = module;
    this.sinceRepair = List.copyOf(sinceRepair);
    this.powered = powered;
  }

  /** The first that stands, in the order of the cautions. */
  Optional<Caution> first(List<Caution> cautions) {
    return cautions.stream().filter(Caution::urgent).filter(this::stands).findFirst();
  }

  private boolean stands(Caution caution) {
    boolean repairedSince =
        caution.entry() > 0
            && sinceRepair.stream().noneMatch(line -> line.number() == caution.entry());
    return !repairedSince && !accepted(caution) && !lookedAt(caution);
  }

  private boolean accepted(Caution caution) {
    Entry asAccepted = acceptance(caution);
    return sinceRepair.stream()
        .anyMatch(l -> l.number() > caution.entry() && l.entry().equals(asAccepted));
  }

  /** The power went off after the sign and something was looked over, with nothing wrong there. */
  private boolean lookedAt(Caution caution) {
    Optional<String> place = subject(caution);
    // A look at the very place that the ranking points to tells enough, whenever it was taken.
    boolean off = caution.entry() == 0 && place.isPresent();
    boolean looked = false;
    for (BenchLog.Line line : sinceRepair) {
      if (line.number() > caution.entry()) {
        if (line.entry() instanceof Entry.Power power) {
          off = off || !power.on();
        } else if (line.entry() instanceof Entry.Inspected look && off) {
          boolean there = place.isEmpty() || place.get().equals(look.subject());
          // What was seen to be wrong is not safe to power up before it is repaired.
          looked = looked || (there && (look.asMeant() || !powered));
        }
      }
    }
    return looked;
  }

  /** What to look over for a caution, as a step names it; empty for what tells most. */
  Optional<String> subject(Caution caution) {
    if (module.parts().containsKey(caution.look())) {
      return Optional.of("part " + caution.look());
    }
    return caution.look().equals(SUPPLY) ? Optional.of(SUPPLY) : Optional.empty();
  }

  /** The entry that accepts a caution. */
  static Entry acceptance(Caution caution) {
    return new Entry.Note((Entry.Note.ACCEPTED + caution.rule() + " " + caution.look()).strip());
  }

  /** What stands in the way of anything that passes over a caution. */
  static BadEntry refused(String what) {
    return new BadEntry(
        what
            + " while a caution stands: switch the power off and look, or type accept to go on at"
            + " your own risk");
  }
}
