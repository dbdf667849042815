import { createSignal } from "solid-js";

const everyMs = 15_000;
const [now, setNow] = createSignal(new Date().toISOString());

/** The instant, renewed every quarter of a minute and when the page comes back into sight. */
export { now };

setInterval(() => setNow(new Date().toISOString()), everyMs);
document.addEventListener("visibilitychange", () => setNow(new Date().toISOString()));
