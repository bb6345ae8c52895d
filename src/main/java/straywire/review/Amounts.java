package straywire.review;

import java.util.Locale;

/** Amounts as a technician says them; for the words of rules. */
public final class Amounts {
  private Amounts() {}

  /** {@code 1 lamp}, {@code 2 lamps}. */
  public static String counted(int number, String thing) {
    return number + " " + thing + (number == 1 ? "" : "s");
  }

  public static String volts(double volts) {
    return String.format(Locale.ROOT, "%.1f V", volts);
  }

  public static String milliamps(double milliamps) {
    String form = milliamps < 10 ? "%.1f mA" : "%.0f mA";
    return String.format(Locale.ROOT, form, milliamps);
  }

  public static String millivolts(double millivolts) {
    return String.format(Locale.ROOT, "%.0f mV", millivolts);
  }

  public static String millis(double millis) {
    return String.format(Locale.ROOT, "%.1f ms", millis);
  }

  /** {@code 330 ohm}, {@code 2.2 kohm}, {@code 10 kohm}. */
  public static String ohms(double ohms) {
    return ohms < 1000 ? plain(ohms) + " ohm" : plain(ohms / 1000) + " kohm";
  }

  private static String plain(double number) {
    return String.format(Locale.ROOT, "%.1f", number).replaceFirst("\\.0$", "");
  }
}
