import type { Body } from "../notebook/kinds/all.ts";
import { trialKeyText } from "../notebook/trial-key.ts";
import { sha256OfText } from "../notebook/withdrawal.ts";
import type { WriteDraft } from "../notebook/write-entry.ts";
import type { PlannedTrial } from "./plan-trial.ts";

/** What the person says of somebody's trial that its table does not. */
export interface Told {
  readonly question: string;
  readonly look: Body<"trial-asked">["looksAt"][number];
  /** 128 random bits each, as hexadecimal: the key hashes like any other. */
  readonly seed: string;
  readonly salt: string;
}

/**
 * Writes somebody's trial into the notebook: the question, its patches, the key open from the start, and every reading.
 * Nothing was blind here, and when things happened is not known.
 *
 * @param plan   without problems
 * @param write  puts one entry into the notebook and gives its id
 * @returns      the trial's id
 */
export function writeTrial(plan: PlannedTrial, told: Told, write: WriteDraft): string {
  const unknown = { happenedKnownTo: "unknown" } as const;
  const laid = plan.patches.map((p) => ({ ...p, code: p.patch, order: [] }));
  const keyText = trialKeyText(laid, told.seed, told.salt);
  const coats = Math.max(1, ...plan.readings.map((r) => r.afterCoat ?? 1));
  const trial = write({
    kind: "trial-asked",
    ...unknown,
    body: {
      question: told.question,
      varies: plan.factors.map(({ name, levels, appliedTo }) => ({
        factor: name,
        levels: [...levels],
        appliedTo,
      })),
      ...(plan.held.length === 0 ? {} : { held: plan.held.map((h) => ({ ...h })) }),
      looksAt: [told.look],
      coats,
    },
  });
  const about = [trial];
  write({ kind: "trial-laid-out", ...unknown, about, body: laidOut(plan, sha256OfText(keyText)) });
  write({ kind: "key-opened", ...unknown, about, body: { key: keyText } });
  for (const { patch, value, judge, occasion, afterCoat, days } of plan.readings) {
    const read = {
      patch,
      response: told.look.name,
      ...(judge === null ? {} : { who: judge }),
      ...(occasion === null || occasion < 1 ? {} : { occasion }),
      ...(days === null || days < 0 ? {} : { daysSinceLayer: days }),
      afterCoat: afterCoat ?? coats,
    };
    if (typeof value === "string")
      write({ kind: "judged", ...unknown, about, body: { ...read, level: value } });
    else {
      const unit = told.look.unit ?? "";
      const typed = { typed: String(value), unit, si: value };
      write({ kind: "measured", ...unknown, about, body: { ...read, value: typed } });
    }
  }
  return trial;
}

function laidOut(plan: PlannedTrial, keySha256: string): Body<"trial-laid-out"> {
  const boards = [...new Set(plan.patches.map((p) => p.board))].map((name) => {
    const here = plan.patches.filter((p) => p.board === name);
    return { name, plank: here[0]?.plank ?? name, wood: here[0]?.wood ?? "", patches: here.length };
  });
  const onJars = plan.factors.filter((f) => f.appliedTo === "jar").map((f) => f.name);
  const jars = new Map(
    plan.patches.map((p) => [
      p.jar,
      Object.fromEntries(onJars.map((name) => [name, p.treatment[name] ?? ""])),
    ]),
  );
  return {
    boards,
    patches: plan.patches.map(({ patch, board, place }) => ({ patch, board, place, code: patch })),
    orders: [],
    keySha256,
    blinding: "none",
    jars: [...jars].map(([jar, recipe]) => ({ jar, recipe })),
  };
}
