package straywire.logic;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import straywire.format.InputError;
import straywire.logic.Statement.Clause;
import straywire.logic.Statement.Moment;

/**
 * Reads the logic notation of a part file (docs/formats/part.md). Lines indented below a sentence
 * continue it; {@code each 1..4:} repeats a sentence, or the indented sentences below it, with #
 * replaced.
 */
public final class LogicParser {
  private static final Pattern EACH = Pattern.compile("each\\s+([^:]+):(.*)");

  private record Line(int number, int indent, String text) {}

  private final String file;
  private final List<Statement> statements = new ArrayList<>();

  private LogicParser(String file) {
    this.file = file;
  }

  /**
   * Reads the sentences of a part.
   *
   * @param firstLine line of the file on which {@code text} starts, counted from 1
   */
  public static List<Statement> parse(String file, int firstLine, String text) {
    LogicParser parser = new LogicParser(file);
    List<Line> lines = new ArrayList<>();
    int number = firstLine;
    for (String raw : text.split("\n", -1)) {
      String stripped = raw.strip();
      if (!stripped.isEmpty() && !stripped.startsWith("--")) {
        lines.add(new Line(number, raw.indexOf(stripped), stripped));
      }
      number++;
    }
    parser.block(lines, false);
    return List.copyOf(parser.statements);
  }

  private void block(List<Line> lines, boolean insideEach) {
    int at = 0;
    while (at < lines.size()) {
      int end = at + 1;
      while (end < lines.size() && lines.get(end).indent() > lines.get(at).indent()) {
        end++;
      }
      sentence(lines.subList(at, end), insideEach);
      at = end;
    }
  }

  private void sentence(List<Line> lines, boolean insideEach) {
    Line head = lines.get(0);
    Matcher each = EACH.matcher(head.text());
    if (!each.matches()) {
      List<Token> tokens = new ArrayList<>();
      for (Line line : lines) {
        tokens.addAll(Token.split(file, line.number(), line.text()));
      }
      statements.add(new Sentence(file, tokens).read());
      return;
    }
    if (insideEach) {
      throw new InputError(file, head.number(), "each inside each: # can stand for one list only");
    }
    List<Line> body = new ArrayList<>(lines.subList(1, lines.size()));
    String rest = each.group(2).strip();
    if (!rest.isEmpty()) {
      body.add(0, new Line(head.number(), -1, rest));
    }
    for (String item : items(file, head.number(), each.group(1))) {
      block(body.stream().map(l -> filledIn(l, item)).toList(), true);
    }
  }

  private static Line filledIn(Line line, String item) {
    return new Line(line.number(), line.indent(), line.text().replace("#", item));
  }

  /** The list behind {@code each}: names, numbers and ranges, separated by spaces. */
  public static List<String> items(String file, int line, String list) {
    List<String> items = new ArrayList<>();
    for (String word : Names.words(list)) {
      int dots = word.indexOf("..");
      if (dots < 0) {
        items.add(word);
      } else {
        items.addAll(range(file, line, word.substring(0, dots), word.substring(dots + 2)));
      }
    }
    return items;
  }

  private static List<String> range(String file, int line, String first, String last) {
    return Names.between(first, last)
        .orElseThrow(
            () ->
                new InputError(
                    file,
                    line,
                    first + ".." + last + " is no range: the ends differ in more than one place"));
  }

  /** Recursive descent over the tokens of one sentence. */
  private static final class Sentence {
    private final String file;
    private final List<Token> tokens;
    private int at;

    Sentence(String file, List<Token> tokens) {
      this.file = file;
      this.tokens = tokens;
    }

    Statement read() {
      Statement statement = statement();
      if (peek().kind() != Token.Kind.END) {
        throw error("\"" + peek().text() + "\" does not belong here");
      }
      return statement;
    }

    private Statement statement() {
      int line = peek().line();
      if (peek().is("memory")) {
        return memory(line);
      }
      if (peek().is("table")) {
        return table(line);
      }
      if (peek().is("ignore")) {
        return ignore(line);
      }
      if (tokens.size() > 1 && tokens.get(1).is("at")) {
        return store(line);
      }
      List<String> targets = targets();
      if (peek().is("<-")) {
        return take(targets, line);
      }
      expect("=");
      Expr value = expression();
      Optional<Expr> when = accept("when") ? Optional.of(expression()) : Optional.empty();
      return new Statement.Let(targets, value, when, line);
    }

    private Statement memory(int line) {
      at++;
      String name = name();
      int words = number();
      expect("x");
      int bits = number();
      boolean kept = accept("kept");
      boolean said = !kept || (accept("without") && accept("power"));
      if (!said || peek().kind() != Token.Kind.END) {
        throw error("after its size a memory may say \"kept without power\" and no more" + found());
      }
      return new Statement.Memory(name, words, bits, kept, line);
    }

    private Statement table(int line) {
      at++;
      String name = name();
      expect(":");
      List<String> words = new ArrayList<>();
      while (peek().kind() == Token.Kind.NUMBER) {
        words.add(next().text());
      }
      return new Statement.Table(name, words, line);
    }

