import type { materialKinds } from "../../../../core/notebook/kinds/materials.ts";
import { also, type Sayings } from "./naming.ts";

export const materialSayings: Sayings<keyof typeof materialKinds> = {
  "material-bought": (b) =>
    `${b.name} put on the shelf${also(", ", b.amount?.typed)}${b.price === undefined ? "" : `, for ${b.price.amount} ${b.price.currency}`}${also(", lot ", b.lot)}.`,
  "material-used-up": (_, name) => `${name.about} used up.`,
  "material-priced": (b, name) =>
    `${name.about} costs ${b.price.amount} ${b.price.currency} for ${b.per.typed}.`,
  "instrument-described": (b) =>
    `${b.name}, a ${b.use}${b.standardUncertainty === undefined ? "" : `, good to ${b.standardUncertainty.typed}`}.`,
  "instrument-checked": (b, name) =>
    `${name.about} checked against ${b.against}: it read ${b.read.typed} for ${b.expected.typed}.`,
};
