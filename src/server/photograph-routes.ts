import { type Context, Hono } from "hono";
import { sha256Schema } from "../core/notebook/entry.ts";
import { type Problem, problemFromDomain } from "../core/registry/problem.ts";
import type { NotebookStore } from "../store/notebook-store.ts";
import { atMost } from "./body-text.ts";
import { imageType } from "./image-type.ts";
import { problemOfInput, problemResponse } from "./problem-response.ts";

export const mostPhotographBytes = 32 * 2 ** 20;

const because = "It is the SHA-256 of the photograph's bytes, 64 lower-case hexadecimal digits.";
const notAHash = (value: string): Problem =>
  problemFromDomain({ code: "wrong-type", field: "sha256", value, because });

async function put(c: Context, store: NotebookStore, sha256: string): Promise<Response> {
  const bytes = new Uint8Array(await c.req.arrayBuffer());
  if (bytes.length === 0)
    return problemOfInput(c, problemFromDomain({ code: "missing", field: "body", value: null }));
  const outcome = await store.putPhotograph(sha256, bytes);
  if (outcome === "kept") return c.body(null, 204);
  if (outcome === "hash-differs")
    return problemOfInput(
      c,
      problemFromDomain({ code: "contradiction", field: "sha256", value: sha256, because }),
    );
  return problemResponse(c, 410, {
    code: "withdrawn",
    field: "sha256",
    message: "This photograph was withdrawn, and is not taken back in.",
    value: sha256,
    limits: null,
  });
}

async function get(c: Context, store: NotebookStore, sha256: string): Promise<Response> {
  const bytes = await store.photograph(sha256);
  if (bytes !== null)
    return c.body(Uint8Array.from(bytes), 200, {
      "content-type": imageType(bytes),
      "cache-control": "private, max-age=31536000, immutable",
    });
  return problemResponse(c, 404, {
    code: "no-such-photograph",
    field: "sha256",
    message: "There is no photograph of this hash here.",
    value: sha256,
    limits: null,
  });
}

export function photographRoutes(store: NotebookStore): Hono {
  const withHash =
    (work: (c: Context, store: NotebookStore, sha256: string) => Promise<Response>) => (c: Context) => {
      const sha256 = c.req.param("sha256") ?? "";
      return sha256Schema.safeParse(sha256).success
        ? work(c, store, sha256)
        : problemOfInput(c, notAHash(sha256));
    };
  return new Hono()
    .put("/:sha256", atMost(mostPhotographBytes), withHash(put))
    .get("/:sha256", withHash(get));
}
