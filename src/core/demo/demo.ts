import type { KeptEntry } from "../notebook/entry.ts";
import { jarView } from "../views/jar.ts";
import { demoClock } from "./clock.ts";
import { fillJars, type Jars, startSeedlac, weigh } from "./jars.ts";
import { planChairs } from "./piece.ts";
import { beginRetarderTrial } from "./retarder.ts";
import { openShop, type Shop } from "./shop.ts";
import { runTrial } from "./trial.ts";
import { type DemoTruth, demoTruth } from "./truth.ts";

export interface DemoOptions {
  /** Another seed is another month. */
  readonly seed: string;
  /** UTC instant that the month ends at. */
  readonly now: string;
  /** IANA name: the demo's evenings are evenings there. */
  readonly zone: string;
  /** What the trial is to find; the invented shop's unless told. */
  readonly truth?: DemoTruth;
}

/** Day −1: the working jars dropped on glass, two of them weighed; one has lost a little. */
function lookAfterJars(shop: Shop, jars: Jars): void {
  const { pen, clock } = shop;
  for (const [i, { batch, alcohol, cut }] of jars.working.entries()) {
    if (alcohol !== "ethanol") continue;
    const minutes = 40 + Math.floor(shop.random() * 50);
    pen.write(
      clock.at(-1, `18:${String(20 + i).padStart(2, "0")}`),
      "batch-drop-tested",
      { result: "hard", hardAfterMinutes: minutes },
      { about: [batch] },
    );
    const glass = jarView(pen.book, batch)?.vessel?.id;
    if (glass === undefined || cut === "1 lb") continue;
    weigh(shop, batch, glass, clock.at(-1, `18:${String(40 + i).padStart(2, "0")}`), i === 0 ? -4 : 0);
  }
}

/**
 * The demo: some six weeks of an invented restorer's notebook, up to the evening before `now`. Pure: the same options
 * give the same bytes. Everything in it is made up, and its first entry says so.
 *
 * @param options  seed, the instant it ends at, the zone of its evenings
 * @returns        its entries, in the order in which they were written
 * @throws RangeError for a zone or an instant that is none
 */
export function demoEntries(options: DemoOptions): KeptEntry[] {
  const shop = openShop(options.seed, demoClock(options.now, options.zone), options.zone);
  const jars = fillJars(shop);
  const trial = runTrial(shop, jars, options.truth ?? demoTruth);
  planChairs(shop, trial);
  beginRetarderTrial(shop, jars);
  lookAfterJars(shop, jars);
  startSeedlac(shop);
  return shop.pen.entries;
}
