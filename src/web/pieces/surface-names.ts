import type { ScheduleStep } from "../../core/notebook/kinds/pieces.ts";
import * as words from "../words/words.ts";

/** The surfaces of a plan, in its order; none where it is worked all at once. */
export const surfacesOf = (steps: readonly ScheduleStep[]): readonly string[] => [
  ...new Set(steps.flatMap(({ surface }) => surface ?? [])),
];

/** A sign for each surface that fits into the smallest block: its first letter, or the number at its end, or its place. */
export function surfaceSigns(names: readonly string[]): ReadonlyMap<string, string> {
  const signs = [
    names.map((name) => /\d{1,2}$/.exec(name)?.[0] ?? ""),
    names.map((name) => name.charAt(0).toUpperCase()),
    names.map((_, i) => String(i + 1)),
  ];
  const found = signs.find(
    (each) => each.every((sign) => sign !== "") && new Set(each).size === names.length,
  );
  return new Map(names.map((name, i) => [name, found?.[i] ?? ""]));
}

/** `chair 1 to chair 8`, `underside and top`: three or more that are counted on are told by the first and the last. */
export function surfacesInShort(names: readonly string[]): string {
  const counted = names.map((name) => /^(.*\D)(\d+)$/.exec(name) ?? [name, name, ""]);
  const follows = (i: number) =>
    counted[i]?.[2] !== "" &&
    counted[i]?.[1] === counted[i - 1]?.[1] &&
    Number(counted[i]?.[2]) === Number(counted[i - 1]?.[2]) + 1;
  const runs: string[][] = [];
  for (const [i, name] of names.entries())
    if (i > 0 && follows(i)) runs.at(-1)?.push(name);
    else runs.push([name]);
  return words.surfaces.listed(
    runs.flatMap((run) => (run.length < 3 ? run : [words.surfaces.run(run[0] ?? "", run.at(-1) ?? "")])),
  );
}

/** `coat 1 on underside and top`, `sand on all of it`: each work once, with what it is done on. */
export function worksTogether(
  works: readonly { readonly name: string; readonly surface: string | undefined }[],
  all: number,
): readonly string[] {
  const by = new Map<string, Set<string>>();
  for (const { name, surface } of works) {
    const on = by.get(name) ?? new Set<string>();
    if (surface !== undefined) on.add(surface);
    by.set(name, on);
  }
  return [...by].map(([name, on]) => {
    if (on.size === 0) return name;
    return on.size === all ? words.surfaces.onAll(name) : words.surfaces.together(name, [...on]);
  });
}
