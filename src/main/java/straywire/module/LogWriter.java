package straywire.module;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import straywire.format.BadEntry;
import straywire.format.InputError;

/**
 * Appends entries to a bench log. When {@link #append} returns, the line is on the disk. The file
 * is locked for as long as the writer is open.
 */
public final class LogWriter implements Closeable {

  /**
   * What lines carry besides their entry.
   *
   * @param clock where the time comes from; empty for lines without a time
   * @param checksums true for a trailing checksum
   */
  public record Style(Optional<InstantSource> clock, boolean checksums) {
    public static final Style PLAIN = new Style(Optional.empty(), false);
  }

  private final FileChannel channel;
  private final EntryFormat format;
  private final Style style;
  private BenchLog log;

  private LogWriter(FileChannel channel, Module module, BenchLog log, Style style) {
    this.channel = channel;
    this.format = new EntryFormat(module);
    this.log = log;
    this.style = style;
  }

  /**
   * Starts a log.
   *
   * @param title empty for none
   * @throws InputError when the file is there already
   */
  public static LogWriter create(Path file, Module module, String title, Style style)
      throws IOException {
    FileChannel channel;
    try {
      channel = FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    } catch (FileAlreadyExistsException e) {
      throw new InputError(file.toString(), 0, "is there already; name a new file or resume it");
    }
    BenchLog log = new BenchLog(module.name(), title, List.of());
    LogWriter writer = new LogWriter(lock(file, channel), module, log, style);
    ObjectNode header = JsonNodeFactory.instance.objectNode().put("log", module.name());
    if (!title.isEmpty()) {
      header.put("title", title);
    }
    writer.write(new LogLine(0, header));
    forceFolder(file);
    return writer;
  }

  /** Goes on with a log, after cutting off a torn last line. */
  public static LogWriter resume(Path file, Module module, LogFile.Resumed resumed, Style style)
      throws IOException {
    FileChannel channel = FileChannel.open(file, StandardOpenOption.READ, StandardOpenOption.WRITE);
    LogWriter writer = new LogWriter(lock(file, channel), module, resumed.log(), style);
    channel.truncate(resumed.goodBytes());
    ByteBuffer last = ByteBuffer.allocate(1);
    channel.read(last, resumed.goodBytes() - 1);
    channel.position(resumed.goodBytes());
    if (last.get(0) != '\n') {
      writer.writeFully("\n");
    }
    channel.force(true);
    return writer;
  }

  private static FileChannel lock(Path file, FileChannel channel) throws IOException {
    try {
      if (channel.tryLock() != null) {
        return channel;
      }
    } catch (OverlappingFileLockException e) {
      // Held by this very process: the same answer as held by another one.
    }
    channel.close();
    throw new InputError(file.toString(), 0, "is in use by another sitting");
  }

  /** The log as it is on the disk. */
  public BenchLog log() {
    return log;
  }

  /**
   * Writes one entry and waits for the disk.
   *
   * @return the entry's number
   * @throws BadEntry when the entry speaks of others that do not come before it
   */
  public int append(Entry entry) throws IOException {
    BenchLog longer = log.with(entry);
    int number = longer.lines().get(longer.lines().size() - 1).number();
    LogRules.check(number, entry);
    write(new LogLine(number, format.write(entry)));
    log = longer;
    return number;
  }

  private void write(LogLine line) throws IOException {
    long before = channel.position();
    try {
      writeFully(line.text(style.clock().map(InstantSource::instant), style.checksums()) + "\n");
      channel.force(true);
    } catch (IOException e) {
      // A full disk takes half a line; the next entry must not be written behind it.
      channel.truncate(before);
      throw e;
    }
  }

  /** Brings the name of a new file to the disk, too. */
  private static void forceFolder(Path file) {
    try (FileChannel folder =
        FileChannel.open(file.toAbsolutePath().getParent(), StandardOpenOption.READ)) {
      folder.force(true);
    } catch (IOException e) {
      // Some systems do not open folders; there the file itself is all that can be forced.
    }
  }

  private void writeFully(String text) throws IOException {
    ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
    while (bytes.hasRemaining()) {
      channel.write(bytes);
    }
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
