import { readFile } from "node:fs/promises";
import { extname, join, normalize, sep } from "node:path";
import type { Context, MiddlewareHandler } from "hono";
import { unknownRoute } from "./problem-response.ts";

const types: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json",
  ".webmanifest": "application/manifest+json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".ico": "image/x-icon",
  ".woff2": "font/woff2",
  ".txt": "text/plain; charset=utf-8",
};

/** The build puts a hash of the content into these names, so what is under one never changes. */
const isHashed = (path: string): boolean => /^\/assets\/.+-[\w-]{8,}\.\w+$/.test(path);

async function read(folder: string, path: string): Promise<Uint8Array | null> {
  const file = normalize(join(folder, path));
  if (!file.startsWith(folder + sep)) return null;
  try {
    return await readFile(file);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? "";
    if (["ENOENT", "EISDIR", "ENOTDIR", "ENAMETOOLONG", "ERR_INVALID_ARG_VALUE"].includes(code)) return null;
    throw error;
  }
}

function decoded(path: string): string | null {
  try {
    return decodeURIComponent(path);
  } catch (error) {
    if (error instanceof URIError) return null;
    throw error;
  }
}

function answer(c: Context, bytes: Uint8Array, path: string): Response {
  return c.body(Uint8Array.from(bytes), 200, {
    "content-type": types[extname(path)] ?? "application/octet-stream",
    "cache-control": isHashed(path) ? "public, max-age=31536000, immutable" : "no-cache",
  });
}

/** Serves the built pages in `folder`. What is no file is a place in the pages, which `index.html` draws. */
export const pages =
  (folder: string): MiddlewareHandler =>
  async (c) => {
    if (c.req.method !== "GET" && c.req.method !== "HEAD") return unknownRoute(c);
    const path = decoded(c.req.path);
    if (path === null) return unknownRoute(c);
    const file = extname(path) === "" ? null : await read(folder, path);
    if (file !== null) return answer(c, file, path);
    // A board may be called “ash 1.5”: what a person opens is a place, what a page asks for by itself is a file.
    const isPlace = extname(path) === "" || (c.req.header("accept") ?? "").includes("text/html");
    const bytes = isPlace ? await read(folder, "/index.html") : null;
    return bytes === null ? unknownRoute(c) : answer(c, bytes, "/index.html");
  };
