package org.meadowmark.core.write.folder;

import java.io.IOException;
import java.net.InetAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Tells which run a hidden folder belongs to, and whether that run is over.
 *
 * <p>The mark is part of the folder's name: process number, computer, and a number drawn for the
 * run. It needs no file lock, which network drives often lack. A process number says nothing about
 * another computer, so runs there count as going on; see {@link Leftovers}.
 *
 * @param processId process number
 * @param computer name of the computer, letters and digits only
 * @param draw tells runs of one process apart
 */
record RunMark(long processId, String computer, String draw) {
  private static final Pattern TEXT = Pattern.compile("(\\d{1,19})-([a-z0-9]*)-([a-z0-9]+)");
  private static final int LONGEST_COMPUTER_NAME = 24;
  private static final int DRAW_LENGTH = 8;
  private static final Path KERNEL_HOST_NAME = Path.of("/proc/sys/kernel/hostname");
  private static final Set<RunMark> GOING_ON_HERE = ConcurrentHashMap.newKeySet();

  /** Marks a run of this process; it is going on until {@link #end()}. */
  static RunMark begin() {
    RunMark mark =
        new RunMark(
            ProcessHandle.current().pid(),
            thisComputer(),
            UUID.randomUUID().toString().substring(0, DRAW_LENGTH));
    GOING_ON_HERE.add(mark);
    return mark;
  }

  /** The run is over. */
  void end() {
    GOING_ON_HERE.remove(this);
  }

  String text() {
    return processId + "-" + computer + "-" + draw;
  }

  /** The mark in a text, if it is one. */
  static Optional<RunMark> parse(String text) {
    Matcher matcher = TEXT.matcher(text);
    if (!matcher.matches()) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new RunMark(Long.parseLong(matcher.group(1)), matcher.group(2), matcher.group(3)));
    } catch (NumberFormatException e) {
      return Optional.empty();
    }
  }

  /** Whether the run was on this computer. */
  boolean isOfThisComputer() {
    return computer.equals(thisComputer());
  }

  /** Whether the run is known to be over, because its process has ended. */
  boolean isOver() {
    if (!isOfThisComputer()) {
      return false;
    }
    if (processId == ProcessHandle.current().pid()) {
      return !GOING_ON_HERE.contains(this);
    }
    return !ProcessHandle.of(processId).map(ProcessHandle::isAlive).orElse(false);
  }

  private static String thisComputer() {
    String letters = hostName().toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "");
    return letters.substring(0, Math.min(letters.length(), LONGEST_COMPUTER_NAME));
  }

  /** Looks the name up in a network only where the system does not say it. */
  private static String hostName() {
    try {
      return Files.readString(KERNEL_HOST_NAME, StandardCharsets.UTF_8);
    } catch (IOException e) {
      String windowsName = System.getenv("COMPUTERNAME");
      if (windowsName != null) {
        return windowsName;
      }
    }
    try {
      return InetAddress.getLocalHost().getHostName();
    } catch (IOException e) {
      return "";
    }
  }
}
