import { existsSync, readFileSync } from "node:fs";
import { createServer, type Server } from "node:https";
import { extname, join } from "node:path";
import { type Certified, makeAuthority, makeLeaf } from "../../src/server/pairing/authority.ts";

const files = join(import.meta.dirname, "../../dist/plain");
const types: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
  ".svg": "image/svg+xml",
  ".woff2": "font/woff2",
};

/** A host that gives out plain files under HTTPS and knows nothing else: no notebook, no address but those of its files. */
export class PlainHost {
  readonly #folder: string;
  readonly #name: string;
  readonly #leaf: Certified;
  /** Who trusts this takes the host's certificate. */
  readonly authority: string;
  readonly asked: string[] = [];
  #server: Server | undefined;
  #port = 0;

  /** `folder`: where in the site the files lie, as `/shop/`. */
  constructor(name: string, folder: string) {
    this.#name = name;
    this.#folder = folder;
    const authority = makeAuthority("a host for tests", [name], [], new Date());
    this.authority = authority.certificate;
    this.#leaf = makeLeaf(authority, [name], [], new Date());
  }

  get address(): string {
    return `https://${this.#name}:${this.#port}${this.#folder}`;
  }

  /** The first time on any free port, then on the same: the browser keeps its book by the address. */
  async start(): Promise<void> {
    const { certificate: cert, key } = this.#leaf;
    const server = createServer({ cert, key }, (request, answer) => {
      const { pathname } = new URL(request.url ?? "/", "https://any");
      this.asked.push(`${request.method} ${pathname}`);
      const { status, file } = this.#answerTo(pathname);
      answer.writeHead(status, { "content-type": types[extname(file)] ?? "text/plain" });
      answer.end(readFileSync(join(files, file)));
    });
    await new Promise<void>((up) => server.listen(this.#port, "127.0.0.1", up));
    this.#port = (server.address() as { port: number }).port;
    this.#server = server;
  }

  async stop(): Promise<void> {
    const server = this.#server;
    this.#server = undefined;
    if (server === undefined) return;
    server.closeAllConnections();
    await new Promise((done) => server.close(done));
  }

  #answerTo(pathname: string): { readonly status: number; readonly file: string } {
    const path = pathname.startsWith(this.#folder) ? pathname.slice(this.#folder.length) : "?";
    const file = path === "" ? "index.html" : path;
    return existsSync(join(files, file)) ? { status: 200, file } : { status: 404, file: "404.html" };
  }
}
