import { rmSync, unwatchFile, watchFile, writeFileSync } from "node:fs";
import type { Server } from "node:http";
import { createServer as createSecureServer, type Server as SecureServer } from "node:https";
import { join } from "node:path";
import { getRequestListener } from "@hono/node-server";
import type { Hono } from "hono";
import { isLoopback, listen, listenOn, portOf, stop } from "./listen.ts";
import type { Doors } from "./pairing/phone-routes.ts";
import { isPaired, openShop, type Shop, shopFile } from "./pairing/shop.ts";
import type { Settings } from "./settings.ts";

const everybody = "0.0.0.0";
const lookEveryMs = 500;

/** Where a running server tells the command line of the same machine how it is reached. */
export const listeningFile = (data: string): string => join(data, "listening.json");
export interface Listening {
  readonly pid: number;
  readonly plainPort: number;
  /** Null while the shop is not paired. */
  readonly securePort: number | null;
}

/**
 * What this server listens on. Until the shop is paired that is this machine alone, unless HOST says otherwise; once it
 * is, at the start or while it runs, the network too, and there also over TLS.
 */
export class OpenDoors {
  readonly #app: Hono;
  readonly #settings: Settings;
  #plain: Server | undefined;
  #secure: SecureServer | undefined;
  #shop: Shop | undefined;
  #work: Promise<void> = Promise.resolve();
  address = "";

  constructor(app: Hono, settings: Settings) {
    this.#app = app;
    this.#settings = settings;
  }

  /** @throws StartUpProblem when a port, the host or a certificate will not do */
  async open(onError: (error: unknown) => void): Promise<void> {
    const paired = isPaired(this.#settings.folder);
    await this.#listenPlain(
      paired && this.#settings.hostIsDefault ? everybody : this.#settings.host,
      this.#settings.port,
    );
    if (paired) await this.#openSecure();
    this.#tell();
    watchFile(shopFile(this.#settings.folder), { interval: lookEveryMs, persistent: false }, () => {
      this.#work = this.#work.then(() => this.#nowPaired()).catch(onError);
    });
  }

  /** Where phones come in; null until the shop is paired. */
  readonly doors = (): Doors | null => {
    if (this.#shop === undefined || this.#secure === undefined || this.#plain === undefined) return null;
    const { authority, hosts } = this.#shop;
    return { authority, hosts, plainPort: portOf(this.#plain), securePort: portOf(this.#secure) };
  };

  /** Whether nobody but this machine can be asking. */
  readonly loopbackOnly = (): boolean => this.#shop === undefined && isLoopback(this.#settings.host);

  async close(): Promise<void> {
    unwatchFile(shopFile(this.#settings.folder));
    await this.#work;
    await Promise.all([this.#plain, this.#secure].map((server) => server && stop(server)));
    rmSync(listeningFile(this.#settings.folder), { force: true });
  }

  async #nowPaired(): Promise<void> {
    if (!isPaired(this.#settings.folder)) return;
    if (this.#secure !== undefined) {
      this.#shop = openShop(this.#settings.folder, new Date());
      const { certificate: cert, key } = this.#shop.served;
      this.#secure.setSecureContext({ cert, key });
      return;
    }
    await this.#openSecure();
    if (this.#settings.hostIsDefault && this.#plain !== undefined) {
      const port = portOf(this.#plain);
      await stop(this.#plain);
      await this.#listenPlain(everybody, port);
    }
    this.#tell();
  }

  async #listenPlain(host: string, port: number): Promise<void> {
    const { server, address } = await listen(this.#app, { host, port });
    this.#plain = server;
    this.address =
      host === everybody && this.#settings.hostIsDefault ? `http://127.0.0.1:${portOf(server)}` : address;
  }

  async #openSecure(): Promise<void> {
    this.#shop = openShop(this.#settings.folder, new Date());
    const { certificate: cert, key } = this.#shop.served;
    const server = createSecureServer({ cert, key }, getRequestListener(this.#app.fetch));
    const host = this.#settings.hostIsDefault ? everybody : this.#settings.host;
    await listenOn(server, { host, port: this.#settings.securePort });
    this.#secure = server;
  }

  #tell(): void {
    const listening: Listening = {
      pid: process.pid,
      plainPort: this.#plain === undefined ? 0 : portOf(this.#plain),
      securePort: this.#secure === undefined ? null : portOf(this.#secure),
    };
    writeFileSync(listeningFile(this.#settings.folder), `${JSON.stringify(listening)}\n`, { mode: 0o600 });
  }
}
