import type { JarView } from "../../core/views/jar.ts";

/** A jar of the family in its place: the middle of its drawing across, its top down. */
export interface Kin {
  readonly jar: JarView;
  readonly x: number;
  readonly y: number;
}

export interface LineagePlan {
  readonly kin: readonly Kin[];
  readonly pours: readonly { readonly from: Kin; readonly to: Kin }[];
  readonly width: number;
  readonly height: number;
}

/** What one jar takes: its glass, two lines of words, the air in which the lines run. */
export const kinSize = { width: 64, glass: 50, words: 42, air: 30 } as const;
const rowHeight = kinSize.glass + kinSize.words + kinSize.air;

/** Where the link over a jar lies; computed, for a page of ours holds no style in its text. */
export const linkOver = ({ x, y }: Kin) => ({
  left: `${x - kinSize.width / 2}px`,
  top: `${y}px`,
  width: `${kinSize.width}px`,
  height: `${kinSize.glass + kinSize.words}px`,
});

/** The jar with all that it came from and all that came from it. */
function familyOf(jar: JarView, look: (id: string) => JarView | null): ReadonlyMap<string, JarView> {
  const family = new Map([[jar.id, jar]]);
  const follow = (next: "parents" | "children") => {
    const open = [...jar[next]];
    for (let id = open.pop(); id !== undefined; id = open.pop()) {
      const found = family.has(id) ? null : look(id);
      if (found === null) continue;
      family.set(id, found);
      open.push(...found[next]);
    }
  };
  follow("parents");
  follow("children");
  return family;
}

/** How many pours lie between a jar and the flakes, by the longest way; a ring ends where it closes. */
function depths(family: ReadonlyMap<string, JarView>): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  const depthOf = (id: string, on: ReadonlySet<string>): number => {
    const known = found.get(id);
    if (known !== undefined || on.has(id)) return known ?? 0;
    const parents = (family.get(id)?.parents ?? []).filter((parent) => family.has(parent));
    const depth = Math.max(-1, ...parents.map((parent) => depthOf(parent, new Set([...on, id])))) + 1;
    found.set(id, depth);
    return depth;
  };
  for (const id of family.keys()) depthOf(id, new Set());
  return found;
}

const chunks = <T>(list: readonly T[], size: number): readonly (readonly T[])[] =>
  Array.from({ length: Math.ceil(list.length / size) }, (_, i) => list.slice(i * size, (i + 1) * size));

/**
 * A jar's family as a drawing: flakes at the top, each pour one row further down, children under their parents.
 *
 * @param jar    whose family it is
 * @param look   any jar by its id
 * @param width  px across
 */
export function lineagePlan(jar: JarView, look: (id: string) => JarView | null, width: number): LineagePlan {
  const family = familyOf(jar, look);
  const depth = depths(family);
  const placed = new Map<string, Kin>();
  let y = 0;
  for (let level = 0; level <= Math.max(...depth.values()); level++) {
    const here = [...family.values()].filter((one) => depth.get(one.id) === level);
    const under = (one: JarView) => {
      const xs = one.parents.flatMap((parent) => placed.get(parent)?.x ?? []);
      return xs.length === 0 ? width / 2 : xs.reduce((sum, x) => sum + x, 0) / xs.length;
    };
    here.sort((a, b) => under(a) - under(b) || (a.madeAt < b.madeAt ? -1 : 1));
    for (const row of chunks(here, Math.floor(width / kinSize.width))) {
      const pitch = width / row.length;
      for (const [i, one] of row.entries()) placed.set(one.id, { jar: one, x: (i + 0.5) * pitch, y });
      y += rowHeight;
    }
  }
  const kin = [...placed.values()];
  return {
    kin,
    pours: kin.flatMap((to) =>
      to.jar.parents.flatMap((parent) => {
        const from = placed.get(parent);
        return from === undefined || from.y >= to.y ? [] : [{ from, to }];
      }),
    ),
    width,
    height: y - kinSize.air,
  };
}
