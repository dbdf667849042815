import type { Context } from "hono";
import { type Problem, problemFromDomain } from "../core/registry/problem.ts";

const titles = {
  400: "Bad Request",
  401: "Unauthorized",
  403: "Forbidden",
  404: "Not Found",
  409: "Conflict",
  410: "Gone",
  413: "Content Too Large",
  422: "Unprocessable Content",
  500: "Internal Server Error",
} as const;
export type ProblemStatus = keyof typeof titles;

/** RFC 9457, with the fields that every door of Lacbench uses. */
export function problemResponse(c: Context, status: ProblemStatus, problem: Problem): Response {
  const body = { type: "about:blank", title: titles[status], status, detail: problem.message, ...problem };
  return c.body(JSON.stringify(body), status, { "content-type": "application/problem+json" });
}

/** Text that cannot be read is 400; what can be read and is refused is 422. */
export const problemOfInput = (c: Context, problem: Problem): Response =>
  problemResponse(c, problem.code === "unreadable" ? 400 : 422, problem);

export const unknownRoute = (c: Context): Response =>
  problemResponse(c, 404, {
    code: "unknown-route",
    field: "path",
    message: `There is nothing at ${c.req.method} ${c.req.path}. What there is stands in /api/openapi.json.`,
    value: c.req.path,
    limits: null,
  });

export const tooLarge = (c: Context, mostBytes: number): Response =>
  problemResponse(c, 413, {
    code: "too-large",
    field: "body",
    message: `The body is too large. ${mostBytes} bytes or less would do.`,
    value: c.req.header("content-length") ?? null,
    limits: { max: mostBytes },
  });

export const unknownName = (c: Context, field: string, value: string, allowed: readonly string[]): Response =>
  problemResponse(c, 404, problemFromDomain({ code: "unknown-name", field, value, limits: { allowed } }));
