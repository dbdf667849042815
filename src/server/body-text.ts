import type { Context, MiddlewareHandler } from "hono";
import { bodyLimit } from "hono/body-limit";
import type { Problem } from "../core/registry/problem.ts";
import { fail, ok, type Result } from "../core/result.ts";
import { tooLarge } from "./problem-response.ts";

export const atMost = (bytes: number): MiddlewareHandler =>
  bodyLimit({ maxSize: bytes, onError: (c) => tooLarge(c, bytes) });

const utf8 = new TextDecoder("utf-8", { fatal: true });

const notUtf8: Problem = {
  code: "unreadable",
  field: "input",
  message: "The input cannot be read as UTF-8 text.",
  value: null,
  limits: null,
};

/** The body as the text that was sent, byte for byte; never through a JSON object and back. */
export async function bodyText(c: Context): Promise<Result<string, Problem>> {
  const bytes = await c.req.arrayBuffer();
  try {
    return ok(utf8.decode(bytes));
  } catch (error) {
    if (error instanceof TypeError) return fail(notUtf8); // the decoder's word for bytes that are not UTF-8
    throw error;
  }
}
