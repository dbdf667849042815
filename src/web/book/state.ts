import { fileStem } from "../controls/file-stem.ts";
import { dayOf } from "../words/time.ts";
import type { BookLine } from "./lines.ts";

export interface Filter {
  readonly text: string;
  /** Only what is about this thing. */
  readonly about: string | undefined;
}

/** Lines whose words hold every word that is looked for, whatever its case. */
export function filtered(lines: readonly BookLine[], filter: Filter): readonly BookLine[] {
  const wanted = filter.text
    .toLocaleLowerCase()
    .split(/\s+/)
    .filter((word) => word !== "");
  return lines.filter((line) => {
    if (filter.about !== undefined && line.id !== filter.about && !line.about.includes(filter.about))
      return false;
    const says = line.says.toLocaleLowerCase();
    return wanted.every((word) => says.includes(word));
  });
}

export interface DayOfLines {
  /** Its own name among the days shown: a day may come twice, where links put an entry before its time. */
  readonly key: string;
  readonly day: string;
  readonly lines: readonly BookLine[];
}

/** Runs of lines of one day, in the order of the lines. */
export function byDay(lines: readonly BookLine[], zone: string): readonly DayOfLines[] {
  const days: { key: string; day: string; lines: BookLine[] }[] = [];
  for (const line of lines) {
    const day = dayOf(line.happened, zone);
    const last = days.at(-1);
    if (last?.day === day) last.lines.push(line);
    else days.push({ key: `${day} ${days.filter((one) => one.day === day).length}`, day, lines: [line] });
  }
  return days;
}

/** A name that every file system takes. */
export const exportName = (notebook: string, day: string): string =>
  `${fileStem(notebook, "notebook")}-${day}.json`;
