package datumpeg.bridge.collect;

import datumpeg.bridge.exchange.UnassignedTable;
import datumpeg.bridge.json.JsonException;
import datumpeg.bridge.json.JsonObject;

/** Values without a target that wait for their table. Immutable. */
final class WaitingRows implements WaitingForm<UnassignedTable.Row> {
  private static final String KIND = "value without a target";

  @Override
  public JsonObject.Builder written(UnassignedTable.Row row) {
    return JsonObject.builder()
        .put("kind", KIND)
        .put("stage", row.stage())
        .put("quantity", row.quantity())
        .put("value", row.value())
        .put("unit", row.unit())
        .put("at", row.at())
        .put("operator", row.operator())
        .put("note", row.note());
  }

  @Override
  public String identity(UnassignedTable.Row row) {
    return row.note();
  }

  @Override
  public UnassignedTable.Row read(JsonObject line) throws JsonException {
    if (!line.text("kind").equals(KIND)) {
      throw new IllegalArgumentException("another kind");
    }
    return new UnassignedTable.Row(
        line.text("stage"),
        line.text("quantity"),
        line.text("value"),
        line.text("unit"),
        line.text("at"),
        line.text("operator"),
        line.text("note"));
  }
}
