package org.meadowmark.cli;

import java.lang.management.ManagementFactory;

/** What to do where the memory that Java may use was not enough. */
final class MemoryAdvice {
  private static final long BYTES_A_MEBIBYTE = 1L << 20;
  private static final long BYTES_A_GIBIBYTE = 1L << 30;

  /** Of the computer's memory, the part that can be given away: the system needs some. */
  private static final double LARGEST_SHARE = 0.9;

  private MemoryAdvice() {}

  /** One line, without the word error. */
  static String line() {
    return line(Runtime.getRuntime().maxMemory(), computerBytes());
  }

  /**
   * Advises twice as much, in whole gibibytes, where the computer has it.
   *
   * @param allowedBytes what Java was allowed to use
   * @param computerBytes memory of the computer, 0 if not known
   */
  static String line(long allowedBytes, long computerBytes) {
    long wanted = Math.max(1, (2 * allowedBytes + BYTES_A_GIBIBYTE - 1) / BYTES_A_GIBIBYTE);
    long most = (long) (computerBytes * LARGEST_SHARE) / BYTES_A_GIBIBYTE;
    String advice;
    if (computerBytes == 0 || wanted <= most) {
      advice = "allow more with MEADOWMARK_JAVA_OPTS=-Xmx" + wanted + "g";
    } else if (most * BYTES_A_GIBIBYTE > allowedBytes) {
      advice =
          "allow all that this computer can give with MEADOWMARK_JAVA_OPTS=-Xmx"
              + most
              + "g, or use assess-in-parts with a small --part-scars, or a computer with more memory";
    } else {
      advice = "use assess-in-parts with a small --part-scars, or a computer with more memory";
    }
    return "out of memory (" + allowedBytes / BYTES_A_MEBIBYTE + " MiB allowed); " + advice;
  }

  private static long computerBytes() {
    return ManagementFactory.getOperatingSystemMXBean()
            instanceof com.sun.management.OperatingSystemMXBean system
        ? system.getTotalMemorySize()
        : 0;
  }
}
