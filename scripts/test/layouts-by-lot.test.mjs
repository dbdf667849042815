import { expect, test } from "vitest";
import { figures } from "../calibrate/layouts.mjs";

test("400 layouts of each kind hold everything at every place, turn and code as often as the lot says", () => {
  for (const { name, value, atMost } of figures(400)) expect(value, name).toBeLessThanOrEqual(atMost);
});
