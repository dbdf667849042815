/** Endings of field names, the longer before the shorter. */
const endings: readonly (readonly [RegExp, string])[] = [
  [/[lL]bPerImperialGal$/, "lb/imp gal"],
  [/[lL]bPerGal(Solution)?$/, "lb/US gal"],
  [/gramsPerLitre(Solvent|Solution)$/, "g/L"],
  [/^millilitresPerM2PerCoat$/, "mL/m²"],
  [/(gramsPer|G)M2$/, "g/m²"],
  [/KgM3$/, "kg/m³"],
  [/M3PerH$/, "m³/h"],
  [/M3$/, "m³"],
  [/M2$/, "m²"],
  [/Ml$/, "mL"],
  [/Um$/, "µm"],
  [/Mm$/, "mm"],
  [/MS$/, "m/s"],
  [/Ms$/, "ms"],
  [/Ppm$/, "ppm"],
  [/usProof$/, "US proof"],
  [/([mM]inutes|Min)$/, "min"],
  [/[dD]ays(Since\w+)?$/, "d"],
  [/^cutStandardUncertainty/, "lb/US gal"],
  [/(Fraction|Share|Humidity)(\d+[CF])?(Resin)?$/, "0–1"],
  [/[a-z]G$/, "g"],
  [/[a-z]C$/, "°C"],
  [/[a-z]H$/, "h"],
];

/** The unit that a field's name ends in; nothing where it ends in none. */
export function unitOf(path: string): string {
  const name = path.split(".").at(-1)?.replace(/\[\]$/, "") ?? "";
  return endings.find(([ending]) => ending.test(name))?.[1] ?? "";
}
