import { Validator } from "@seriousme/openapi-schema-validator";
import { expect, test } from "vitest";
import { calculations } from "../core/registry/all.ts";
import { openApiDocument } from "./openapi.ts";

const document = JSON.parse(JSON.stringify(openApiDocument(calculations, "1.2.3")));

function* every(value: unknown, path = "#"): Generator<[string, unknown]> {
  yield [path, value];
  if (typeof value !== "object" || value === null) return;
  for (const [key, inner] of Object.entries(value)) yield* every(inner, `${path}/${key}`);
}

const at = (pointer: string): unknown =>
  pointer
    .slice(2)
    .split("/")
    .reduce<unknown>((here, key) => (here as Record<string, unknown> | undefined)?.[key], document);

test("the document holds against the OpenAPI initiative's own schema of version 3.1", async () => {
  const validator = new Validator();
  expect(await validator.validate(structuredClone(document))).toMatchObject({ valid: true });
  expect(validator.version).toBe("3.1");
  const { info: _, ...nameless } = structuredClone(document);
  expect(await new Validator().validate(nameless)).toMatchObject({ valid: false });
});

test("every calculation stands with its input, its output and its refusals", () => {
  for (const { name } of calculations) {
    const { post } = document.paths[`/api/calc/${name}`];
    expect(post.requestBody.content["application/json"].schema).toEqual({
      $ref: `#/components/schemas/${name}-input`,
    });
    const schema = document.components.schemas[`${name}-input`];
    for (const kind of schema.anyOf ?? [schema]) expect(kind).toMatchObject({ type: "object" });
    expect(Object.keys(post.responses)).toEqual(["200", "400", "413", "422"]);
  }
});

test("every reference leads somewhere, and every operation has an id of its own", () => {
  const ids = new Set<unknown>();
  let references = 0;
  for (const [path, value] of every(document)) {
    if (path.endsWith("/$ref")) {
      expect(at(value as string), `${path}: ${value}`).toBeDefined();
      references++;
    }
    if (path.endsWith("/operationId")) {
      expect(ids.has(value), String(value)).toBe(false);
      ids.add(value);
    }
  }
  expect(references).toBeGreaterThan(2 * calculations.length);
  expect(ids.size).toBe(calculations.length + 11);
});

test("the problem's shape has the fields of RFC 9457 and Lacbench's own", () => {
  expect(document.openapi).toBe("3.1.0");
  expect(Object.keys(document.components.schemas.Problem.properties)).toEqual(
    expect.arrayContaining([
      "type",
      "title",
      "status",
      "detail",
      "code",
      "field",
      "message",
      "value",
      "limits",
    ]),
  );
});
