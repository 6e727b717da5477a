package org.meadowmark.core.write.report;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.List;
import java.util.stream.Collectors;

/**
 * The rules that a browser keeps for the page: only these scripts run, only pictures inside the
 * page show, nothing is loaded, sent or framed. Source: W3C, <i>Content Security Policy Level
 * 3</i>.
 */
final class ContentPolicy {
  private ContentPolicy() {}

  /**
   * The policy.
   *
   * @param scripts text of each script element, as it stands in the page
   * @param style text of the style element
   */
  static String of(List<String> scripts, String style) {
    return "default-src 'none'; img-src data:; style-src "
        + source(style)
        + "; script-src "
        + scripts.stream().map(ContentPolicy::source).collect(Collectors.joining(" "))
        + "; base-uri 'none'; form-action 'none'";
  }

  private static String source(String text) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return "'sha256-" + Base64.getEncoder().encodeToString(digest) + "'";
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
