import fc from "fast-check";
import { expect, test } from "vitest";
import { base64Of, bytesOfBase64 } from "./base64.ts";

// RFC 4648, section 10.
const vectors = [
  ["", ""],
  ["f", "Zg=="],
  ["fo", "Zm8="],
  ["foo", "Zm9v"],
  ["foob", "Zm9vYg=="],
  ["fooba", "Zm9vYmE="],
  ["foobar", "Zm9vYmFy"],
] as const;
test.each(vectors)("RFC 4648, section 10: BASE64(%j) = %j", (plain, coded) => {
  const bytes = new TextEncoder().encode(plain);
  expect(base64Of(bytes)).toBe(coded);
  expect(bytesOfBase64(coded)).toEqual({ ok: true, value: bytes });
});

test("any bytes, as Node writes and reads them", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
      expect(base64Of(bytes)).toBe(Buffer.from(bytes).toString("base64"));
      expect(bytesOfBase64(base64Of(bytes))).toEqual({ ok: true, value: bytes });
    }),
  );
});

test.each(["Zg", "Zg=", "Z===", "Zm9v\n", "Zm9*", "Zm=v", "Zmäv"])("%j is no base64", (text) => {
  expect(bytesOfBase64(text)).toEqual({ ok: false, error: "not-base64" });
});
