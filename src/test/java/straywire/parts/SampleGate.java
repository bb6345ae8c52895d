package straywire.parts;

/** A part file of a user's own, for tests. */
public final class SampleGate {
  public static final String YAML =
      """
      format: straywire-part/1
      type: strike-gate
      title: Gate of the striker
      function: Y is low while A and B are high.
      pins:
        input: {1: A, 2: B}
        output: {3: Y}
        ground: {4: GND}
        unconnected: {5: NC}
        supply: {6: VCC}
      logic: |
        Y = !(A & B)
      table: |
        A B | Y
        L X | H
        H H | L
      open-input: Reads as 1.
      sources: ["pins: none", "function: none"]
      """;

  private SampleGate() {}
}
