import { createSignal } from "solid-js";

export interface Address {
  readonly path: string;
  readonly query: URLSearchParams;
}

/** The folder of the site that the pages lie in, as `/` in the house. Pages and links speak of addresses within it. */
const folder = import.meta.env.BASE_URL;
const within = (pathname: string): string =>
  pathname.startsWith(folder) ? `/${pathname.slice(folder.length)}` : pathname;
/** A page of ours as the browser's own address of it. */
export const siteAddress = (path: string): string => folder + path.slice(1);

const here = (): Address => ({
  path: within(location.pathname),
  query: new URLSearchParams(location.search),
});

const [address, setAddress] = createSignal<Address>(here());

export { address };

/** Goes to a page of ours; `replace` leaves no step back. */
export function navigate(to: string, how: { readonly replace?: boolean } = {}): void {
  const before = address().path;
  if (how.replace === true) history.replaceState(null, "", siteAddress(to));
  else history.pushState(null, "", siteAddress(to));
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
  if (link.hash !== "" && within(link.pathname) === within(location.pathname)) return;
  event.preventDefault();
  navigate(within(link.pathname) + link.search + link.hash);
}

/** A link of ours that is about to be opened in another tab, or copied, gets the folder put in front. */
function complete(event: Event): void {
  const link = (event.target as Element | null)?.closest?.("a");
  const href = link?.getAttribute("href");
  if (href?.startsWith("/") && !href.startsWith(folder)) link?.setAttribute("href", siteAddress(href));
}

export function startRouter(): void {
  addEventListener("popstate", () => setAddress(here()));
  document.addEventListener("click", follow);
  if (folder === "/") return;
  for (const kind of ["pointerover", "focusin"]) document.addEventListener(kind, complete);
}
