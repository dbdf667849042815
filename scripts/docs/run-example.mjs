import { inspect } from "node:util";
import ts from "typescript";
import { valueAgrees, workedExamples } from "./worked-examples.mjs";

/** The statements of an example, and the expression that they end with. */
function split(code) {
  const source = ts.createSourceFile("example.ts", code, ts.ScriptTarget.Latest, true);
  const last = source.statements.at(-1);
  if (last === undefined || !ts.isExpressionStatement(last)) throw new Error("no expression before // =>");
  return { setUp: code.slice(0, last.getStart()), expression: last.expression.getText() };
}

function evaluate(setUp, expression, scope) {
  const names = Object.keys(scope);
  const body = `"use strict";\n${setUp}\nreturn (${expression});`;
  return new Function(...names, body)(...names.map((name) => scope[name]));
}

/** Runs every promise of a docstring with the names in `scope`; what each came to, and what is wrong with it if anything is. */
export function runExamples(doc, scope) {
  let before = "";
  return workedExamples(doc).map(({ code, expected }) => {
    if (expected === undefined) return { code, wrong: "no `// => value` after it" };
    try {
      const { setUp, expression } = split(code);
      before += `${setUp}\n`;
      const got = evaluate(before, expression, scope);
      return valueAgrees(expected, got)
        ? { code, wrong: undefined }
        : { code, wrong: `${inspect(got, { depth: 4 })}, and not ${expected}` };
    } catch (error) {
      return { code, wrong: String(error) };
    }
  });
}
