import { createSignal } from "solid-js";

export interface Address {
  readonly path: string;
  readonly query: URLSearchParams;
}

const here = (): Address => ({ path: location.pathname, query: new URLSearchParams(location.search) });

const [address, setAddress] = createSignal<Address>(here());

export { address };

/** Goes to a page of ours; `replace` leaves no step back. */
export function navigate(to: string, how: { readonly replace?: boolean } = {}): void {
  const before = address().path;
  if (how.replace === true) history.replaceState(null, "", to);
  else history.pushState(null, "", to);
  setAddress(here());
  if (address().path !== before) scrollTo(0, 0);
}

/** A plain link of ours is followed without asking the server; every other click is the browser's. */
function follow(event: MouseEvent): void {
  if (event.defaultPrevented || event.button !== 0) return;
  if (event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
  const link = (event.target as Element | null)?.closest?.("a");
  if (link === null || link === undefined) return;
  if (link.target !== "" || link.hasAttribute("download") || link.origin !== location.origin) return;
  if (link.pathname.startsWith("/api/")) return;
  if (link.hash !== "" && link.pathname === location.pathname) return;
  event.preventDefault();
  navigate(link.pathname + link.search + link.hash);
}

export function startRouter(): void {
  addEventListener("popstate", () => setAddress(here()));
  document.addEventListener("click", follow);
}
