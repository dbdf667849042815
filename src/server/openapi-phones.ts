import { z } from "zod";
import {
  absent,
  answer,
  type Json,
  json,
  parameter,
  problem,
  refTo,
  refused,
  schemaOf,
  unreadable,
} from "./openapi-parts.ts";
import { asking } from "./pairing/phone-routes.ts";

const instant = z.iso.datetime();
const phonesSchema = z.object({
  paired: z.boolean(),
  phones: z.array(
    z.object({
      id: z.string(),
      name: z.string(),
      device: z.string(),
      letInAt: instant,
      secure: z.boolean(),
      revokedAt: instant.optional(),
    }),
  ),
});
const doorSchema = z.object({
  asker: z.enum(["nobody", "this-machine", "phone"]),
  secure: z.boolean(),
  secureAddress: z.url().nullable(),
  fingerprint: z.string().nullable(),
});
const codeSchema = z.object({ until: instant, addresses: z.array(z.url()) });
const letInSchema = z.object({ id: z.string(), name: z.string() });

const onlyHere = problem("Only this computer itself may ask that.");

/** What the server answers about phones: who asks, letting one in, the list, taking one off. */
export const phonePaths: Json = {
  "/api/phones/door": {
    get: {
      operationId: "whereAmI",
      summary: "Who asks, over what line, and where the secure door is",
      responses: { 200: answer("Where the asker stands.", refTo("Door")) },
    },
  },
  "/api/phones/let-in": {
    post: {
      operationId: "letPhoneIn",
      summary: "Spend a code: this device is let in, and gets a pass as a cookie that no script can read",
      requestBody: { required: true, content: json(refTo("LetIn")) },
      responses: {
        200: answer("It is in.", schemaOf(letInSchema)),
        403: problem("The code is not known, spent, or too old."),
        ...{ 400: unreadable, 422: refused },
      },
    },
  },
  "/api/phones": {
    get: {
      operationId: "listPhones",
      summary: "The phones on the list",
      responses: { 200: answer("The phones.", refTo("Phones")), 403: onlyHere },
    },
  },
  "/api/phones/codes": {
    post: {
      operationId: "newCode",
      summary: "A new code, good once and for ten minutes",
      responses: {
        200: answer("The code's addresses, the likeliest first.", refTo("Code")),
        403: onlyHere,
        409: problem("This shop lets no phones in yet."),
      },
    },
  },
  "/api/phones/{phone}": {
    parameters: [parameter("phone", "path", { type: "string" }, "The phone's id on the list.")],
    delete: {
      operationId: "takePhoneOff",
      summary: "Take a phone off the list",
      responses: { 204: { description: "It is not let in any more." }, 403: onlyHere, 404: absent },
    },
  },
};

export const phoneSchemas: Json = {
  Door: schemaOf(doorSchema),
  LetIn: schemaOf(asking),
  Phones: schemaOf(phonesSchema),
  Code: schemaOf(codeSchema),
};
