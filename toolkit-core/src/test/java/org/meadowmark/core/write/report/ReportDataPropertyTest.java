package org.meadowmark.core.write.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.write.XmlText;
import org.meadowmark.core.write.report.MapLayer.Form;

/** Any name comes out of the data as it went in, and can do nothing on the way. */
class ReportDataPropertyTest {
  @Property(tries = 300)
  void namesComeBack(@ForAll List<String> names) throws IOException {
    MapLayer layer =
        MapLayer.of("beds", Form.POINT, names, names.size())
            .text("Bed", name -> name)
            .build(name -> new GeometryFactory().createPoint(new Coordinate(1, 2)), "x", "bed-0");
    Envelope extent = new Envelope(0, 10, 0, 10);
    String json =
        ReportData.json(
            new ReportMap(
                "grid",
                new Coordinate(0, 0),
                extent,
                GridFit.of(extent, Optional.empty(), GroundScale.NONE),
                List.of(layer),
                List.of(GeometryCode.of(layer.geometries(), new Coordinate(0, 0), 100))),
            Map.of());
    assertThat(json).doesNotContain("<", ">", "&", "\u2028", "\u2029");
    assertThat(StandardCharsets.UTF_8.newEncoder().canEncode(json)).isTrue();
    JsonNode column = new ObjectMapper().readTree(json).get("layers").get(0).get("columns").get(0);
    for (int i = 0; i < names.size(); i++) {
      JsonNode value = column.get("values").get(i);
      String read =
          value.isInt() ? column.get("words").get(value.asInt()).asText() : value.asText();
      if (names.get(i).isEmpty()) {
        assertThat(value.isNull()).isTrue();
      } else {
        assertThat(read).isEqualTo(XmlText.legal(names.get(i)));
      }
    }
  }
}
