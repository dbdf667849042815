import type { Body } from "../notebook/kinds/all.ts";
import type { NotebookReader } from "../notebook/reader.ts";

/** A figure of the trade that a person may set otherwise, with how it is known. */
export interface TradeDefault {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly known: "common practice" | "from memory";
}

function changeOf(read: NotebookReader, of: TradeDefault): number | undefined {
  const changed = read
    .ofKind("default-changed")
    .map((entry) => entry.body as Body<"default-changed">)
    .findLast(
      (body) => body.name === of.name && typeof body.value === "number" && Number.isFinite(body.value),
    );
  return changed?.value as number | undefined;
}

/** What stands for a default now: the last live change that is a number, else the default itself. */
export const defaultValue = (read: NotebookReader, of: TradeDefault): number =>
  changeOf(read, of) ?? of.value;

/** Whether the person put another figure in its place. */
export const isChanged = (read: NotebookReader, of: TradeDefault): boolean =>
  changeOf(read, of) !== undefined;
