import { expect, test } from "vitest";
import { jsonMemberText } from "./json-member.ts";

test("the text of a member is cut out as it stands", () => {
  const text = '{ "cursor" : "a\\"]}" , "n":1.0,"entries": [ {"x":[1.50,"}"]}, 2 ], "ok":true }';
  expect(jsonMemberText(text, "entries")).toBe('[ {"x":[1.50,"}"]}, 2 ]');
  expect(jsonMemberText(text, "cursor")).toBe('"a\\"]}"');
  expect(jsonMemberText(text, "n")).toBe("1.0");
  expect(jsonMemberText(text, "ok")).toBe("true");
  expect(jsonMemberText(text, "none")).toBeUndefined();
  expect(jsonMemberText("{}", "none")).toBeUndefined();
});

test("a key that stands inside a value is not the member", () => {
  expect(jsonMemberText('{"a":{"entries":1},"entries":2}', "entries")).toBe("2");
  expect(jsonMemberText('{"a":"\\"entries\\":3","entries":"x"}', "entries")).toBe('"x"');
});
