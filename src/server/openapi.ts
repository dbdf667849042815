import { z } from "zod";
import { entrySchema, idSchema, sha256Schema } from "../core/notebook/entry.ts";
import type { Calculation } from "../core/registry/calculation.ts";
import { jsonSchemaOf } from "../core/registry/json-schema.ts";
import { mostCalculationBytes } from "./calculation-routes.ts";
import { mostAppendBytes, pageSize } from "./notebook-routes.ts";
import {
  absent,
  answer,
  bare,
  type Json,
  json,
  parameter,
  problem,
  refTo,
  refused,
  schemaOf,
  tooLarge,
  unreadable,
} from "./openapi-parts.ts";
import { phonePaths, phoneSchemas } from "./openapi-phones.ts";
import { mostPhotographBytes } from "./photograph-routes.ts";

const problemSchema = z.object({
  type: z.string(),
  title: z.string(),
  status: z.int(),
  detail: z.string(),
  code: z.string(),
  field: z.string(),
  message: z.string(),
  value: z.unknown(),
  limits: z
    .object({
      min: z.number().optional(),
      max: z.number().optional(),
      allowed: z.array(z.string()).optional(),
    })
    .nullable(),
});
const notebooksSchema = z.object({
  notebooks: z.array(
    z.object({ id: idSchema, name: z.string(), invented: z.boolean(), entries: z.int().min(0) }),
  ),
});
const appendReportSchema = z.object({
  accepted: z.array(idSchema),
  refused: z.array(z.looseObject({ id: z.string().nullable(), code: z.string(), message: z.string() })),
});
const arrivalsSchema = z.object({ entries: z.array(z.unknown()), cursor: z.string() });
const calculationListSchema = z.object({
  calculations: z.array(z.looseObject({ name: z.string(), purpose: z.string() })),
});

const notebookPaths: Json = {
  "/api/notebooks": {
    get: {
      operationId: "listNotebooks",
      summary: "The notebooks kept here",
      responses: { 200: answer("The notebooks.", refTo("Notebooks")) },
    },
  },
  "/api/notebooks/{notebook}/entries": {
    parameters: [parameter("notebook", "path", schemaOf(idSchema), "The notebook's id.")],
    post: {
      operationId: "appendEntries",
      summary: "Keep entries; the same one may be sent any number of times",
      description:
        "Answers only after the accepted entries are on disk. Their texts are kept byte for byte. A new notebook begins when its entry of kind notebook-begun is posted.",
      requestBody: { required: true, content: json({ type: "array", items: refTo("Entry") }) },
      responses: {
        200: answer("What is kept, and what was refused and why.", refTo("AppendReport")),
        ...{ 400: unreadable, 404: absent, 413: tooLarge(mostAppendBytes), 422: refused },
      },
    },
    get: {
      operationId: "readEntries",
      summary: "The next entries in the order in which they arrived",
      parameters: [
        parameter("after", "query", { type: "string" }, "The cursor of the answer before."),
        parameter(
          "limit",
          "query",
          { type: "integer", minimum: pageSize.min, maximum: pageSize.max, default: pageSize.default },
          "How many at most.",
        ),
      ],
      responses: {
        200: answer("Entries as they came, and the cursor to go on from.", refTo("Arrivals")),
        ...{ 404: absent, 422: refused },
      },
    },
  },
};

const bytes: Json = { "application/octet-stream": { schema: { type: "string", format: "binary" } } };
const photographPaths: Json = {
  "/api/photographs/{sha256}": {
    parameters: [
      parameter("sha256", "path", schemaOf(sha256Schema), "SHA-256 of the photograph's bytes, hexadecimal."),
    ],
    put: {
      operationId: "putPhotograph",
      summary: "Keep a photograph under its hash",
      requestBody: { required: true, content: bytes },
      responses: {
        204: { description: "It is on disk." },
        410: problem("It was withdrawn."),
        ...{ 413: tooLarge(mostPhotographBytes), 422: refused },
      },
    },
    get: {
      operationId: "getPhotograph",
      summary: "A photograph by its hash",
      responses: {
        200: { description: "The bytes, typed by what they are.", content: { "image/*": {}, ...bytes } },
        ...{ 404: absent, 422: refused },
      },
    },
  },
};

const operationName = (name: string): string => name.replace(/-(\w)/g, (_, letter) => letter.toUpperCase());

function calculationPath({ name, purpose, example }: Calculation): [string, Json] {
  const operation = {
    operationId: `calc_${operationName(name)}`,
    summary: purpose,
    requestBody: { required: true, content: json(refTo(`${name}-input`), example.input) },
    responses: {
      200: answer("The result.", refTo(`${name}-output`)),
      ...{ 400: unreadable, 413: tooLarge(mostCalculationBytes), 422: refused },
    },
  };
  return [`/api/calc/${name}`, { post: operation }];
}

function calculationSchemas(calculation: Calculation): [string, Json][] {
  const { input, output } = jsonSchemaOf(calculation);
  return [
    [`${calculation.name}-input`, bare(input)],
    [`${calculation.name}-output`, bare(output)],
  ];
}

/** The OpenAPI 3.1 document of everything that the server answers to, made from the schemas that it reads by. */
export const openApiDocument = (calculations: readonly Calculation[], version: string): Json => ({
  openapi: "3.1.0",
  info: {
    title: "Lacbench",
    version,
    summary: "A bench book for spirit finishes, and its calculations.",
    license: { name: "MIT", identifier: "MIT" },
  },
  servers: [{ url: "/" }],
  paths: {
    ...notebookPaths,
    ...photographPaths,
    ...phonePaths,
    "/api/calc": {
      get: {
        operationId: "listCalculations",
        summary: "The calculations, with the schemas of their inputs and outputs",
        responses: { 200: answer("The calculations.", refTo("Calculations")) },
      },
    },
    ...Object.fromEntries(calculations.map(calculationPath)),
  },
  components: {
    schemas: {
      Problem: schemaOf(problemSchema),
      Entry: schemaOf(entrySchema),
      Notebooks: schemaOf(notebooksSchema),
      AppendReport: schemaOf(appendReportSchema),
      Arrivals: schemaOf(arrivalsSchema),
      Calculations: schemaOf(calculationListSchema),
      ...phoneSchemas,
      ...Object.fromEntries(calculations.flatMap(calculationSchemas)),
    },
  },
});
