import type { Body } from "../notebook/kinds/all.ts";
import { type Random, randomFromSeed, randomNormal } from "../random.ts";
import type { DemoClock } from "./clock.ts";
import { Pen, typed } from "./pen.ts";
import type { DemoAlcohol } from "./truth.ts";

/** What stands on the invented shelf, by entry id. */
export interface Shelf {
  readonly lemon: string;
  readonly seedlac: string;
  readonly alcohol: Readonly<Record<DemoAlcohol, string>>;
  readonly retarder: string;
  readonly kitchenScale: string;
  readonly fineScale: string;
  readonly jug: string;
  readonly glossMeter: string;
}

/** Everything that the chapters of the demo share. */
export interface Shop {
  readonly pen: Pen;
  readonly clock: DemoClock;
  readonly random: Random;
  readonly shelf: Shelf;
}

/** A drawn number about `mean`. */
export const about = (random: Random, mean: number, standardDeviation: number): number =>
  mean + standardDeviation * randomNormal(random);

/** The nearest whole number of steps. */
export const roundTo = (value: number, step: number): number => Math.round(value / step) * step;

/** So many minutes after a clock time, on the same day. */
export function later(time: string, minutes: number): string {
  const [hours = 0, mins = 0] = time.split(":").map(Number);
  const total = Math.min(23 * 60 + 59, Math.round(hours * 60 + mins + minutes));
  return `${String(Math.floor(total / 60)).padStart(2, "0")}:${String(total % 60).padStart(2, "0")}`;
}

/** So many drawn hexadecimal digits. */
export const hexOf = (shop: Shop, length: number): string =>
  Array.from({ length }, () => Math.floor(shop.random() * 16).toString(16)).join("");

/** The shop's air, as the wall and a thermometer on the wood say it. */
export function readAir(shop: Shop, day: number, time: string): void {
  const temperature = about(shop.random, 14.5, 1);
  shop.pen.write(shop.clock.at(day, time), "air-read", {
    place: "shop",
    temperature: typed(`${temperature.toFixed(1)} °C`, "temperature"),
    relativeHumidity: typed(`${Math.round(about(shop.random, 62, 4))} %`, "fraction"),
    wood: typed(`${(temperature - 0.4).toFixed(1)} °C`, "temperature"),
  });
}

const bought = (
  form: Body<"material-bought">["form"],
  name: string,
  rest: Partial<Body<"material-bought">>,
) => ({
  form,
  name,
  ...rest,
});

/** Day −41: what was bought, and what there is to measure with. */
export function openShop(seed: string, clock: DemoClock, zone: string): Shop {
  const pen = new Pen(`${seed} ${clock.at(0, "00:00")} ${zone}`, zone);
  const at = (time: string) => clock.at(-41, time);
  const euros = (amount: number) => ({ amount, currency: "EUR" });
  const day = { bought: clock.day(-44) };
  pen.write(at("17:30"), "notebook-begun", { name: "Library chairs", invented: true, seed });
  const material = (time: string, body: Body<"material-bought">) =>
    pen.write(at(time), "material-bought", body);
  const instrument = (time: string, use: Body<"instrument-described">["use"], name: string, u?: string) =>
    pen.write(at(time), "instrument-described", {
      use,
      name,
      ...(u === undefined ? {} : { standardUncertainty: typed(u, u.endsWith("l") ? "volume" : "mass") }),
    });
  const shelf = {
    lemon: material(
      "17:34",
      bought("resin", "Dewaxed lemon flakes", {
        resin: {
          grade: "dewaxed lemon",
          waxMassFraction: 0.005,
          moistureMassFraction: 0.015,
          insolubleMassFraction: 0.002,
        },
        lot: "lot 117",
        amount: typed("1 kg", "mass"),
        price: euros(46),
        ...day,
      }),
    ),
    seedlac: material(
      "17:36",
      bought("resin", "Seedlac", {
        resin: {
          grade: "seedlac",
          waxMassFraction: 0.05,
          moistureMassFraction: 0.02,
          insolubleMassFraction: 0.02,
        },
        lot: "lot 9",
        amount: typed("250 g", "mass"),
        price: euros(14),
        ...day,
      }),
    ),
    alcohol: {
      ethanol: material(
        "17:38",
        bought("solvent", "Ethanol 96 %", {
          solvent: { alcohol: "ethanol", volumeFraction: 0.96 },
          amount: typed("5 l", "volume"),
          price: euros(38),
          ...day,
        }),
      ),
      isopropanol: material(
        "17:40",
        bought("solvent", "Isopropanol 99 %", {
          solvent: { alcohol: "isopropanol", massFraction: 0.99 },
          amount: typed("2.5 l", "volume"),
          price: euros(19),
          ...day,
        }),
      ),
      denatured: material(
        "17:42",
        bought("solvent", "Denatured alcohol", {
          solvent: {
            parts: [
              { alcohol: "ethanol", volumeFraction: 0.96, massShare: 0.92 },
              { alcohol: "isopropanol", massShare: 0.05 },
              { alcohol: "mek", massShare: 0.03 },
            ],
          },
          dataSheet: "5 % isopropanol, 3 % methyl ethyl ketone",
          amount: typed("2.5 l", "volume"),
          price: euros(17),
          ...day,
        }),
      ),
    },
    kitchenScale: instrument("17:50", "scale", "Kitchen scale", "0.5 g"),
    fineScale: instrument("17:51", "scale", "Pocket scale", "0.01 g"),
    jug: instrument("17:52", "jug", "Measuring jug", "2.5 ml"),
    glossMeter: instrument("17:53", "gloss-meter", "Gloss meter, 60°"),
  };
  const retarder = material(
    "17:44",
    bought("solvent", "n-Propanol, as a retarder", {
      solvent: { alcohol: "n-propanol" },
      amount: typed("500 ml", "volume"),
      price: euros(11),
      ...day,
    }),
  );
  return { pen, clock, random: randomFromSeed(`demo ${seed}`), shelf: { ...shelf, retarder } };
}
