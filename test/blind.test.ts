// A judge with the whole database, every answer of the server, and the program itself cannot read a shut key.
import { randomBytes } from "node:crypto";
import { beforeAll, describe, expect, test } from "vitest";
import { layOut } from "../src/core/design/layout.ts";
import type { LaidPatch, Plan } from "../src/core/design/plan.ts";
import { openKey, type SealedKey, sealKey } from "../src/core/notebook/blind-key.ts";
import type { Body, Kind } from "../src/core/notebook/kinds/all.ts";
import { trialKeyText } from "../src/core/notebook/trial-key.ts";
import { sha256OfText } from "../src/core/notebook/withdrawal.ts";
import { writeEntry } from "../src/core/notebook/write-entry.ts";
import { calculations } from "../src/core/registry/all.ts";
import { createApp } from "../src/server/app.ts";
import { MemoryStore } from "../src/store/memory-store.ts";
import { type Draft, emptyDraft, readDraft } from "../src/web/trials/ask/draft.ts";
import { layDown, planOf } from "../src/web/trials/ask/plan.ts";
import { lookPresets } from "../src/web/trials/ask/presets.ts";

const book = "019a0000-0000-7000-8000-000000000001";
const secretOf = () => randomBytes(16).toString("hex");
const levels = ["ethanol", "isopropanol"];

let clear: string[];
let plan: Plan;
let laid: readonly LaidPatch[];
let sealed: SealedKey;
let keyText: string;

const fourAlcohols = {
  factors: emptyDraft.factors.map((f) => ({ ...f, levels: "ethanol, isopropanol, butanol, denatured" })),
  boardsPerWood: "4",
  planksPerWood: "4",
  patchesPerBoard: "4",
};
const drafts: readonly (readonly [string, Partial<Draft>])[] = [
  ["every board", { jarsPerLevel: "2" }],
  [
    "a control twice, boards of two sizes",
    {
      factors: emptyDraft.factors.map((f) => ({ ...f, twice: "ethanol" })),
      patchesPerBoard: "3, 6",
    },
  ],
  ["a double square", { kind: "double-square", ...fourAlcohols }],
];

/** Writes a whole trial as the pages do, keeps it in the server, and takes back all that a judge's device can ask for. */
async function writeTrial(draft: Partial<Draft>): Promise<void> {
  const { asked } = readDraft({ ...emptyDraft, ...draft, looks: [lookPresets.gloss] });
  if (asked === null) throw new Error("the draft does not read");
  plan = planOf(asked);
  const seed = secretOf();
  laid = layOut(plan, seed);
  const down = layDown(
    asked,
    { patches: laid, cannotTell: [], smallestDifference: [], sameThing: [] },
    { seed, salt: secretOf() },
    { blinding: "codes only", batches: {} },
  );
  keyText = down.keyText;
  sealed = sealKey(
    keyText,
    { deviceKey: new Uint8Array(randomBytes(32)) },
    (n) => new Uint8Array(randomBytes(n)),
  );
  let seq = 0;
  const write = <K extends Kind>(kind: K, body: Body<K>, about: readonly string[] = []) =>
    writeEntry(
      { notebook: book, kind, body, about },
      {
        now: () => new Date().toISOString(),
        randomBytes: (n) => new Uint8Array(randomBytes(n)),
        zone: "Europe/Berlin",
        device: "019a0000-0000-7000-8000-0000000000d1",
        nextSeq: () => ++seq,
        by: null,
      },
    );
  const begun = write("notebook-begun", { name: "Bench book" });
  const trial = write("trial-asked", { ...asked.body, question: "Which alcohol?" });
  const about = [trial.entry.id];
  const entries = [
    begun,
    trial,
    write("trial-laid-out", down.body, about),
    write("trial-key", sealed, about),
    ...laid.map((p) =>
      write(
        "layer-applied",
        {
          sort: "coat",
          targets: [{ trial: trial.entry.id, patch: p.patch }],
          from: [],
          method: "brush",
          planned: { coat: 1 },
        },
        about,
      ),
    ),
    ...laid.map((p, i) =>
      write(
        "measured",
        {
          patch: p.patch,
          response: "gloss",
          value: { typed: `${40 + i}`, unit: "gloss units", si: 40 + i },
          seen: "code",
        },
        about,
      ),
    ),
  ];
  const app = createApp({
    store: new MemoryStore(),
    calculations,
    version: "0",
    onError: (e) => {
      throw e;
    },
  });
  const ask = async (path: string, init?: RequestInit) => {
    const answer = await app.request(path, init);
    return answer.text();
  };
  const posted = await ask(`/api/notebooks/${book}/entries`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: `[${entries.map((e) => e.text).join(",")}]`,
  });
  expect(JSON.parse(posted).refused).toEqual([]);
  const answers = [
    posted,
    await ask("/api/notebooks"),
    await ask(`/api/notebooks/${book}/entries?limit=1000`),
    await ask("/api/openapi.json"),
  ];
  expect(JSON.parse(answers[2] as string).entries).toHaveLength(entries.length);
  clear = [...entries.map((e) => e.text), ...answers];
}

