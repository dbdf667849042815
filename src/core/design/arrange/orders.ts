import { type Random, shuffled } from "../../random.ts";

/**
 * Orders of coating, one a session: the boards in a drawn order, and on each board its patches in a drawn order.
 * What drifts through an evening (a drying pad, a cooling shop) then falls mostly between boards, which are blocks.
 *
 * @param boardOf   the board of each patch, n
 * @param sessions  how many orders, scalar
 * @param marks     where given, the patches of a board take their turns by these marks, drawn again for each session;
 *                  n, 0 … k − 1 on each board of k
 * @returns         for each patch its turn in each session from 1, n×sessions
 *
 * Source:   restricted randomisation within blocks, D. R. Cox, Planning of Experiments (1958), ch. 5
 */
export function drawOrders(
  boardOf: readonly string[],
  sessions: number,
  random: Random,
  marks?: readonly number[],
): readonly (readonly number[])[] {
  const boards = [...new Set(boardOf)];
  const onBoard = (board: string) => boardOf.flatMap((b, i) => (b === board ? [i] : []));
  const turns = boardOf.map(() => [] as number[]);
  for (let s = 0; s < sessions; s++) {
    const byMark = marks === undefined ? null : shuffled([...new Set(marks)], random);
    const inTurn = (patches: readonly number[]) =>
      byMark === null
        ? shuffled(patches, random)
        : [...patches].sort(
            (a, b) => byMark.indexOf(marks?.[a] as number) - byMark.indexOf(marks?.[b] as number),
          );
    shuffled(boards, random)
      .flatMap((board) => inTurn(onBoard(board)))
      .forEach((patch, turn) => {
        turns[patch]?.push(turn + 1);
      });
  }
  return turns;
}
