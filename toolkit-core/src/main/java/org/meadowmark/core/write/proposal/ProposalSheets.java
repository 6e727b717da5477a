package org.meadowmark.core.write.proposal;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.meadowmark.core.model.OutputFailedException;
import org.meadowmark.core.write.AtomicFile;

/**
 * Writes a proposal sheet for each zone: {@code proposals/Z1.html} and {@code proposals/Z1.pdf}.
 *
 * <p>The page needs no other file, no script and no network. Both hold the same words and the same
 * map; both are the same, byte for byte, whenever the input is.
 */
public final class ProposalSheets {
  /** Folder of the sheets. */
  public static final String FOLDER = "proposals";

  private ProposalSheets() {}

  /**
   * Writes sheets for A4 paper.
   *
   * @param folder where the folder of the sheets goes; must exist
   * @param sheets by zone; nothing is written where there is none
   * @throws IllegalArgumentException if two sheets have the same zone id
   * @throws org.meadowmark.core.model.MeadowmarkException if a file exists or cannot be written;
   *     files that this call wrote are removed
   */
  public static void write(Path folder, List<ZoneSheet> sheets) {
    write(folder, sheets, Paper.A4);
  }

  /**
   * Writes sheets.
   *
   * @param folder where the folder of the sheets goes; must exist
   * @param sheets by zone; nothing is written where there is none
   * @param paper what the sheets are printed on
   * @throws IllegalArgumentException if two sheets have the same zone id
   * @throws org.meadowmark.core.model.MeadowmarkException if a file exists or cannot be written;
   *     files that this call wrote are removed
   */
  public static void write(Path folder, List<ZoneSheet> sheets, Paper paper) {
    refuseSameIds(sheets);
    if (sheets.isEmpty()) {
      return;
    }
    Path target = folder.resolve(FOLDER);
    boolean made = makeFolder(target);
    List<Path> written = new ArrayList<>();
    boolean complete = false;
    try {
      writeAll(target, sheets, paper, written);
      complete = true;
    } finally {
      if (!complete) {
        remove(written);
        if (made) {
          remove(List.of(target));
        }
      }
    }
  }

  private static void writeAll(
      Path target, List<ZoneSheet> sheets, Paper paper, List<Path> written) {
    SheetText text = SheetText.english();
    SheetHtml html = new SheetHtml(text, paper);
    SheetPdf pdf = new SheetPdf(text);
    Map<SheetSurvey, MapLayers> layers = new IdentityHashMap<>();
    for (ZoneSheet sheet : sheets) {
      String page = html.page(layers.computeIfAbsent(sheet.survey(), MapLayers::new), sheet);
      Path pageFile = target.resolve(sheet.zone().id() + ".html");
      AtomicFile.write(
          pageFile, false, file -> Files.writeString(file, page, StandardCharsets.UTF_8));
      written.add(pageFile);
      Path pdfFile = target.resolve(sheet.zone().id() + ".pdf");
      AtomicFile.write(pdfFile, false, file -> Files.write(file, pdf.of(page)));
      written.add(pdfFile);
    }
  }

  private static void refuseSameIds(List<ZoneSheet> sheets) {
    Set<String> ids = new HashSet<>();
    for (ZoneSheet sheet : sheets) {
      if (!ids.add(sheet.zone().id())) {
        throw new IllegalArgumentException("two sheets for zone " + sheet.zone().id());
      }
    }
  }

  /** Whether the folder had to be made. */
  private static boolean makeFolder(Path target) {
    if (Files.isDirectory(target)) {
      return false;
    }
    try {
      Files.createDirectory(target);
      return true;
    } catch (IOException e) {
      throw new OutputFailedException(
          target + ": cannot be made (" + e.getMessage() + "); check space and permissions", e);
    }
  }

  private static void remove(List<Path> paths) {
    for (Path path : paths) {
      try {
        Files.deleteIfExists(path);
      } catch (IOException e) {
        path.toFile().deleteOnExit();
      }
    }
  }
}
