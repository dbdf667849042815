import { z } from "zod";
import { day, money, solventAsGiven, typedQuantity } from "./parts.ts";

export const materialForms = [
  "resin",
  "solvent",
  "dye",
  "pigment",
  "oil",
  "wax",
  "abrasive",
  "product",
  "other",
] as const;
export const instrumentUses = [
  "scale",
  "jug",
  "thermometer",
  "hygrometer",
  "gloss-meter",
  "colour-meter",
  "card",
  "other",
] as const;

export const materialKinds = {
  "material-bought": z.looseObject({
    form: z.enum(materialForms),
    name: z.string().min(1),
    /** For resin: grade in the trade's words and what is not resin, as mass fractions. */
    resin: z
      .looseObject({
        grade: z.string(),
        waxMassFraction: z.number().min(0).max(1).optional(),
        moistureMassFraction: z.number().min(0).max(1).optional(),
        insolubleMassFraction: z.number().min(0).max(1).optional(),
      })
      .optional(),
    /** For solvent: what it is, as a calculation takes it. */
    solvent: solventAsGiven.optional(),
    lot: z.string().optional(),
    amount: typedQuantity.optional(),
    price: money.optional(),
    bought: day.optional(),
    dataSheet: z.string().optional(),
  }),
  "material-used-up": z.looseObject({}),
  "material-priced": z.looseObject({ price: money, per: typedQuantity }),
  "instrument-described": z.looseObject({
    use: z.enum(instrumentUses),
    name: z.string().min(1),
    standardUncertainty: typedQuantity.optional(),
  }),
  "instrument-checked": z.looseObject({ against: z.string(), read: typedQuantity, expected: typedQuantity }),
} as const;
