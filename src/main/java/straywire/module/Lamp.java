package straywire.module;

/**
 * An LED.
 *
 * @param otherSide rail segment of its far leg: on a ground rail it lights on a high, on a supply
 *     rail on a low
 * @param ohms series resistor; 0 for none
 */
public record Lamp(String label, String title, String otherSide, int ohms, boolean lightsOnHigh) {}
