package org.meadowmark.cluster.geoparquet;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.meadowmark.core.store.RecordCodec;

/** Records as bytes between machines, every bit of every number kept. */
public final class RowBytes {
  private RowBytes() {}

  /** Bytes of a record. */
  public static <T extends Record> byte[] of(T value, Class<T> type) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      RecordCodec.write(value, type, new DataOutputStream(bytes));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  /** The record of the bytes. */
  public static <T extends Record> T read(Class<T> type, byte[] bytes) {
    try {
      return RecordCodec.read(type, new DataInputStream(new ByteArrayInputStream(bytes)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
