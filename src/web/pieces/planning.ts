import { createMemo, createSignal } from "solid-js";
import { usuallyTakesMore } from "../../core/area/total.ts";
import type { PieceMethod } from "../../core/pieces/method-defaults.ts";
import { scheduleFromPlan } from "../../core/registry/piece-schedule.ts";
import { solventOf } from "../../core/registry/solvent-of.ts";
import { cut, poundsPerUsGallonFromCut } from "../../core/units.ts";
import { ownUse } from "../../core/views/planned-used.ts";
import type { OpenBook } from "../book-store/open-book.ts";
import { fields, readQuantity } from "../controls/read-quantity.ts";
import { createBetterPlan } from "./better-plan.ts";
import { type PieceDraft, planFrom, planInput } from "./draft.ts";
import { gramsPerMl } from "./kept-plan.ts";
import type { PartDraft } from "./parts/part-draft.ts";
import { areaText, type PartsFigures, partsFigures, timesFrom } from "./parts/parts-total.ts";
import { costOf, resinsOnShelf, solventsOnShelf } from "./shelf-choice.ts";
import { draftsOf } from "./step-draft.ts";

const areaOf = ({ total, unit }: PartsFigures): string | undefined =>
  total === undefined ? undefined : areaText(total.areaM2, unit);

/** The draft with other parts: the area follows them, and goes when the last of them does. */
function withParts(before: PieceDraft, parts: readonly PartDraft[]): PieceDraft {
  const now = areaOf(partsFigures(parts, usuallyTakesMore.endGrainTimes));
  return { ...before, parts, area: now ?? (before.parts.length > 0 ? "" : before.area) };
}

export type Planning = ReturnType<typeof createPlanning>;

/** A draft being typed and the plan that it comes to, worked out again as it changes. */
export function createPlanning(book: OpenBook, begin: PieceDraft, fromTrial?: string) {
  const [draft, setDraft] = createSignal(begin);
  const [told, setTold] = createSignal(false);
  const resins = book.view("pieces:resins", resinsOnShelf);
  const solvents = book.view("pieces:solvents", solventsOnShelf);
  const resin = () => resins().find((material) => material.id === draft().resin) ?? null;
  const solvent = () => solvents().find((material) => material.id === draft().solvent) ?? null;
  const area = createMemo(() => readQuantity(draft().area, fields.area));
  const endGrainTimes = () => timesFrom(draft().endGrainTimes) ?? usuallyTakesMore.endGrainTimes;
  const parts = createMemo(() => partsFigures(draft().parts, endGrainTimes()));
  const partsArea = createMemo(() => areaOf(parts()));
  const cutRead = createMemo(() => readQuantity(draft().cut, fields.cut));
  const cutLbPerGal = () => {
    const found = cutRead();
    return found.ok ? poundsPerUsGallonFromCut(cut(found.value.si)) : undefined;
  };
  const ownOf = (method: PieceMethod) =>
    book.look(`pieces:own:${method}`, (read) => ownUse(read, method, (piece) => gramsPerMl(piece.schedule)));
  const own = createMemo(() => ownOf(draft().method));
  const input = createMemo(() => {
    const [areaRead, composition] = [area(), solvent()?.composition];
    const asked = planInput(draft(), {
      areaM2: areaRead.ok ? areaRead.value.si : undefined,
      endGrainM2: draft().area === partsArea() ? (parts().total?.endGrainM2 ?? 0) : 0,
      cutLbPerGal: cutLbPerGal(),
      solvent: composition === undefined || composition === null ? undefined : solventOf(composition),
      own: own(),
    });
    return asked === undefined ? undefined : { ...asked, zone: book.zone };
  });
  const plan = createMemo(() => planFrom(input()));
  const better = createBetterPlan(() => {
    const found = plan();
    return found.ok && found.value.unplacedSteps === 0 ? input() : undefined;
  });
  const worked = createMemo(() => {
    const [asked, found] = [input(), plan()];
    return asked === undefined || !found.ok
      ? undefined
      : { input: asked, plan: better.plan() ?? found.value };
  });
  const problem = () => {
    const found = plan();
    return found.ok || input() === undefined ? undefined : found.error;
  };
  return {
    draft,
    put: (change: Partial<PieceDraft>) => setDraft((before) => ({ ...before, ...change })),
    putParts: (to: readonly PartDraft[]) => setDraft((before) => withParts(before, to)),
    parts,
    /** What the parts come to, as it is written into the field. */
    partsArea,
    told,
    tell: () => setTold(true),
    resins,
    solvents,
    resin,
    solvent,
    area,
    cutRead,
    cutLbPerGal,
    own,
    input,
    worked,
    better,
    /** The field that the plan refuses, where everything it needs can be read. */
    refused: () => problem()?.field,
    problem,
    takeSchedule: (schedule: PieceDraft["schedule"]) =>
      setDraft((before) => ({
        ...before,
        schedule,
        steps: schedule === "plain" || schedule === "kept" ? null : draftsOf(schedule, ownOf),
      })),
    schedule: createMemo(() => {
      const found = worked();
      const from = { resin: resin(), solvent: solvent(), ...(fromTrial === undefined ? {} : { fromTrial }) };
      return found === undefined ? undefined : scheduleFromPlan(found.input, found.plan, from);
    }),
    cost: () => {
      const found = worked()?.plan;
      return found === undefined ? null : costOf(resin(), solvent(), found.resinG, found.solventMl);
    },
  };
}
