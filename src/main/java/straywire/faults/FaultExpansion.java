package straywire.faults;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import straywire.module.Module;

/** Turns suggestions of mechanisms at places into hypotheses made of edits. */
public final class FaultExpansion {
  private static final String ALWAYS = "ALWAYS";

  private static final Comparator<Suggestion> SUGGESTION_ORDER =
      Comparator.comparing(Suggestion::mechanism)
          .thenComparing(s -> String.join(" ", s.places()))
          .thenComparing(Suggestion::rule)
          .thenComparing(Suggestion::reason)
          .thenComparing(Suggestion::weight);

  private FaultExpansion() {}

  /**
   * One suggestion by itself. Its prior is the frequency of the mechanism times the suggestion's
   * weight (for nothing wrong, the table's probability): relative, and not yet shared out among the
   * places the mechanism is suggested at, which only {@link #expandAll} can do.
   *
   * @throws IllegalArgumentException naming rule, mechanism and place when a place is not in the
   *     module or not of the kind that the mechanism needs
   */
  public static Hypothesis expand(Module module, Suggestion suggestion, Priors priors) {
    return expand(module, new BoardIndex(module), suggestion, priors);
  }

  /**
   * All suggestions, without doubles: suggestions of the same edits become one hypothesis, with the
   * larger weight and the rules and reasons of all. "Nothing is wrong" takes part in any case, and
   * comes first; then by mechanism and id. The order of the suggestions makes no difference.
   *
   * <p>Priors add up to 1: {@code priors.nothingWrong()} for nothing wrong; the rest is shared
   * among the suggested mechanisms by frequency, and in each among its places by weight.
   *
   * @throws IllegalArgumentException as {@link #expand}
   */
  public static List<Hypothesis> expandAll(
      Module module, List<Suggestion> suggestions, Priors priors) {
    BoardIndex index = new BoardIndex(module);
    List<Hypothesis> expanded =
        suggestions.stream()
            .sorted(SUGGESTION_ORDER)
            .map(s -> expand(module, index, s, priors))
            .collect(Collectors.toCollection(ArrayList::new));
    if (expanded.stream().noneMatch(h -> h.mechanism() == Mechanism.NOTHING_WRONG)) {
      expanded.add(expand(module, index, healthy(), priors));
    }
    return new HypothesisMerge(priors).merged(expanded);
  }

  private static Suggestion healthy() {
    return new Suggestion(
        ALWAYS, Mechanism.NOTHING_WRONG, List.of(), 1, "A module may be wired as meant.");
  }

  private static Hypothesis expand(
      Module module, BoardIndex index, Suggestion suggestion, Priors priors) {
    Mechanism mechanism = suggestion.mechanism();
    Draft draft = draft(module, new Places(module, index, suggestion), mechanism);
    double prior =
        mechanism == Mechanism.NOTHING_WRONG
            ? priors.nothingWrong()
            : priors.frequency(mechanism) * suggestion.weight();
    return new Hypothesis(
        (mechanism.slug() + " " + draft.place()).strip(),
        mechanism,
        draft.edits(),
        prior,
        suggestion.rule(),
        suggestion.reason(),
        draft.words(),
        draft.repair());
  }

  private static Draft draft(Module module, Places places, Mechanism mechanism) {
    WireFaults wires = new WireFaults(module, places);
    PartFaults parts = new PartFaults(module, places);
    BoardFaults board = new BoardFaults(module, places);
    return switch (mechanism) {
      case NOTHING_WRONG -> board.nothingWrong();
      case JUMPER_MISSING -> wires.jumperMissing();
      case SUPPLY_JUMPER_MISSING -> wires.supplyJumperMissing();
      case LEG_NOT_IN_ROW -> parts.legNotInRow();
      case END_MOVED -> wires.endMoved();
      case ENDS_SWAPPED -> wires.endsSwapped();
      case ORDER_REVERSED -> wires.orderReversed();
      case INVERTER_BYPASSED -> wires.inverterBypassed();
      case BRIDGED -> wires.bridged();
      case SHORTED_LOW -> wires.shorted(false);
      case SHORTED_HIGH -> wires.shorted(true);
      case OUTPUT_STUCK_LOW -> parts.outputStuck(false);
      case OUTPUT_STUCK_HIGH -> parts.outputStuck(true);
      case OUTPUT_DEAD -> parts.outputDead();
      case INPUT_STUCK_LOW -> parts.inputStuck(false);
      case INPUT_STUCK_HIGH -> parts.inputStuck(true);
      case WRONG_RAIL -> wires.wrongRail();
      case TURNED -> parts.turned();
      case COUNTED_AS_16 -> parts.countedAs16();
      case SUPPLY_AS_16 -> parts.supplyAs16();
      case COUNTED_MIRRORED -> parts.countedMirrored();
      case RAIL_NOT_LINKED -> board.railNotLinked();
      case WRONG_PART -> parts.wrongPart();
      case BARE_LED -> board.bareLeds();
      case LED_BACKWARDS -> board.lamp(LampEdit.LampFault.BACKWARDS);
      case LED_DEAD -> board.lamp(LampEdit.LampFault.DEAD);
      case CONTACT_DEAD -> board.control(ControlEdit.ControlFault.CONTACT_NEVER_CLOSES);
      case CONTACT_STUCK -> board.control(ControlEdit.ControlFault.CONTACT_ALWAYS_CLOSED);
      case PULL_MISSING -> board.control(ControlEdit.ControlFault.PULL_MISSING);
      case THROWS_EXCHANGED -> board.throwsExchanged();
      case COMMON_OPEN -> board.commonOpen();
      case CONTACT_BOUNCES -> board.contactBounces();
      case SUPPLY_AT_CORNERS -> wires.supplyAtCorners();
      case NOT_ACROSS_TRENCH -> parts.notAcrossTrench();
      case CONTENTS_WRONG -> parts.contentsWrong();
      case SUPPLY_NOT_QUIET -> parts.supplyNotQuiet();
      case PART_UNLISTED -> parts.unlisted();
      case SUPPLY_REVERSED -> board.supplyReversed();
      case RAILS_JOINED -> board.railsJoined();
    };
  }
}
