package org.meadowmark.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Fenced blocks of a Markdown document, in order. */
final class MarkdownBlocks {
  private static final Pattern BLOCK =
      Pattern.compile("(?ms)(?:^<!-- ([^\\n]*) -->\\n+)?^```(\\w+)\\n(.*?)^```$");

  /**
   * A block.
   *
   * @param language what stands behind the opening fence
   * @param remark the one-line HTML comment straight above the block, or empty
   * @param text its lines, each with a line end
   */
  record Block(String language, String remark, String text) {}

  private MarkdownBlocks() {}

  static List<Block> of(String document) {
    List<Block> blocks = new ArrayList<>();
    Matcher matcher = BLOCK.matcher(document);
    while (matcher.find()) {
      String remark = matcher.group(1) == null ? "" : matcher.group(1);
      blocks.add(new Block(matcher.group(2), remark, matcher.group(3)));
    }
    return blocks;
  }
}
