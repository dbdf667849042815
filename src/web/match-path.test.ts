import { expect, test } from "vitest";
import { matchPath } from "./match-path.ts";

test("a path is matched part by part", () => {
  expect(matchPath("/jars", "/jars/")).toEqual({});
  expect(matchPath("/jars/:jar", "/jars/a%20b")).toEqual({ jar: "a b" });
  expect(matchPath("/jars/:jar/thin", "/jars/x/thin")).toEqual({ jar: "x" });
});

test("another path, a longer one and one that cannot be decoded are no match", () => {
  expect(matchPath("/jars", "/book")).toBeNull();
  expect(matchPath("/jars", "/jars/x")).toBeNull();
  expect(matchPath("/jars/:jar", "/jars/%E0%A4%A")).toBeNull();
});
