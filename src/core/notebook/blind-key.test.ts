import { xchacha20poly1305 } from "@noble/ciphers/chacha.js";
import { scrypt } from "@noble/hashes/scrypt.js";
import { bytesToHex, hexToBytes, utf8ToBytes } from "@noble/hashes/utils.js";
import { expect, test } from "vitest";
import { openKey, sealKey } from "./blind-key.ts";
import { sha256OfText } from "./withdrawal.ts";

let count = 0;
const randomBytes = (n: number) => Uint8Array.from({ length: n }, () => (count++ * 89 + 7) % 256);
const text = '{"codes":{"K7":{"treatment":{"alcohol":"ethanol"}}},"salt":"00ff — ½ lb"}';

test("scrypt: RFC 7914 section 12, third vector", () => {
  const key = scrypt(utf8ToBytes("pleaseletmein"), utf8ToBytes("SodiumChloride"), {
    N: 16384,
    r: 8,
    p: 1,
    dkLen: 64,
  });
  expect(bytesToHex(key)).toBe(
    "7023bdcb3afd7348461c06cd81fd38ebfda8fbba904f8e3ea9b543f6545da1f2d5432955613f0fcf62d49705242a9af9e61e85dc0d651e40dfcf017b45575887",
  );
});

test("XChaCha20-Poly1305: draft-irtf-cfrg-xchacha-03, appendix A.3.1", () => {
  const key = hexToBytes("808182838485868788898a8b8c8d8e8f909192939495969798999a9b9c9d9e9f");
  const nonce = hexToBytes("404142434445464748494a4b4c4d4e4f5051525354555657");
  const aad = hexToBytes("50515253c0c1c2c3c4c5c6c7");
  const plain = utf8ToBytes(
    "Ladies and Gentlemen of the class of '99: If I could offer you only one tip for the future, sunscreen would be it.",
  );
  expect(bytesToHex(xchacha20poly1305(key, nonce, aad).encrypt(plain)).slice(-32)).toBe(
    "c0875924c1c7987947deafd8780acf49",
  );
});

test("SHA-256 of a text: FIPS 180-4 example, one block", () => {
  expect(sha256OfText("abc")).toBe("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
});

test("a passphrase opens what it sealed, and no other does", () => {
  const sealed = sealKey(text, { passphrase: "école 12" }, randomBytes);
  expect(JSON.stringify(sealed)).not.toContain("ethanol");
  expect(sealed.keySha256).toBe(sha256OfText(text));
  expect(openKey(sealed, { passphrase: "e\u0301cole 12" })).toEqual({ ok: true, value: text });
  expect(openKey(sealed, { passphrase: "école 13" })).toMatchObject({ ok: false });
  expect(openKey(sealed, { deviceKey: new Uint8Array(32) })).toMatchObject({ ok: false });
});

test("a device's key opens what it sealed; a change anywhere does not open", () => {
  const deviceKey = randomBytes(32);
  const sealed = sealKey(text, { deviceKey }, randomBytes);
  expect(openKey(sealed, { deviceKey })).toEqual({ ok: true, value: text });
  const flipped = (hex: string) => (hex.startsWith("0") ? "1" : "0") + hex.slice(1);
  for (const changed of [
    { ...sealed, sealed: flipped(sealed.sealed) },
    { ...sealed, nonce: flipped(sealed.nonce) },
    { ...sealed, keySha256: flipped(sealed.keySha256) },
    { ...sealed, nonce: "zz" },
    { ...sealed, sealed: "" },
    { ...sealed, sealed: "00" },
  ])
    expect(openKey(changed, { deviceKey })).toMatchObject({ ok: false });
  expect(() => sealKey(text, { deviceKey: new Uint8Array(5) }, randomBytes)).toThrow(RangeError);
});

test("an entry that asks for a gigabyte of memory is not opened", () => {
  const sealed = sealKey(text, { passphrase: "p" }, randomBytes);
  const greedy = { ...sealed, derivation: { ...sealed.derivation, cost: 2 ** 24 } };
  expect(openKey(greedy, { passphrase: "p" })).toMatchObject({ ok: false });
  const odd = { ...sealed, derivation: { ...sealed.derivation, cost: 1000 } };
  expect(openKey(odd, { passphrase: "p" })).toMatchObject({ ok: false });
});
