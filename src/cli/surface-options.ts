import type { PiecePlanInput } from "../core/registry/piece-schedule.ts";
import { plainNumber } from "./air-options.ts";
import type { OptionSpecs } from "./command.ts";
import { optionRefused } from "./factor-options.ts";
import { given, type ShopOptions } from "./shop-options.ts";

const example = '"underside 50%, then top 50%" or "8 x chair"';

/** The sides and parts of a piece, who works on them, and where they dry. */
export const surfaceOptions = {
  surfaces: {
    type: "string",
    value: "LIST",
    description: `sides and parts in order, "then" before what is reached by turning: ${example}`,
  },
  turn: {
    type: "string",
    value: "30",
    description: "minutes until the piece is turned onto a coat; its least wait unless told",
  },
  hands: { type: "string", value: "1", description: "people who work at once, each on one surface" },
  places: { type: "string", value: "3", description: "how many can lie drying at once" },
} as const satisfies OptionSpecs;

type Surface = NonNullable<PiecePlanInput["surfaces"]>[number];

const one =
  /^(?:(?<count>\d{1,2})\s*[x×]\s+)?(?<turned>then\s+)?(?<name>.*?)(?:\s+(?<share>\d+(?:\.\d+)?)\s*%)?$/i;

type Typed = Omit<Surface, "share"> & { readonly share: number | undefined };

/** What one of the list says, several of a kind with numbers; nothing where it cannot be read. */
function surfacesIn(typed: string): readonly Typed[] | undefined {
  const { count, turned, name = "", share } = one.exec(typed)?.groups ?? {};
  if (name.trim() === "") return undefined;
  const many = Number(count ?? 1);
  return Array.from({ length: many }, (_, i) => ({
    name: count === undefined ? name : `${name} ${i + 1}`,
    ...(turned === undefined ? {} : { turned: true }),
    share: share === undefined ? undefined : Number(share) / 100 / many,
  }));
}

/** Without shares, all are of one size. */
function surfacesTyped(typed: ShopOptions): readonly Surface[] | undefined {
  const list = typed.text("surfaces");
  if (list === undefined) return undefined;
  const found = list.split(",").map((item) => surfacesIn(item.trim()));
  const all = found.flatMap((some) => some ?? []);
  const told = all.filter(({ share }) => share !== undefined).length;
  if (found.includes(undefined) || (told > 0 && told < all.length))
    throw optionRefused("surfaces", list, example);
  return all.map((surface) => ({ ...surface, share: surface.share ?? 1 / all.length }));
}

/** As the calculation takes it. */
export const surfacesFrom = (typed: ShopOptions): Record<string, unknown> =>
  given({
    surfaces: surfacesTyped(typed),
    turnMinutes: plainNumber(typed, "turn", "30"),
    hands: plainNumber(typed, "hands", "2"),
    dryingPlaces: plainNumber(typed, "places", "3"),
  });
