import { createSignal } from "solid-js";
import { writer } from "./writer.ts";

const namesKey = "lacbench-helpers";
const handsKey = "lacbench-hands";

function kept(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null; // a browser that keeps nothing knows no helpers until told again
  }
}

function keep(key: string, text: string): void {
  try {
    localStorage.setItem(key, text);
  } catch {
    // As above.
  }
}

/** One name a line: no name holds a line's end. */
const namesIn = (text: string | null): readonly string[] => (text ?? "").split("\n").filter(Boolean);

const [names, setNames] = createSignal(namesIn(kept(namesKey)));
const [chosen, setChosen] = createSignal(kept(handsKey) ?? "");

/** Who helps at this device’s bench, in the order in which they were named. */
export const helpers = names;

/** Whose hands work now: a helper’s, or `""` for whoever writes here. */
export const hands = (): string => (names().includes(chosen()) ? chosen() : "");

export function setHands(name: string): void {
  setChosen(name);
  keep(handsKey, name);
}

function setHelpers(all: readonly string[]): void {
  setNames(all);
  keep(namesKey, all.join("\n"));
}

/** Names a helper, and gives the work to their hands; false for no name at all. */
export function addHelper(typed: string): boolean {
  const name = typed.trim().replace(/\s+/g, " ");
  if (name === "") return false;
  if (!names().includes(name) && name !== writer()) setHelpers([...names(), name]);
  setHands(name);
  return true;
}

export const removeHelper = (name: string): void => setHelpers(names().filter((one) => one !== name));

/** What an entry says of whose hands it was, where it was not the writer’s own. */
export const inTheHandsOf = (): { readonly for?: readonly string[] } =>
  hands() === "" ? {} : { for: [hands()] };
