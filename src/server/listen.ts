import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { getRequestListener } from "@hono/node-server";
import type { Hono } from "hono";
import { StartUpProblem } from "./start-up-problem.ts";

interface Where {
  readonly host: string;
  readonly port: number;
}

const sentences: Readonly<Record<string, (where: Where) => string>> = {
  EADDRINUSE: ({ port }) =>
    `Port ${port} is taken: end the program that holds it (it may be another Lacbench), or choose another with PORT=${port + 1}.`,
  EACCES: ({ port }) => `This user may not listen on port ${port}: choose one above 1023 with PORT=4680.`,
  EADDRNOTAVAIL: ({ host }) =>
    `${host} is not an address of this machine: HOST=127.0.0.1 (this machine only) or HOST=0.0.0.0 (the network too) would do.`,
  ENOTFOUND: ({ host }) =>
    `${host} is not a known name: HOST=127.0.0.1 (this machine only) or HOST=0.0.0.0 (the network too) would do.`,
};

/** Whether a host is this machine alone. */
export const isLoopback = (host: string): boolean =>
  host === "localhost" || host === "::1" || host.startsWith("127.");

/** The port that a server that listens got. */
export const portOf = (server: Server): number => (server.address() as AddressInfo).port; // a port, not a pipe

/** Returns once it listens. @throws StartUpProblem when the port or the host will not do */
export function listenOn(server: Server, where: Where): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once("error", (error: NodeJS.ErrnoException) => {
      const sentence = sentences[error.code ?? ""];
      reject(sentence === undefined ? error : new StartUpProblem(sentence(where)));
    });
    server.listen(where.port, where.host, resolve);
  });
}

/** Listens, and returns with the address once it does. @throws StartUpProblem when the port or the host will not do */
export async function listen(app: Hono, where: Where): Promise<{ server: Server; address: string }> {
  const server = createServer(getRequestListener(app.fetch));
  await listenOn(server, where);
  const host = where.host.includes(":") ? `[${where.host}]` : where.host;
  return { server, address: `http://${host}:${portOf(server)}` };
}

/** How long an answer that is under way may take before the connection is cut. */
const patienceMs = 3_000;

/** Takes no more requests, and returns when those under way are answered. */
export async function stop(server: Server): Promise<void> {
  const closed = new Promise((resolve) => server.close(resolve));
  server.closeIdleConnections();
  const cut = setTimeout(() => server.closeAllConnections(), patienceMs);
  await closed;
  clearTimeout(cut);
}
