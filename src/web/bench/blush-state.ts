import type { Blush } from "../../core/evaporation/blush.ts";
import type { ShopAir } from "../../core/views/coat-setup.ts";
import type { Dried } from "../drying/task.ts";

/** One jar's coat in the shop's air. */
export interface JarMargin {
  readonly id: string;
  readonly code: string;
  /** Null where it cannot be reckoned. */
  readonly blush: Blush | null;
}

/** Air too dry for a dew point leaves more to spare than any margin; of what cannot be reckoned nothing is known. */
const spare = ({ blush }: JarMargin): number =>
  blush === null ? Number.POSITIVE_INFINITY : (blush.margin ?? Number.MAX_VALUE);

/** The jar nearest to turning white first, those that cannot be reckoned last. */
export const worstFirst = (jars: readonly JarMargin[]): readonly JarMargin[] =>
  [...jars].sort((a, b) => spare(a) - spare(b) || a.code.localeCompare(b.code));

/** How many may or will turn white. */
export const inDanger = (jars: readonly JarMargin[]): number =>
  jars.filter(({ blush }) => blush !== null && blush.word !== "unlikely").length;

export type Help = NonNullable<Dried["wouldHelp"]>[number];

/** What to do first: where the board is the cold thing, warm it; else dry the air; thin coats where that alone is enough. */
export interface Advice {
  readonly what: "warm" | "dry" | "thin" | "wait";
  /** °C of the wood, or relative humidity. */
  readonly to: number | null;
}

const isEnough = (help: Help): boolean => help.blush === "unlikely";

export function adviceOf(helps: readonly Help[]): Advice {
  const of = (change: Help["change"]) => helps.find((help) => help.change === change && isEnough(help));
  const [warm, dry] = [of("warmer wood"), of("drier air")];
  if (warm?.woodC !== undefined) return { what: "warm", to: Math.ceil(warm.woodC) };
  if (dry?.relativeHumidity !== undefined) return { what: "dry", to: Math.floor(dry.relativeHumidity * 100) };
  return of("thinner coat") === undefined ? { what: "wait", to: null } : { what: "thin", to: null };
}

/** Whether the board, rather than the air, is to blame. */
export const isColdBoard = ({ wood, temperature }: ShopAir): boolean => wood < temperature - 1;

/** `tonight` once the day is over: said of a shop's evening. */
export const dayPart = (clock: string): "tonight" | "now" =>
  Number(clock.slice(0, 2)) >= 17 || Number(clock.slice(0, 2)) < 4 ? "tonight" : "now";