/** Every text and number that stands anywhere in what can be had, and every stretch of hexadecimal in it. */
function everythingSaid(texts: readonly string[]): ReadonlySet<string> {
  const said = new Set<string>();
  const walk = (value: unknown): void => {
    if (Array.isArray(value)) for (const item of value) walk(item);
    else if (value !== null && typeof value === "object")
      for (const [key, item] of Object.entries(value)) {
        said.add(key);
        walk(item);
      }
    else {
      const text = String(value);
      said.add(text);
      for (const hex of text.match(/[0-9a-f]{32,}/g) ?? [])
        for (let at = 0; at + 32 <= hex.length; at++) said.add(hex.slice(at, at + 32));
    }
  };
  for (const text of texts) walk(JSON.parse(text));
  return said;
}

const placed = (patches: readonly LaidPatch[]) => patches.map((p) => `${p.patch} ${p.code}`).join();

/** The attack itself, so that the last test can show that it does find a seed that was left lying about. */
const seedFoundIn = (texts: readonly string[]): string | undefined =>
  [...everythingSaid(texts)].find((seed) => seed !== "" && placed(layOut(plan, seed)) === placed(laid));

const saltFoundIn = (texts: readonly string[], seed: string): string | undefined =>
  [...everythingSaid(texts)]
    .filter((word) => /^[0-9a-f]{32,}$/.test(word))
    .find((salt) => sha256OfText(trialKeyText(laid, seed, salt)) === sealed.keySha256);

describe.each(drafts)("%s", (_name, draft) => {
  beforeAll(() => writeTrial(draft));

  test("no entry that names a code, place or order names what is on it", () => {
    for (const text of clear.filter((t) => t.includes('"kind"') && !t.includes('"entries"'))) {
      const entry = JSON.parse(text);
      if (entry.kind === "trial-asked") continue;
      const { jars = [], ...rest } = entry.body;
      for (const level of levels) expect(JSON.stringify(rest)).not.toContain(level);
      for (const { code, patch } of laid)
        for (const word of [`"${code}"`, patch]) expect(JSON.stringify(jars)).not.toContain(word);
    }
  });

  test("nothing that can be had is the seed: the layout cannot be drawn again", () => {
    expect(everythingSaid(clear).size).toBeGreaterThan(1000);
    expect(seedFoundIn(clear)).toBeUndefined();
  });

  test("nothing that can be had is the salt: even who guesses every treatment and the seed cannot confirm it by the hash", () => {
    expect(saltFoundIn(clear, JSON.parse(keyText).seed)).toBeUndefined();
  });

  test("nothing that can be had opens the sealed key", () => {
    const keys = [...everythingSaid(clear)].filter((word) => /^[0-9a-f]{64}$/.test(word));
    expect(keys.length).toBeGreaterThan(0);
    for (const hex of keys)
      expect(openKey(sealed, { deviceKey: new Uint8Array(Buffer.from(hex, "hex")) }).ok).toBe(false);
  });

  test("the same search finds them once the key has been opened", () => {
    const opened = [...clear, JSON.stringify({ key: JSON.parse(keyText) })];
    expect(seedFoundIn(opened)).toBe(JSON.parse(keyText).seed);
    expect(saltFoundIn(opened, JSON.parse(keyText).seed)).toBe(JSON.parse(keyText).salt);
  });
});
