import { expect, test } from "vitest";
import { speciesList } from "../../../server/timber/species.ts";
import { strengthsOf } from "../../../server/timber/strengths.ts";

test("every species has its row", () => {
  for (const { key } of speciesList) expect(strengthsOf(key), key).toBeDefined();
  expect(strengthsOf("no-such-wood")).toBeUndefined();
});

// Wood Handbook, FPL-GTR-190, table 5-3 (seen in secondary prints): white oak 105 MPa in bending, 12.3 GPa; table 13-5: C 0.00365.
test("white oak as printed", () => {
  const oak = strengthsOf("white-oak");
  expect(oak?.bendingStrength).toBe(105);
  expect(oak?.stiffness).toBe(12.3);
  expect(oak?.movementTangential).toBe(0.00365);
});
