package straywire.faults;

import java.util.List;
import straywire.module.End;
import straywire.module.Module;

/** What is wrong with the rails. */
public sealed interface SupplyEdit extends Edit {
  /** A rail segment not linked to the one that feeds it. */
  record RailUnlinked(String segment) implements SupplyEdit {
    @Override
    public void build(Building building) {
      building.variation.remove(building.wiring.link(segment));
    }

    @Override
    public List<End> touches(Module module) {
      return List.of(new End(End.Kind.RAIL, segment, 0));
    }

    @Override
    public Claim claim() {
      return Claim.of("rail", segment);
    }

    @Override
    public String words(Module module) {
      return BoardWords.capitalised(new BoardWords(module).rail(segment))
          + " is not linked to "
          + fed(module);
    }

    @Override
    public String repair(Module module) {
      return "Link " + new BoardWords(module).rail(segment) + " to " + fed(module);
    }

    @Override
    public List<String> seenAt(Module module) {
      return List.of("rail " + segment);
    }

    private String fed(Module module) {
      return new BoardWords(module).rail(module.rail(segment).orElseThrow().linkedTo());
    }
  }

  /** What leaves no part a supply: no logic is simulated. */
  sealed interface AllRails extends SupplyEdit {
    @Override
    default void build(Building building) {
      building.variation.noLogic();
    }

    @Override
    default List<End> touches(Module module) {
      return module.rails().stream().map(r -> new End(End.Kind.RAIL, r.label(), 0)).toList();
    }

    @Override
    default Claim claim() {
      return Claim.of();
    }
  }

  /** Plus and minus exchanged at the supply. */
  record SupplyReversed() implements AllRails {
    @Override
    public String words(Module module) {
      return "Plus and minus are exchanged at the supply";
    }

    @Override
    public String repair(Module module) {
      return "Exchange the two supply leads";
    }

    @Override
    public List<String> seenAt(Module module) {
      return List.of("supply");
    }
  }

  /** Supply and ground rail joined. */
  record RailsJoined() implements AllRails {
    @Override
    public String words(Module module) {
      return "The supply rail and the ground rail are joined";
    }

    @Override
    public String repair(Module module) {
      return "Find the wire or part that joins the two rails, with a continuity check, and take it"
          + " out";
    }
  }
}
