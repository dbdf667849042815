import type { Quantity } from "./compare.ts";
import type { TopicReport } from "./report.ts";

interface Largest {
  readonly file: string;
  readonly quantity: string;
  readonly compared: number;
  /** The case that lies furthest from its source. */
  readonly id: string;
  readonly worst: Quantity & { readonly residual: number };
}

/** By how much it is off, in the way that its tolerance is told: of the value itself, or plainly. */
const sizeOf = ({ residual, expected, tolerance }: Quantity): number =>
  tolerance.startsWith("rel") && typeof expected === "number" && expected !== 0
    ? Math.abs((residual ?? 0) / expected)
    : Math.abs(residual ?? 0);

function* compared(report: TopicReport) {
  for (const one of report.cases) {
    const [file = ""] = one.id.split(" ");
    for (const quantity of one.quantities)
      if (report.sources[file] !== undefined && quantity.ok !== null && quantity.residual !== null)
        yield { file, id: one.id, quantity: { ...quantity, residual: quantity.residual } };
  }
}

/**
 * The largest residual of each column of each table whose source is named, a line each, in the form of the other lines:
 * how many were compared and against whom, file and column, expected, got, tolerance, residual.
 */
export function* largestResiduals(report: TopicReport): Generator<string> {
  const largest = new Map<string, Largest>();
  for (const { file, id, quantity } of compared(report)) {
    const key = `${file} ${quantity.quantity}`;
    const before = largest.get(key);
    const further = before === undefined || sizeOf(quantity) > sizeOf(before.worst);
    largest.set(key, {
      file,
      quantity: quantity.quantity,
      compared: (before?.compared ?? 0) + 1,
      id: further ? id : before.id,
      worst: further ? quantity : before.worst,
    });
  }
  for (const { file, quantity, compared, id, worst } of largest.values())
    yield [
      `largest of ${compared} against ${report.sources[file]}`,
      `${quantity} of ${id}`,
      worst.expected,
      worst.got,
      worst.tolerance,
      worst.residual.toPrecision(3),
      "shown",
    ].join("\t");
}
