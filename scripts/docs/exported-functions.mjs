import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";

const isExported = (node) => node.modifiers?.some((m) => m.kind === ts.SyntaxKind.ExportKeyword) ?? false;

/** The docstring's text as a reader sees it: without the comment marks, with its indentation. */
function docText(node) {
  const last = node.jsDoc?.at(-1);
  if (last === undefined) return undefined;
  return last
    .getFullText()
    .replace(/^\s*\/\*\*|\*\/\s*$/g, "")
    .split("\n")
    .map((line) => line.replace(/^\s*\* ?/, "").trimEnd())
    .join("\n")
    .trim();
}

function* functionsOf(statement) {
  if (!isExported(statement)) return;
  if (ts.isFunctionDeclaration(statement)) yield { node: statement, name: statement.name?.text };
  if (!ts.isVariableStatement(statement)) return;
  for (const { name, initializer } of statement.declarationList.declarations) {
    if (initializer === undefined) continue;
    if (ts.isArrowFunction(initializer) || ts.isFunctionExpression(initializer)) {
      yield { node: initializer, name: name.getText() };
    }
  }
}

/** Every function that a TypeScript source exports, with what is written above it. */
export function exportedFunctions(file, text) {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  return source.statements.flatMap((statement) =>
    [...functionsOf(statement)].map(({ node, name }) => ({
      file,
      name,
      line: source.getLineAndCharacterOfPosition(statement.getStart()).line + 1,
      doc: docText(statement),
      parameters: node.parameters.map((p) => p.getText()).join(", "),
      body: node.body?.getText() ?? "",
    })),
  );
}

/** The TypeScript sources under a folder, tests left out. */
export const sourcesUnder = (folder) =>
  readdirSync(folder, { recursive: true })
    .filter((name) => name.endsWith(".ts") && !/\.(test|contract)\.ts$/.test(name))
    .sort()
    .map((name) => join(folder, name))
    .map((file) => ({ file, text: readFileSync(file, "utf8") }));
