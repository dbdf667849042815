import type { Context, MiddlewareHandler } from "hono";
import type { Problem } from "../core/registry/problem.ts";
import { pagePolicy } from "./page-policy.ts";
import { problemResponse } from "./problem-response.ts";

/** A policy that stands in a page itself cannot say who may frame it; a header can. */
const policy = [...pagePolicy, "frame-ancestors 'none'"].join("; ");

/** Browsers ignore the opener policy elsewhere, and write down that they did. */
const isTrustworthy = (c: Context): boolean =>
  c.req.url.startsWith("https:") || isLoopbackName(c.req.header("host"));

export const strictHeaders: MiddlewareHandler = async (c, next) => {
  await next();
  c.header("content-security-policy", policy);
  c.header("x-content-type-options", "nosniff");
  c.header("referrer-policy", "no-referrer");
  if (isTrustworthy(c)) c.header("cross-origin-opener-policy", "same-origin");
  c.header("cross-origin-resource-policy", "same-origin");
};

const fromElsewhere = (field: string, value: string): Problem => ({
  code: "other-origin",
  field,
  message: `This came by way of ${value}, which is not this Lacbench. Its own pages, or a program, would do.`,
  value,
  limits: null,
});

const hostOf = (origin: string): string | null => (URL.canParse(origin) ? new URL(origin).host : null);

/** A page of another site, open in the same browser, may not write here: browsers tell where a write comes from. */
export const sameOrigin: MiddlewareHandler = async (c, next) => {
  const origin = c.req.header("origin");
  const isRead = c.req.method === "GET" || c.req.method === "HEAD";
  if (origin === undefined || isRead || hostOf(origin) === c.req.header("host")) return next();
  return problemResponse(c, 403, fromElsewhere("origin", origin));
};

const loopback = /^(localhost|127(\.\d{1,3}){3}|\[::1\])(:\d+)?$/i;
export const isLoopbackName = (host: string | undefined): boolean =>
  host !== undefined && loopback.test(host);

/** While only this machine is meant to ask, no other name answers: none can be pointed at it. */
export const loopbackHost =
  (isOnlyHere: () => boolean): MiddlewareHandler =>
  async (c, next) => {
    const host = c.req.header("host");
    if (host === undefined || isLoopbackName(host) || !isOnlyHere()) return next();
    return problemResponse(c, 403, fromElsewhere("host", host));
  };
