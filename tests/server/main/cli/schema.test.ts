import { describe, expect, it } from "vitest";
import { published, schemas } from "../../../../server/main/cli/schema.ts";

describe("the published schemas of JSON output", () => {
  // Written anew by `vitest -u`.
  it.each(Object.keys(schemas) as (keyof typeof schemas)[])("are current: %s", async (name) => {
    await expect(published(name)).toMatchFileSnapshot(`../../../../server/main/cli/schema/${name}`);
  });

  it("describe what they are made from", () => {
    expect(JSON.parse(published("reckon.schema.json"))).toMatchObject({
      $schema: "https://json-schema.org/draft/2020-12/schema",
      required: ["chair", "values"],
      properties: { values: { additionalProperties: { required: ["value", "unit"] } } },
    });
  });
});
