import { upToDigits } from "../words/number.ts";
import * as words from "../words/words.ts";
import type { PlanInput } from "./draft.ts";
import { readWait, waitTyped } from "./read-wait.ts";

/** A side or part as it is being typed; the share in 100. */
export interface SurfaceDraft {
  readonly name: string;
  readonly share: string;
  readonly turned: boolean;
}

/** The sides and parts of a piece, who works on them and where they dry, exactly as typed. */
export interface SurfacesDraft {
  readonly surfaces: readonly SurfaceDraft[];
  readonly turn: string;
  readonly hands: string;
  readonly places: string;
}

export const allAtOnce: SurfacesDraft = { surfaces: [], turn: "", hands: "1", places: "" };

const t = words.surfaces;
const decimal = (text: string): number => Number(text.trim().replace(",", "."));

export const twoSides: readonly SurfaceDraft[] = [
  { name: t.names.underside, share: "50", turned: false },
  { name: t.names.top, share: "50", turned: true },
];
export const twoFaces: readonly SurfaceDraft[] = [
  { name: t.names.one, share: "50", turned: false },
  { name: t.names.other, share: "50", turned: false },
];

/** So many parts of one size, as chairs; nothing for a number that is no count of them. */
export function alike(count: string): readonly SurfaceDraft[] {
  const n = decimal(count);
  if (!Number.isInteger(n) || n < 2 || n > 12) return [];
  const share = upToDigits(100 / n, 3);
  return Array.from({ length: n }, (_, i) => ({ name: t.part(i + 1), share, turned: false }));
}

type Asked = Pick<PlanInput, "surfaces" | "turnMinutes" | "hands" | "dryingPlaces">;

/** As the plan takes it; what cannot be read is no number, and the plan refuses it by name. */
export function surfacesAsked({ surfaces, turn, hands, places }: SurfacesDraft): Asked {
  if (surfaces.length === 0) return {};
  const isTurned = surfaces.some(({ turned }) => turned);
  return {
    surfaces: surfaces.map(({ name, share, turned }) => ({
      name: name.trim(),
      share: decimal(share) / 100,
      ...(turned ? { turned } : {}),
    })),
    ...(turn.trim() === "" || !isTurned ? {} : { turnMinutes: readWait(turn) ?? Number.NaN }),
    hands: decimal(hands),
    ...(places.trim() === "" ? {} : { dryingPlaces: decimal(places) }),
  };
}

/** The draft of what was planned last. */
export function surfacesKept(input: PlanInput | undefined): SurfacesDraft {
  if (input?.surfaces === undefined) return allAtOnce;
  return {
    surfaces: input.surfaces.map(({ name, share, turned = false }) => ({
      name,
      share: upToDigits(share * 100, 3),
      turned,
    })),
    turn: input.turnMinutes === undefined ? "" : waitTyped(input.turnMinutes),
    hands: String(input.hands ?? 1),
    places: input.dryingPlaces === undefined ? "" : String(input.dryingPlaces),
  };
}
