package org.meadowmark.core.store;

import java.io.BufferedOutputStream;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.AbstractList;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.RandomAccess;
import java.util.stream.Stream;
import org.meadowmark.core.model.KeptElsewhere;
import org.meadowmark.core.model.OutputFailedException;
import org.meadowmark.core.model.WriteAdvice;

/**
 * Rows in files of a folder, one file a list: eight bytes of memory a row. The files are gone when
 * the store is closed.
 */
public final class DiskRows implements RowStore {
  private static final int BUFFER = 1 << 16;

  private final Path folder;
  private final List<FileRows<?>> open = new ArrayList<>();

  private DiskRows(Path folder) {
    this.folder = folder;
  }

  /**
   * A store in a new folder.
   *
   * @param parent folder to make it in
   * @return the store, to be closed by the caller; where its folder is full, adding rows, or
   *     reading those that were not on disk yet, throws {@link OutputFailedException}
   * @throws OutputFailedException if it cannot be made
   */
  public static DiskRows in(Path parent) {
    try {
      return new DiskRows(Files.createTempDirectory(parent, "rows-"));
    } catch (IOException e) {
      throw failed(parent, e);
    }
  }

  private static OutputFailedException failed(Path parent, IOException e) {
    String reason = WriteAdvice.reason(e);
    return new OutputFailedException(
        "the folder for temporary files "
            + parent
            + " cannot be written to ("
            + reason
            + "); "
            + WriteAdvice.of(reason),
        e);
  }

  @Override
  public synchronized <T extends Record> Rows<T> rows(Class<T> type) {
    FileRows<T> rows = new FileRows<>(type, folder, open.size());
    open.add(rows);
    return rows;
  }

  @Override
  public synchronized void close() {
    try {
      for (FileRows<?> rows : open) {
        rows.channel.close();
      }
      try (Stream<Path> files = Files.walk(folder)) {
        for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(file);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static final class FileRows<T extends Record> extends AbstractList<T>
      implements Rows<T>, RandomAccess, KeptElsewhere {
    private final Class<T> type;
    private final Path parent;
    private final FileChannel channel;
    private final OutputStream out;
    private final ByteArrayOutputStream row = new ByteArrayOutputStream();
    private long[] ends = new long[64];
    private int count;
    private long length;
    private volatile boolean flushed = true;

    FileRows(Class<T> type, Path folder, int number) {
      this.type = type;
      parent = folder.getParent();
      try {
        channel =
            FileChannel.open(
                folder.resolve(number + ".rows"),
                StandardOpenOption.CREATE_NEW,
                StandardOpenOption.READ,
                StandardOpenOption.WRITE);
      } catch (IOException e) {
        throw failed(parent, e);
      }
      out = new BufferedOutputStream(Channels.newOutputStream(channel), BUFFER);
    }

    @Override
    public boolean add(T added) {
      try {
        row.reset();
        DataOutputStream data = new DataOutputStream(row);
        RecordCodec.write(added, type, data);
        data.flush();
        row.writeTo(out);
      } catch (IOException e) {
        throw failed(parent, e);
      }
      if (count == ends.length) {
        ends = Arrays.copyOf(ends, count + Math.max(64, count / 2));
      }
      length += row.size();
      ends[count++] = length;
      flushed = false;
      return true;
    }

    @Override
    public List<T> list() {
      return this;
    }

    @Override
    public int size() {
      return count;
    }

    @Override
    public T get(int i) {
      if (i < 0 || i >= count) {
        throw new IndexOutOfBoundsException("row " + i + " of " + count);
      }
      flush();
      try {
        long start = i == 0 ? 0 : ends[i - 1];
        ByteBuffer bytes = ByteBuffer.allocate(Math.toIntExact(ends[i] - start));
        while (bytes.hasRemaining()) {
          if (channel.read(bytes, start + bytes.position()) < 0) {
            throw new IOException("a temporary file was cut off");
          }
        }
        return RecordCodec.read(type, new DataInputStream(new ByteArrayInputStream(bytes.array())));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    private void flush() {
      if (!flushed) {
        synchronized (this) {
          try {
            out.flush();
          } catch (IOException e) {
            throw failed(parent, e);
          }
          flushed = true;
        }
      }
    }
  }
}
