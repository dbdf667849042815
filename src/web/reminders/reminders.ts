import { createSignal } from "solid-js";
import { siteAddress } from "../router.ts";
import * as words from "../words/words.ts";
import { type Reminder, ReminderClock } from "./reminder-clock.ts";

const key = "lacbench-remind";

function wasWanted(): boolean {
  try {
    return localStorage.getItem(key) === "yes";
  } catch {
    return false; // a browser that keeps nothing asks again
  }
}

function keepWanted(wanted: boolean): void {
  try {
    localStorage.setItem(key, wanted ? "yes" : "no");
  } catch {
    // As above.
  }
}

const offered = (): boolean => "Notification" in window;
const [wanted, setWanted] = createSignal(wasWanted() && offered() && Notification.permission === "granted");

/** Reminders are asked for here, and the browser shows them. */
export const reminding = wanted;

/** What became of asking: on, or why not. */
export type Asked = "on" | "refused" | "not-secure" | "not-offered";

/** Asks the browser, which asks the person: only ever after a press. */
export async function askToRemind(): Promise<Asked> {
  if (!offered() || !window.isSecureContext) return window.isSecureContext ? "not-offered" : "not-secure";
  if ((await Notification.requestPermission()) !== "granted") return "refused";
  setWanted(true);
  keepWanted(true);
  return "on";
}

export function stopReminding(): void {
  setWanted(false);
  keepWanted(false);
  clock.set([]);
}

/** Through the worker where there is one, since a phone takes them from nowhere else. A like one is replaced, not doubled. */
async function show({ says, key: tag }: Reminder): Promise<void> {
  const [title, how] = [words.shell.lacbench, { body: says, tag, icon: siteAddress("/mark.svg") }];
  const worker = await navigator.serviceWorker?.getRegistration();
  if (worker?.active) await worker.showNotification(title, how);
  else new Notification(title, how).onclick = () => window.focus();
}

/** One for as long as the page is open, whichever of its places is looked at. */
const clock = new ReminderClock({
  nowMs: () => Date.now(),
  wait: (ms, then) => {
    const timer = setTimeout(then, ms);
    return () => clearTimeout(timer);
  },
  show: (reminder) => void show(reminder),
});

/** What is to be told next, in place of what was before. */
export const remindOf = (reminders: readonly Reminder[]): void => clock.set(reminders);
