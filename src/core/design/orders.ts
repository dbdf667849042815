import { type Random, shuffled } from "../random.ts";

/**
 * Orders of coating, one a session: the boards in a drawn order, and on each board its patches in a drawn order.
 * What drifts through an evening (a drying pad, a cooling shop) then falls mostly between boards, which are blocks.
 *
 * @param boardOf   the board of each patch, n
 * @param sessions  how many orders, scalar
 * @returns         for each patch its turn in each session from 1, n×sessions
 *
 * Source:   restricted randomisation within blocks, D. R. Cox, Planning of Experiments (1958), ch. 5
 */
export function drawOrders(
  boardOf: readonly string[],
  sessions: number,
  random: Random,
): readonly (readonly number[])[] {
  const boards = [...new Set(boardOf)];
  const onBoard = (board: string) => boardOf.flatMap((b, i) => (b === board ? [i] : []));
  const turns = boardOf.map(() => [] as number[]);
  for (let s = 0; s < sessions; s++) {
    shuffled(boards, random)
      .flatMap((board) => shuffled(onBoard(board), random))
      .forEach((patch, turn) => {
        turns[patch]?.push(turn + 1);
      });
  }
  return turns;
}
