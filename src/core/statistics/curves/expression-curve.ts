import { DomainError } from "../../domain-error.ts";
import type { Expression } from "../../uncertainty/expression.ts";
import { at } from "../numeric/vector.ts";
import type { Curve } from "./least-squares.ts";

/**
 * A curve that is given as a formula, some names of which are its parameters and the others columns of the readings.
 *
 * @param formula     of both
 * @param parameters  names, in the order of the fit's parameters
 * @param columns     the other names, each with n numbers
 * @returns           the curve, its slopes exact but for rounding
 * @throws DomainError for a name that is neither
 *
 * Source: chain rule
 */
export function curveOfExpression(
  formula: Expression,
  parameters: readonly string[],
  columns: Readonly<Record<string, readonly number[]>>,
): Curve {
  const sources = formula.names.map((name) => {
    const parameter = parameters.indexOf(name);
    const column = Object.hasOwn(columns, name) ? columns[name] : undefined;
    if (parameter < 0 && column === undefined)
      throw new DomainError({ code: "unknown-name", field: "expression", value: name });
    return { parameter, column };
  });
  const places = parameters.map((name) => formula.names.indexOf(name));
  return (values, reading) => {
    const all = sources.map(({ parameter, column }) =>
      parameter >= 0 ? at(values, parameter) : (column?.[reading] ?? Number.NaN),
    );
    const gradient = formula.gradient(all);
    return {
      value: formula.value(all),
      slopes: places.map((place) => (place < 0 ? 0 : (gradient[place] ?? 0))),
    };
  };
}
