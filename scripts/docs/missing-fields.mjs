const section = (doc, name) => doc.includes(`${name}:`);

const summary = (doc) => doc.split(/^\s*(?:@\w+|[A-Z][a-z]+:)/m)[0].trim();

/** An indented line with an equals sign, before the worked example. */
const printsEquation = (doc) => /^ {4,}\S.*[=≈]/m.test(doc.split("@example")[0]);

const guards = (body) => /\bthrow\b|\binRange\(/.test(body);

/**
 * What an exported function's docstring lacks. Every one says what the function is; a formula, that is one that
 * prints an equation or takes a quantity with a unit, also says where it holds, where it comes from and what it refuses.
 */
export function missingFields({ doc, parameters, body }, unitTypes) {
  if (doc === undefined || summary(doc) === "") return ["what it is"];
  const takesUnits = unitTypes.some((name) => new RegExp(`\\b${name}\\b`).test(parameters));
  if (!takesUnits && !printsEquation(doc)) return [];
  const hasSource = section(doc, "Source") || /common practice|from memory/i.test(doc);
  return [
    ...(section(doc, "Valid") ? [] : ["Valid:"]),
    ...(hasSource ? [] : ["Source:, or `common practice`, or `from memory`"]),
    ...(guards(body) && !/@throws/.test(doc) ? ["@throws"] : []),
  ];
}

/** The names of the quantities with a unit, from the text of `units.ts`. */
export const unitTypesIn = (text) =>
  [...text.matchAll(/^export type (\w+) = Quantity</gm)].map(([, name]) => name);
