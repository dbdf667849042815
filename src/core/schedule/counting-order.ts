/**
 * Tasks in the order of whole keys, like ones in the order in which they are given.
 *
 * @param keys   (n) by task, whole numbers from 0 up
 * @param tasks  the n tasks in any order
 * @returns      the n tasks, those with the smallest keys first
 *
 * Valid:  keys up to some thousands: time and room grow with the greatest
 * Source: distribution counting, D. E. Knuth, The Art of Computer Programming 3, section 5.2, algorithm D; from memory
 */
export function countingOrder(keys: Int32Array, tasks: Int32Array): Int32Array {
  let most = 0;
  for (let i = 0; i < keys.length; i++) most = Math.max(most, keys[i] as number);
  const place = new Int32Array(most + 2);
  const next = (key: number): number => {
    const at = place[key] as number;
    place[key] = at + 1;
    return at;
  };
  for (let i = 0; i < keys.length; i++) next((keys[i] as number) + 1);
  for (let key = 1; key <= most; key++) place[key] = (place[key] as number) + (place[key - 1] as number);
  const order = new Int32Array(keys.length);
  for (let i = 0; i < tasks.length; i++) {
    const task = tasks[i] as number;
    order[next(keys[task] as number)] = task;
  }
  return order;
}
