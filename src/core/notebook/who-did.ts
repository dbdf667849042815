/** Whose hands it was: those that were named, else whoever wrote it down; null where nobody said. */
export const whoDid = (entry: {
  readonly for?: readonly string[] | undefined;
  readonly by: string | null;
}): string | null => (entry.for === undefined || entry.for.length === 0 ? entry.by : entry.for.join(", "));
