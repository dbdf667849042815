import { Hono } from "hono";
import { compress } from "hono/compress";
import { etag } from "hono/etag";
import type { Calculation } from "../core/registry/calculation.ts";
import type { NotebookStore } from "../store/notebook-store.ts";
import { calculationRoutes } from "./calculation-routes.ts";
import { loopbackHost, sameOrigin, strictHeaders } from "./guard.ts";
import { notebookRoutes } from "./notebook-routes.ts";
import { openApiDocument } from "./openapi.ts";
import { pages } from "./pages.ts";
import { onlyLetIn } from "./pairing/asker.ts";
import { authorityFile, type Pairing, phoneRoutes } from "./pairing/phone-routes.ts";
import { photographRoutes } from "./photograph-routes.ts";
import { problemResponse, unknownRoute } from "./problem-response.ts";

export interface AppDeps {
  readonly store: NotebookStore;
  readonly calculations: readonly Calculation[];
  readonly version: string;
  /** The folder of the built pages; none, and only the API is served. */
  readonly pagesFolder?: string;
  /** Whether only this machine is meant to ask. */
  readonly loopbackOnly?: () => boolean;
  /** Who else is let in. Without it nobody is turned away. */
  readonly pairing?: Pairing;
  /** Told of an error that nobody expected; its details are not for the one who asked. */
  readonly onError: (error: unknown) => void;
}

/** The server as a function from a request to an answer. */
export function createApp({
  store,
  calculations,
  version,
  pagesFolder,
  loopbackOnly,
  pairing,
  onError,
}: AppDeps): Hono {
  const app = new Hono();
  app.use(strictHeaders);
  if (loopbackOnly !== undefined) app.use(loopbackHost(loopbackOnly));
  app.use(sameOrigin, compress());
  if (pairing !== undefined) {
    for (const path of ["/api/notebooks/*", "/api/photographs/*"]) app.use(path, onlyLetIn(pairing.phones));
    app.route("/api/phones", phoneRoutes(pairing));
    app.get("/lacbench-authority.crt", authorityFile(pairing));
  }
  app.route("/api/notebooks", notebookRoutes(store));
  app.route("/api/photographs", photographRoutes(store));
  app.route("/api/calc", calculationRoutes(calculations));
  app.get("/api/openapi.json", (c) => c.json(openApiDocument(calculations, version)));
  app.all("/api/*", unknownRoute);
  if (pagesFolder !== undefined) app.all("*", etag(), pages(pagesFolder));
  app.notFound(unknownRoute);
  app.onError((error, c) => {
    onError(error);
    const message =
      "Something went wrong in the server. What was not answered may not be kept: send it again.";
    return problemResponse(c, 500, { code: "internal", field: "server", message, value: null, limits: null });
  });
  return app;
}
