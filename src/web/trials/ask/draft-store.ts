import { type Accessor, createEffect, createSignal } from "solid-js";
import { type Draft, emptyDraft } from "./draft.ts";
import { lookPresets } from "./presets.ts";

const first: Draft = { ...emptyDraft, looks: [lookPresets.gloss] };
const nameFor = (notebook: string): string => `lacbench-trial-draft-${notebook}`;

function readKept(notebook: string): string | null {
  try {
    return localStorage.getItem(nameFor(notebook));
  } catch {
    return null; // storage is refused in some private windows: then the draft lasts as long as the page
  }
}

function keep(notebook: string, text: string | null): void {
  try {
    if (text === null) localStorage.removeItem(nameFor(notebook));
    else localStorage.setItem(nameFor(notebook), text);
  } catch {
    // As above.
  }
}

function kept(notebook: string): Draft {
  const text = readKept(notebook);
  if (text === null) return first;
  try {
    return { ...first, ...(JSON.parse(text) as Partial<Draft>) }; // written by this page; a field that is new has its start value
  } catch (error) {
    if (error instanceof SyntaxError) return first;
    throw error;
  }
}

/** The trial being asked: what is typed stays on this device until the trial is laid down. Its lot is never kept. */
export function useDraft(notebook: string): {
  readonly draft: Accessor<Draft>;
  readonly set: (change: Partial<Draft>) => void;
  readonly forget: () => void;
} {
  const [draft, setDraft] = createSignal<Draft>(kept(notebook));
  let forgotten = false;
  createEffect(() => {
    const text = JSON.stringify(draft());
    if (!forgotten) keep(notebook, text);
  });
  const forget = () => {
    forgotten = true;
    keep(notebook, null);
  };
  return { draft, set: (change) => setDraft({ ...draft(), ...change }), forget };
}
