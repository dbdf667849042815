import { xchacha20poly1305 } from "@noble/ciphers/chacha.js";
import { scrypt } from "@noble/hashes/scrypt.js";
import { bytesToHex, hexToBytes, utf8ToBytes } from "@noble/hashes/utils.js";
import type { Problem } from "../registry/problem.ts";
import { fail, ok, type Result } from "../result.ts";
import type { Body } from "./kinds/all.ts";
import { sha256OfText } from "./withdrawal.ts";

/** The body of the entry that holds a trial's key, encrypted. */
export type SealedKey = Body<"trial-key">;

/** Who can open it: whoever knows the passphrase, or the device that holds these 32 bytes. */
export type KeyHolder = { readonly passphrase: string } | { readonly deviceKey: Uint8Array };

/** scrypt's settings: 32 MB three times over, half a second or so on a phone. */
const work = { cost: 2 ** 15, blockSize: 8, parallel: 3 } as const;
/** What an opened entry may ask of the device: no more than 256 MB. */
const mostMemory = 2 ** 28;
const saltBytes = 16;
const nonceBytes = 24;
const deviceKeyBytes = 32;

type Derivation = SealedKey["derivation"];

function isReasonable({ cost = 0, blockSize = 0, parallel = 0 }: Derivation): boolean {
  const whole = [cost, blockSize, parallel].every((n) => Number.isInteger(n) && n > 0);
  const memory = 128 * cost * blockSize;
  return whole && cost > 1 && (cost & (cost - 1)) === 0 && memory <= mostMemory && parallel <= 16;
}

function keyOf(holder: KeyHolder, derivation: Derivation): Uint8Array | null {
  if ("deviceKey" in holder)
    return derivation.name === "device" && holder.deviceKey.length === deviceKeyBytes
      ? holder.deviceKey
      : null;
  const { name, salt = "", cost = 0, blockSize = 0, parallel = 0 } = derivation;
  if (name !== "scrypt" || !/^([0-9a-f]{2}){8,64}$/.test(salt) || !isReasonable(derivation)) return null;
  const password = utf8ToBytes(holder.passphrase.normalize("NFC"));
  return scrypt(password, hexToBytes(salt), { N: cost, r: blockSize, p: parallel, dkLen: 32 });
}

/**
 * Encrypts the text of a trial's key for its holder. The SHA-256 of the text is bound to it, so that a sealed key cannot
 * be passed off as that of another trial.
 *
 * The hash lies open beside the trial: the text must hold 128 random bits or more, or the hash could be met by trying
 * every way to deal the treatments.
 *
 * @param text         the key's exact text, scalar
 * @param holder       a passphrase, or 32 bytes that the holder's device keeps
 * @param randomBytes  a cryptographic source
 * @returns            the body of the entry of kind `trial-key`; texts of bytes are hexadecimal
 *
 * Source: RFC 7914 (scrypt, 2016); XChaCha20-Poly1305, draft-irtf-cfrg-xchacha-03 (2020)
 */
export function sealKey(
  text: string,
  holder: KeyHolder,
  randomBytes: (length: number) => Uint8Array,
): SealedKey {
  const derivation: Derivation =
    "deviceKey" in holder
      ? { name: "device" }
      : { name: "scrypt", salt: bytesToHex(randomBytes(saltBytes)), ...work };
  const key = keyOf(holder, derivation);
  if (key === null) throw new RangeError(`A device key has ${deviceKeyBytes} bytes.`);
  const nonce = randomBytes(nonceBytes);
  const keySha256 = sha256OfText(text);
  const sealed = xchacha20poly1305(key, nonce, utf8ToBytes(keySha256)).encrypt(utf8ToBytes(text));
  return {
    cipher: "xchacha20-poly1305",
    derivation,
    nonce: bytesToHex(nonce),
    sealed: bytesToHex(sealed),
    keySha256,
  };
}

const cannotOpen: Problem = {
  code: "contradiction",
  field: "passphrase",
  message: "This does not open the key. The passphrase that sealed it would do, or the device that holds it.",
  value: null,
  limits: null,
};

/** UTF-8 to text. What was sealed was a text, so the bytes are well formed once the seal holds. */
const textOf = (bytes: Uint8Array): string =>
  decodeURIComponent(Array.from(bytes, (b) => `%${b.toString(16).padStart(2, "0")}`).join(""));

/** Opens a sealed key: its exact text, or the problem that this holder cannot. */
export function openKey(sealed: SealedKey, holder: KeyHolder): Result<string, Problem> {
  const isHex = /^[0-9a-f]{48}$/.test(sealed.nonce) && /^([0-9a-f]{2}){16,}$/.test(sealed.sealed); // the seal alone is 16 bytes
  const key = isHex ? keyOf(holder, sealed.derivation) : null;
  if (key === null) return fail(cannotOpen);
  const cipher = xchacha20poly1305(key, hexToBytes(sealed.nonce), utf8ToBytes(sealed.keySha256));
  let text: string;
  try {
    text = textOf(cipher.decrypt(hexToBytes(sealed.sealed)));
  } catch (error) {
    if (error instanceof Error && error.message === "invalid tag") return fail(cannotOpen);
    throw error;
  }
  return sha256OfText(text) === sealed.keySha256 ? ok(text) : fail(cannotOpen);
}
