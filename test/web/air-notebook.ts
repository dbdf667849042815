import type { Body } from "../../src/core/notebook/kinds/all.ts";
import { Desk } from "./bench-notebook.ts";

export const grams = (g: number) => ({ typed: `${g} g`, unit: "g", si: g / 1e3 });
export const millilitres = (ml: number) => ({ typed: `${ml} ml`, unit: "ml", si: ml / 1e6 });
export const degrees = (c: number) => ({ typed: `${c} °C`, unit: "degC", si: c + 273.15 });
export const humidity = (percent: number) => ({ typed: `${percent} %`, unit: "rh", si: percent / 100 });

/** Writes a reading of the shop's air, so many minutes ago. */
export const readAir = (
  desk: Desk,
  minutesAgo: number,
  air: { readonly c: number; readonly rh: number; readonly wood?: number },
): string =>
  desk.write(minutesAgo, "air-read", {
    temperature: degrees(air.c),
    relativeHumidity: humidity(air.rh),
    ...(air.wood === undefined ? {} : { wood: degrees(air.wood) }),
  });

/** A jar of lemon flakes in 222 ml of a liquid, a 1½ lb cut of 40 g. */
export function jarOf(
  desk: Desk,
  code: string,
  solvent: NonNullable<Body<"material-bought">["solvent"]>,
  flakes = 40,
): string {
  const lemon = desk.write(9000, "material-bought", {
    form: "resin",
    name: "Lemon",
    resin: { grade: "lemon", waxMassFraction: 0.005 },
    amount: grams(500),
  });
  const bottle = desk.write(9000, "material-bought", { form: "solvent", name: `Spirit ${code}`, solvent });
  return desk.write(8000, "batch-mixed", {
    code,
    resins: [{ material: lemon, amount: grams(flakes) }],
    solvents: [{ material: bottle, amount: millilitres(222) }],
    aimedCutLbPerGal: 1.5,
  });
}

/** Twelve jars: ethanol from 99 to 88 % by volume. */
export function twelveJars(): { readonly desk: Desk; readonly jars: readonly string[] } {
  const desk = new Desk();
  desk.write(9100, "notebook-begun", { name: "Twelve jars" });
  const jars = Array.from({ length: 12 }, (_, i) =>
    jarOf(desk, `J${i + 1}`, { alcohol: "ethanol", volumeFraction: 0.99 - i / 100 }, 30 + 2 * i),
  );
  return { desk, jars };
}