    private Statement ignore(int line) {
      at++;
      List<String> pins = new ArrayList<>();
      while (peek().kind() == Token.Kind.NAME) {
        pins.add(name());
      }
      return new Statement.Ignore(pins, line);
    }

    private Statement store(int line) {
      String memory = name();
      expect("at");
      Expr address = primary();
      expect("<-");
      Expr value = expression();
      expect("while");
      return new Statement.Store(memory, address, value, expression(), line);
    }

    private Statement take(List<String> targets, int line) {
      List<Clause> clauses = new ArrayList<>();
      while (peek().is("<-")) {
        int clauseLine = next().line();
        Expr value = expression();
        clauses.add(new Clause(value, moment(), expression(), clauseLine));
      }
      return new Statement.Take(targets, clauses, line);
    }

    private Moment moment() {
      if (accept("while")) {
        return Moment.WHILE;
      }
      if (!accept("on")) {
        throw error("expected \"on rising\", \"on falling\" or \"while\" after what is taken");
      }
      if (accept("rising")) {
        return Moment.RISING;
      }
      expect("falling");
      return Moment.FALLING;
    }

    private List<String> targets() {
      if (!accept("[")) {
        return List.of(name());
      }
      List<String> names = new ArrayList<>();
      while (!accept("]")) {
        names.addAll(nameOrRange());
      }
      return names;
    }

    private List<String> nameOrRange() {
      int line = peek().line();
      String first = name();
      return accept("..") ? range(file, line, first, name()) : List.of(first);
    }

    private Expr expression() {
      Expr condition = or();
      if (!peek().is("?")) {
        return condition;
      }
      int line = next().line();
      Expr then = expression();
      expect(":");
      return new Expr.Choose(condition, then, expression(), line);
    }

    private Expr or() {
      Expr left = xor();
      while (peek().is("|")) {
        int line = next().line();
        left = new Expr.Pair(Expr.Op.OR, left, xor(), line);
      }
      return left;
    }

    private Expr xor() {
      Expr left = and();
      while (peek().is("^")) {
        int line = next().line();
        left = new Expr.Pair(Expr.Op.XOR, left, and(), line);
      }
      return left;
    }

    private Expr and() {
      Expr left = compared();
      while (peek().is("&")) {
        int line = next().line();
        left = new Expr.Pair(Expr.Op.AND, left, compared(), line);
      }
      return left;
    }

    private Expr compared() {
      Expr left = sum();
      for (Expr.Op op : List.of(Expr.Op.EQUAL, Expr.Op.GREATER, Expr.Op.LESS)) {
        if (peek().is(op.sign())) {
          int line = next().line();
          return new Expr.Pair(op, left, sum(), line);
        }
      }
      return left;
    }

    private Expr sum() {
      Expr left = unary();
      int line = peek().line();
      if (accept("-")) {
        return new Expr.Difference(left, unary(), line);
      }
      if (!accept("+")) {
        return left;
      }
      Expr right = unary();
      Expr carry = accept("+") ? unary() : new Expr.Amount(0, line);
      return new Expr.Sum(left, right, carry, line);
    }

    private Expr unary() {
      int line = peek().line();
      if (accept("!")) {
        return new Expr.Not(unary(), line);
      }
      Expr from = primary();
      return accept("at") ? new Expr.At(from, primary(), line) : from;
    }

    private Expr primary() {
      Token token = peek();
      if (accept("(")) {
        Expr inner = expression();
        expect(")");
        return inner;
      }
      if (accept("[")) {
        return word(token.line());
      }
      if (accept("unknown")) {
        return new Expr.Unknown(token.line());
      }
      if (token.kind() == Token.Kind.NUMBER) {
        return new Expr.Amount(number(), token.line());
      }
      return new Expr.Name(name(), token.line());
    }

    private Expr word(int line) {
      List<Expr> items = new ArrayList<>();
      while (!accept("]")) {
        Token token = peek();
        if (token.kind() == Token.Kind.NAME) {
          nameOrRange().forEach(n -> items.add(new Expr.Name(n, token.line())));
        } else if (token.is("!")) {
          items.add(unary());
        } else {
          items.add(primary());
        }
      }
      return new Expr.Word(items, line);
    }

    private String name() {
      if (peek().kind() != Token.Kind.NAME) {
        throw error("expected a name" + found());
      }
      return next().text();
    }

    private int number() {
      if (peek().kind() != Token.Kind.NUMBER || peek().text().length() > 6) {
        throw error("expected a number below a million" + found());
      }
      return Integer.parseInt(next().text());
    }

    private boolean accept(String sign) {
      if (peek().is(sign)) {
        at++;
        return true;
      }
      return false;
    }

    private void expect(String sign) {
      if (!accept(sign)) {
        throw error("expected \"" + sign + "\"" + found());
      }
    }

    private String found() {
      return peek().kind() == Token.Kind.END
          ? ", but the sentence ends"
          : " before \"" + peek().text() + "\"";
    }

    private Token peek() {
      return at < tokens.size()
          ? tokens.get(at)
          : new Token(Token.Kind.END, "", tokens.get(tokens.size() - 1).line());
    }

    private Token next() {
      return tokens.get(at++);
    }

    private InputError error(String what) {
      return new InputError(file, peek().line(), what);
    }
  }
}
