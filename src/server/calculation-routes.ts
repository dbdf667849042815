import { Hono } from "hono";
import { type Calculation, calculate } from "../core/registry/calculation.ts";
import { jsonSchemaOf } from "../core/registry/json-schema.ts";
import { readJson } from "../core/registry/read-json.ts";
import { atMost, bodyText } from "./body-text.ts";
import { problemOfInput, unknownName } from "./problem-response.ts";

export const mostCalculationBytes = 4 * 2 ** 20;

const told = (calculation: Calculation) => {
  const { name, purpose, sources, example } = calculation;
  return { name, purpose, sources, example, ...jsonSchemaOf(calculation) };
};

export const calculationRoutes = (calculations: readonly Calculation[]): Hono =>
  new Hono()
    .get("/", (c) => c.json({ calculations: calculations.map(told) }))
    .post("/:name", atMost(mostCalculationBytes), async (c) => {
      const name = c.req.param("name");
      const calculation = calculations.find((known) => known.name === name);
      if (calculation === undefined)
        return unknownName(
          c,
          "calculation",
          name,
          calculations.map((known) => known.name),
        );
      const text = await bodyText(c);
      if (!text.ok) return problemOfInput(c, text.error);
      const input = readJson(text.value);
      if (!input.ok) return problemOfInput(c, input.error);
      const result = calculate(calculation, input.value);
      if (!result.ok) return problemOfInput(c, result.error);
      return c.body(JSON.stringify(result.value), 200, { "content-type": "application/json" });
    });
