import ts from "typescript";

/** The lines of a docstring's @example, up to the next tag or section. */
function exampleLines(doc) {
  const lines = doc.split("\n");
  const start = lines.findIndex((line) => line.startsWith("@example"));
  if (start < 0) return [];
  const rest = lines.slice(start + 1);
  const end = rest.findIndex((line) => /^(@\w+|[A-Z][a-z]+:\s)/.test(line));
  return [lines[start].slice("@example".length), ...(end < 0 ? rest : rest.slice(0, end))];
}

/** The promises of a docstring's example: the code before each `// => value`, and the value as written. */
export function workedExamples(doc) {
  const examples = [];
  let code = [];
  for (const line of exampleLines(doc)) {
    if (/^```/.test(line.trim())) continue;
    const [before, expected] = line.split("// =>");
    code.push(before);
    if (expected === undefined) continue;
    examples.push({ code: code.join("\n").trim(), expected: expected.trim() });
    code = [];
  }
  if (code.join("").trim() !== "") examples.push({ code: code.join("\n").trim(), expected: undefined });
  return examples;
}

/** Half a unit of the last digit written: `3169.2` accepts 3169.15 to 3169.25. */
export function toleranceOf(digits) {
  const [mantissa, exponent = "0"] = digits.toLowerCase().replaceAll("_", "").split("e");
  const decimals = mantissa.split(".")[1]?.length ?? 0;
  return 0.5 * 10 ** (Number(exponent) - decimals);
}

const parse = (text) => {
  const source = ts.createSourceFile("value.ts", `(${text})`, ts.ScriptTarget.Latest, true);
  const expression = source.statements[0]?.expression?.expression;
  if (source.statements.length !== 1 || expression === undefined) throw new Error(`cannot read ${text}`);
  return expression;
};

function numberAgrees(node, got, sign) {
  if (typeof got !== "number") return false;
  const digits = node.getText();
  const slack = 1 + 1e-9; // 0.15 - 0.1 is a little over 0.05
  return Math.abs(got - sign * Number(digits.replaceAll("_", ""))) <= toleranceOf(digits) * slack;
}

const constants = new Map([
  ["undefined", undefined],
  ["Infinity", Number.POSITIVE_INFINITY],
]);

function agrees(node, got) {
  if (ts.isPrefixUnaryExpression(node) && node.operator === ts.SyntaxKind.MinusToken)
    return ts.isNumericLiteral(node.operand) && numberAgrees(node.operand, got, -1);
  if (ts.isNumericLiteral(node)) return numberAgrees(node, got, 1);
  if (ts.isStringLiteralLike(node)) return got === node.text;
  if (node.kind === ts.SyntaxKind.TrueKeyword) return got === true;
  if (node.kind === ts.SyntaxKind.FalseKeyword) return got === false;
  if (node.kind === ts.SyntaxKind.NullKeyword) return got === null;
  if (ts.isIdentifier(node) && constants.has(node.text)) return Object.is(got, constants.get(node.text));
  if (ts.isArrayLiteralExpression(node))
    return (
      Array.isArray(got) &&
      got.length === node.elements.length &&
      node.elements.every((e, i) => agrees(e, got[i]))
    );
  if (ts.isObjectLiteralExpression(node))
    return (
      typeof got === "object" &&
      got !== null &&
      node.properties.every((p) => agrees(p.initializer, got[p.name.text]))
    );
  throw new Error(`cannot compare with ${node.getText()}`);
}

/** Whether a value is what was written: numbers to the digits written, the named fields of an object, lists in full. */
export const valueAgrees = (expected, got) => agrees(parse(expected), got);
