import { z } from "zod";

type JsonSchema = Readonly<Record<string, unknown>>;

/** JSON Schema (2020-12) of what goes into a calculation and of what comes out. */
export const jsonSchemaOf = (calculation: {
  readonly input: z.ZodType;
  readonly output: z.ZodType;
}): { readonly input: JsonSchema; readonly output: JsonSchema } => ({
  input: z.toJSONSchema(calculation.input, { io: "input", unrepresentable: "any" }),
  output: z.toJSONSchema(calculation.output, { io: "output", unrepresentable: "any" }),
});
