import { randomBytes } from "node:crypto";
import { layOut } from "../../src/core/design/layout.ts";
import type { Plan } from "../../src/core/design/plan.ts";
import { sealKey } from "../../src/core/notebook/blind-key.ts";
import { newEntryId } from "../../src/core/notebook/entry-id.ts";
import type { Body, Kind } from "../../src/core/notebook/kinds/all.ts";
import { trialKeyText } from "../../src/core/notebook/trial-key.ts";
import { sha256OfText } from "../../src/core/notebook/withdrawal.ts";
import { writeEntry } from "../../src/core/notebook/write-entry.ts";

const random = (length: number): Uint8Array => new Uint8Array(randomBytes(length));

/** Writes a notebook as another device would, at instants so many minutes before now. */
export class Desk {
  readonly notebook = newEntryId(new Date().toISOString(), 1, random);
  readonly texts: string[] = [];
  readonly #now = Date.now();
  readonly #device = newEntryId(new Date().toISOString(), 2, random);

  write<K extends Kind>(
    minutesAgo: number,
    kind: K,
    body: Body<K>,
    about: readonly string[] = [],
    strikes: readonly string[] = [],
  ): string {
    const at = new Date(this.#now - minutesAgo * 60_000).toISOString();
    const kept = writeEntry<K>(
      { notebook: this.notebook, kind, body, about, strikes },
      {
        now: () => at,
        randomBytes: random,
        zone: "Europe/Berlin",
        device: this.#device,
        nextSeq: () => this.texts.length + 1,
        by: null,
      },
    );
    this.texts.push(kept.text);
    return kept.entry.id;
  }

  /** Puts it all into a house. */
  async send(address: string): Promise<void> {
    const answer = await fetch(`${address}/api/notebooks/${this.notebook}/entries`, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: `[${this.texts.join(",")}]`,
    });
    const { refused } = (await answer.json()) as { refused: readonly unknown[] };
    if (!answer.ok || refused.length > 0) throw new Error(`The house refused: ${JSON.stringify(refused)}`);
  }
}

const grams = (g: number) => ({ typed: `${g} g`, unit: "g", si: g / 1e3 });
const millilitres = (ml: number) => ({ typed: `${ml} ml`, unit: "ml", si: ml / 1e6 });
const degrees = (c: number) => ({ typed: `${c} °C`, unit: "degC", si: c + 273.15 });
export const passphrase = "walnut ink";

const planOf = (number: string): Plan => ({
  factors: [{ name: "alcohol", levels: ["ethanol", "isopropanol"], appliedTo: "jar" }],
  jarsPerLevel: 1,
  boards: ["cherry", "ash", "birch"].map((wood) => ({
    board: `${wood} ${number}`,
    plank: wood,
    wood,
    patches: 4,
  })),
  forbidden: [],
  neighboursForbidden: [],
  sessions: 4,
});

/** A jar of 40 g of lemon flakes to 222 ml, a 1½ lb cut by the label. */
function jars(desk: Desk): readonly string[] {
  const lemon = desk.write(9000, "material-bought", {
    form: "resin",
    name: "Lemon",
    resin: { grade: "lemon", waxMassFraction: 0.005 },
    amount: grams(500),
  });
  return [
    { code: "L4", alcohol: "ethanol", volumeFraction: 0.96 },
    { code: "P4", alcohol: "isopropanol", volumeFraction: 0.99 },
  ].map(({ code, ...solvent }) => {
    const bottle = desk.write(9000, "material-bought", { form: "solvent", name: solvent.alcohol, solvent });
    const jar = desk.write(8000, "batch-mixed", {
      code,
      resins: [{ material: lemon, amount: grams(40) }],
      solvents: [{ material: bottle, amount: millilitres(222) }],
      aimedCutLbPerGal: 1.5,
    });
    desk.write(7000, "batch-looked-at", { undissolved: "none", clarity: "clear" }, [jar]);
    return jar;
  });
}

type Laid = ReturnType<typeof layOut>;
const swappedRecipes = (laid: Laid): Laid =>
  laid.map((p) => {
    const other = laid.find((q) => q.jar !== p.jar) ?? p;
    return { ...p, jar: other.jar, treatment: other.treatment };
  });

/** Twelve patches with two coats, all due for the third but one that had its second a moment ago. The key is sealed with words. */
export const benchNotebook = (): Desk => notebookWith({ allDue: false, keyOpen: false });

/** The same with all twelve due for the third coat from two jars that the page may name. */
export const twoJarsDue = (): Desk => notebookWith({ allDue: true, keyOpen: true });

/** All due behind a shut key; with `swapped` every code has the other recipe, and nothing else differs. */
export const blindNotebook = (swapped: boolean): Desk =>
  notebookWith({ allDue: true, keyOpen: false, swapped, number: "1.5" });

interface How {
  readonly allDue: boolean;
  readonly keyOpen: boolean;
  readonly swapped?: boolean;
  /** Of each wood’s board. */
  readonly number?: string;
}

function notebookWith(how: How): Desk {
  const desk = new Desk();
  const plan = planOf(how.number ?? "1");
  desk.write(9100, "notebook-begun", { name: "Test bench" });
  const batches = jars(desk);
  const dealt = layOut(plan, "f".repeat(32));
  const laid = how.swapped === true ? swappedRecipes(dealt) : dealt;
  const keyText = trialKeyText(laid, "f".repeat(32), "0".repeat(32));
  const names = [...new Set(dealt.map((p) => p.jar))];
  const trial = desk.write(6000, "trial-asked", {
    question: "Which alcohol for the chairs?",
    varies: [{ factor: "alcohol", levels: ["ethanol", "isopropanol"], appliedTo: "jar" }],
    looksAt: [{ name: "gloss", scale: "measured" }],
    coats: 4,
  });
  desk.write(
    5900,
    "trial-laid-out",
    {
      boards: plan.boards.map((b) => ({ name: b.board, plank: b.plank, wood: b.wood, patches: b.patches })),
      patches: laid.map(({ patch, board, place, code }) => ({ patch, board, place, code })),
      orders: [0, 1, 2, 3].map((s) =>
        [...laid].sort((a, b) => (a.order[s] ?? 0) - (b.order[s] ?? 0)).map((p) => p.code),
      ),
      keySha256: sha256OfText(keyText),
      blinding: "codes only",
      jars: names.map((jar, i) => ({
        jar,
        recipe: { alcohol: dealt.find((p) => p.jar === jar)?.treatment.alcohol ?? "" },
        batch: batches[i] as string,
      })),
    },
    [trial, ...batches],
  );
  desk.write(5890, "trial-key", sealKey(keyText, { passphrase }, random), [trial]);
  if (how.keyOpen) desk.write(5880, "key-opened", { key: keyText }, [trial]);
  const coat = (minutesAgo: number, patches: readonly { readonly patch: string }[], n: number) =>
    desk.write(
      minutesAgo,
      "layer-applied",
      {
        sort: "coat",
        targets: patches.map(({ patch }) => ({ trial, patch })),
        from: [],
        method: "pad",
        planned: { coat: n },
      },
      [trial],
    );
  coat(400, laid, 1);
  coat(200, laid.slice(1), 2);
  coat(how.allDue ? 190 : 5, laid.slice(0, 1), 2);
  desk.write(30, "air-read", {
    temperature: degrees(14),
    relativeHumidity: { typed: "68 %", unit: "rh", si: 0.68 },
    wood: degrees(11),
  });
  return desk;
}
