import { cannotTell } from "../design/foresight/cannot-tell.ts";
import type { LaidPatch, Plan } from "../design/plan.ts";
import { sha256OfText } from "../notebook/withdrawal.ts";

/** What a layout's entry says of a plan and its patches, whoever holds the key. */
export const laidOut = (
  plan: Plan,
  patches: readonly LaidPatch[],
  boardId: (name: string) => string,
  keyText: string,
) => ({
  boards: plan.boards.map((b) => ({
    board: boardId(b.board),
    name: b.board,
    plank: b.plank,
    wood: b.wood,
    patches: b.patches,
  })),
  patches: patches.map(({ patch, board, place, code }) => ({ patch, board, place, code })),
  orders: Array.from({ length: plan.sessions }, (_, session) =>
    [...patches]
      .sort((a, b) => (a.order[session] as number) - (b.order[session] as number))
      .map((p) => p.code),
  ),
  keySha256: sha256OfText(keyText),
  cannotTell: cannotTell(plan, patches).map((c) => ({ term: c.term, with: [...c.with] })),
});
