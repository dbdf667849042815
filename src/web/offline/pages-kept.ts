import { createSignal } from "solid-js";

/** Whether the pages themselves are kept here, so that they open with no house in reach. */
export type PagesKept = "not-secure" | "not-offered" | "coming" | "kept" | "failed";

const [pagesKept, setPagesKept] = createSignal<PagesKept>("coming");
const [newVersion, setNewVersion] = createSignal<ServiceWorker>();

export { newVersion, pagesKept };

/** The first page is drawn and answers before the others are fetched. */
const afterMs = 1_500;
const lookAgainMs = 30 * 60_000;

export const canKeepPages = (): boolean => "serviceWorker" in navigator;

/** Has this browser keep the pages, and notices when a newer version of them lies ready. */
export function keepPages(): void {
  if (!canKeepPages()) {
    setPagesKept(window.isSecureContext ? "not-offered" : "not-secure");
    return;
  }
  if (navigator.serviceWorker.controller !== null) setPagesKept("kept");
  setTimeout(() => void register(), afterMs);
}

async function register(): Promise<void> {
  try {
    const registration = await navigator.serviceWorker.register(
      `${import.meta.env.BASE_URL}service-worker.js`,
    );
    watch(registration);
    const look = () => void registration.update().catch(() => undefined); // out of reach now: later will do
    setInterval(look, lookAgainMs);
    addEventListener("online", look);
    await navigator.serviceWorker.ready;
    setPagesKept("kept");
  } catch (error) {
    if (!(error instanceof TypeError || error instanceof DOMException)) throw error;
    if (navigator.serviceWorker.controller === null) setPagesKept("failed");
  }
}

function watch(registration: ServiceWorkerRegistration): void {
  const note = (worker: ServiceWorker | null) => {
    if (worker?.state === "installed" && navigator.serviceWorker.controller !== null) setNewVersion(worker);
  };
  note(registration.waiting);
  registration.addEventListener("updatefound", () => {
    const coming = registration.installing;
    coming?.addEventListener("statechange", () => note(coming));
  });
}

/** Goes over to the newer version. `settled` is awaited first: what is being written is kept before the page goes. */
export async function takeNewVersion(settled: () => Promise<void>): Promise<void> {
  const worker = newVersion();
  if (worker === undefined) return;
  await settled();
  navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
  worker.postMessage("take-over");
}
