package straywire.faults;

import java.util.List;
import straywire.module.End;
import straywire.module.Module;

/** One difference between a module as built and as meant. */
public sealed interface Edit
    permits WireEdit, LegEdit, ChipEdit, LampEdit, ControlEdit, SupplyEdit {

  /** The ends whose wiring or behaviour this changes, in the order the edit names them. */
  List<End> touches(Module module);

  /** Builds the module so. */
  void build(Building building);

  /** What this decides about: two edits with contradicting claims cannot both hold. */
  Claim claim();

  /** What is different, as a person says it, without a full stop. */
  String words(Module module);

  /** The inverse, as a request, without cautions and without a full stop. */
  String repair(Module module);

  /** Subjects of a careful look that shows this, such as {@code jumper U1.3-U2.3}; often none. */
  default List<String> seenAt(Module module) {
    return List.of();
  }
}
