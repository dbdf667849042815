import { expect, test } from "vitest";
import { browserCommand } from "./open-browser.mjs";

test("a browser is opened where somebody would see it", () => {
  expect(browserCommand({ DISPLAY: ":0" }, "linux")).toEqual(["xdg-open"]);
  expect(browserCommand({ WAYLAND_DISPLAY: "wayland-0" }, "linux")).toEqual(["xdg-open"]);
  expect(browserCommand({}, "darwin")).toEqual(["open"]);
  expect(browserCommand({}, "win32")).toEqual(["cmd", "/c", "start", ""]);
});

test("no browser is opened without a display, when told not to, or in a check", () => {
  expect(browserCommand({}, "linux")).toBeUndefined();
  expect(browserCommand({ DISPLAY: ":0", LACBENCH_OPEN: "0" }, "linux")).toBeUndefined();
  expect(browserCommand({ CI: "true" }, "darwin")).toBeUndefined();
});
