import type { Context, MiddlewareHandler } from "hono";
import { getCookie } from "hono/cookie";
import { isLoopbackName } from "../guard.ts";
import { problemResponse } from "../problem-response.ts";
import type { Phone, Phones } from "./phones.ts";

/** Who is asking: somebody at this very machine, a phone that was let in, or nobody that is known. */
export type Asker = "this-machine" | Phone | null;

/** The phone's token, kept by the browser where no script can read it. */
export const cookieName = "lacbench-phone";

interface Line {
  readonly incoming?: { readonly socket?: { readonly remoteAddress?: string; readonly encrypted?: boolean } };
}
const lineOf = (c: Context) => (c.env as Line | undefined)?.incoming?.socket;

const loopbackAddress = /^(::1|(::ffff:)?127(\.\d{1,3}){3})$/;

/** Both ends must be this machine: the line, and the name that was asked for, so that no other name can be pointed here. */
const isThisMachine = (c: Context): boolean =>
  loopbackAddress.test(lineOf(c)?.remoteAddress ?? "") && isLoopbackName(c.req.header("host"));

export const isEncrypted = (c: Context): boolean => lineOf(c)?.encrypted === true;

export function askerOf(c: Context, phones: Phones): Asker {
  if (isThisMachine(c)) return "this-machine";
  return phones.of(getCookie(c, cookieName)) ?? null;
}

/** What a notebook holds is for this machine and for phones that were let in. */
export const onlyLetIn =
  (phones: Phones): MiddlewareHandler =>
  async (c, next) => {
    if (askerOf(c, phones) !== null) return next();
    return problemResponse(c, 401, {
      code: "not-let-in",
      field: "device",
      message:
        "This device is not let in. A code from the computer that keeps the notebook (lacbench pair) would do.",
      value: null,
      limits: null,
    });
  };

/** Who is let in is decided at the machine itself. */
export const onlyHere =
  (phones: Phones): MiddlewareHandler =>
  async (c, next) => {
    if (askerOf(c, phones) === "this-machine") return next();
    return problemResponse(c, 403, {
      code: "only-here",
      field: "device",
      message: "This is done at the computer that keeps the notebook, at its own address (localhost).",
      value: null,
      limits: null,
    });
  };
