import { type Context, Hono } from "hono";
import { setCookie } from "hono/cookie";
import { z } from "zod";
import { idSchema } from "../../core/notebook/entry.ts";
import { problemFromDomain } from "../../core/registry/problem.ts";
import { readJson } from "../../core/registry/read-json.ts";
import { bodyText } from "../body-text.ts";
import { problemOfInput, problemResponse } from "../problem-response.ts";
import { askerOf, cookieName, isEncrypted, onlyHere } from "./asker.ts";
import { derOf, fingerprint } from "./authority.ts";
import { codeMinutes, type Phones, type WhyNot } from "./phones.ts";

/** Where this server can be reached from outside, once the shop is paired. */
export interface Doors {
  readonly authority: string | null;
  readonly hosts: readonly string[];
  readonly plainPort: number;
  readonly securePort: number;
}

/** Who is let in, and by which doors. */
export interface Pairing {
  readonly phones: Phones;
  /** Null until the shop is paired. */
  readonly doors: () => Doors | null;
}

const because: Readonly<Record<WhyNot, string>> = {
  "code-unknown":
    "This code is not known here. A new one from the computer that keeps the notebook would do.",
  "code-spent": "This code has let a device in already, and each lets in one. A new one would do.",
  "code-too-old": `This code is older than ${codeMinutes} minutes. A new one would do.`,
};

/** Browsers keep a cookie for 400 days at most. */
const cookieSeconds = 400 * 86_400;

/** What a device says when it asks to be let in. */
export const asking = z.strictObject({
  code: z.string().min(1).max(100),
  name: z.string().trim().min(1).max(60),
  device: idSchema,
});

async function letIn(c: Context, phones: Phones): Promise<Response> {
  const text = await bodyText(c);
  if (!text.ok) return problemOfInput(c, text.error);
  const json = readJson(text.value);
  if (!json.ok) return problemOfInput(c, json.error);
  const read = asking.safeParse(json.value);
  if (!read.success) {
    const [issue] = read.error.issues;
    const field = issue?.path.join(".") ?? "body";
    return problemOfInput(
      c,
      problemFromDomain({ code: "wrong-type", field, value: null, because: issue?.message ?? "" }),
    );
  }
  const { code, name, device } = read.data;
  const secure = isEncrypted(c);
  const answer = phones.letIn(code, { name, device, secure });
  if (typeof answer === "string")
    return problemResponse(c, 403, {
      code: answer,
      field: "code",
      message: because[answer],
      value: null,
      limits: null,
    });
  setCookie(c, cookieName, answer.token, {
    path: "/api",
    httpOnly: true,
    sameSite: "Strict",
    secure,
    maxAge: cookieSeconds,
  });
  return c.json({ id: answer.phone.id, name: answer.phone.name });
}

const addressAt = (scheme: string, host: string, port: number): string =>
  `${scheme}://${host.includes(":") ? `[${host}]` : host}:${port}`;

const nameIn = (host: string | undefined): string | undefined =>
  host?.replace(/:\d+$/, "").replace(/^\[|\]$/g, "");

export const secureAddresses = ({ hosts, securePort }: Doors): readonly string[] =>
  hosts.slice(0, 2).map((host) => addressAt("https", host, securePort));

/** What a page must know to say where it stands: who asks, over what line, and where the secure door is. */
function door(c: Context, phones: Phones, doors: Doors | null): Response {
  const asker = askerOf(c, phones);
  const asked = nameIn(c.req.header("host"));
  const host = doors?.hosts.find((one) => one === asked) ?? doors?.hosts[0];
  return c.json({
    asker: asker === null ? "nobody" : asker === "this-machine" ? asker : "phone",
    secure: isEncrypted(c),
    secureAddress: doors === null || host === undefined ? null : addressAt("https", host, doors.securePort),
    fingerprint: doors === null || doors.authority === null ? null : fingerprint(doors.authority),
  });
}

/** A code, and the addresses under which a phone can spend it, the likeliest first. */
function newCode(c: Context, phones: Phones, doors: Doors | null): Response {
  if (doors === null)
    return problemResponse(c, 409, {
      code: "not-paired",
      field: "shop",
      message: "This shop lets no phones in yet. lacbench pair, run on this computer, would do.",
      value: null,
      limits: null,
    });
  const { code, until } = phones.newCode();
  return c.json({ until, addresses: doors.hosts.map((host) => letInAddress(doors, host, code)) });
}

/** Where a phone goes: to the plain page that leads through trusting the shop, or straight in with a certificate that it trusts. */
export function letInAddress(doors: Doors, host: string, code: string): string {
  const at =
    doors.authority === null
      ? addressAt("https", host, doors.securePort)
      : addressAt("http", host, doors.plainPort);
  return `${at}/let-in#${code}`;
}

export function phoneRoutes({ phones, doors }: Pairing): Hono {
  const here = onlyHere(phones);
  return new Hono()
    .get("/door", (c) => door(c, phones, doors()))
    .post("/let-in", (c) => letIn(c, phones))
    .get("/", here, (c) => c.json({ paired: doors() !== null, phones: phones.list() }))
    .post("/codes", here, (c) => newCode(c, phones, doors()))
    .delete("/:phone", here, (c) =>
      phones.revoke(c.req.param("phone"))
        ? c.body(null, 204)
        : problemResponse(c, 404, {
            code: "no-such-phone",
            field: "phone",
            message: "There is no such phone on the list.",
            value: c.req.param("phone"),
            limits: null,
          }),
    );
}

/** The shop's authority, for a phone to take in. Its key stays where it is. */
export const authorityFile =
  ({ doors }: Pairing) =>
  (c: Context): Response | Promise<Response> => {
    const certificate = doors()?.authority ?? null;
    if (certificate === null) return c.notFound();
    return c.body(Uint8Array.from(derOf(certificate)), 200, {
      "content-type": "application/x-x509-ca-cert",
      "content-disposition": 'attachment; filename="lacbench-authority.crt"',
      "cache-control": "no-store",
    });
  };
