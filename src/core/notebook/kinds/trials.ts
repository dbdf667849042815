import { z } from "zod";
import { idSchema } from "../entry.ts";
import { typedQuantity } from "./parts.ts";

export const responseScales = ["measured", "ordered", "ranked"] as const;
export const levelsAppliedTo = ["jar", "plank", "board", "patch"] as const;
export const leftOutReasons = ["dropped", "warped", "spoiled", "lost", "other"] as const;

/** Something looked at, and how large a difference in it would matter to this person. */
export const responseAsked = z.looseObject({
  name: z.string().min(1),
  scale: z.enum(responseScales),
  /** For an ordered scale: its steps in words, from least to most. */
  levels: z.array(z.string()).optional(),
  matters: z.number().min(0).optional(),
  /** It was left at common practice; nobody set it. */
  mattersIsCommon: z.boolean().optional(),
  unit: z.string().optional(),
  /** What more and less of it are called: `glossier`, `duller`. */
  more: z.string().optional(),
  less: z.string().optional(),
});

/** Who reads and how: the part that `judged` and `measured` share. */
const reading = {
  patch: z.string(),
  response: z.string(),
  who: z.string().optional(),
  light: z.string().optional(),
  daysSinceLayer: z.number().min(0).optional(),
  /** What the judge could see: only the code, or the recipe as well. */
  seen: z.enum(["code", "recipe"]).optional(),
  order: z.int().min(1).optional(),
  /** First, second … time the same thing is read. */
  occasion: z.int().min(1).optional(),
  afterCoat: z.int().min(0).optional(),
};

/** `about[0]` is the trial, but for `trial-asked`, which makes it. */
export const trialKinds = {
  "trial-asked": z.looseObject({
    question: z.string().min(1),
    varies: z.array(
      z.looseObject({
        factor: z.string(),
        levels: z.array(z.string()),
        appliedTo: z.enum(levelsAppliedTo),
        /** Let down from one stock, as two cuts are: its levels then share the stock's luck. */
        fromOneStock: z.boolean().optional(),
      }),
    ),
    held: z.array(z.looseObject({ what: z.string(), at: z.string() })).optional(),
    looksAt: z.array(responseAsked),
    /** How the boards are used, by the name of the kind of layout. */
    layout: z.string().optional(),
    coats: z.int().min(1),
    evenings: z.int().min(1).optional(),
    jarsPerLevel: z.int().min(1).optional(),
    millilitresPerPatchCoat: z.number().min(0).optional(),
    /** Days between the last coat and the judging. */
    daysToJudge: z.number().min(0).optional(),
  }),
  /** Boards, places, codes and orders in clear; treatments only by the hash of the key. */
  "trial-laid-out": z.looseObject({
    boards: z.array(
      z.looseObject({
        board: idSchema.optional(),
        name: z.string(),
        plank: z.string(),
        wood: z.string(),
        patches: z.int().min(1),
      }),
    ),
    patches: z.array(
      z.looseObject({ patch: z.string(), board: z.string(), place: z.int().min(1), code: z.string() }),
    ),
    /** Codes in the order of coating, drawn again for every session. */
    orders: z.array(z.array(z.string())),
    keySha256: z.string().regex(/^[0-9a-f]{64}$/),
    blinding: z.enum(["none", "codes only", "helper holds the key"]),
    geometry: z
      .looseObject({
        boardMm: z.tuple([z.number(), z.number()]),
        patchMm: z.tuple([z.number(), z.number()]),
        gutterMm: z.number(),
        judgedInsetMm: z.number(),
      })
      .optional(),
    cannotTell: z.array(z.looseObject({ term: z.string(), with: z.array(z.string()) })).optional(),
    /** Which batch each jar of the plan is; never which patch it goes on. */
    jars: z
      .array(
        z.looseObject({
          jar: z.string(),
          recipe: z.record(z.string(), z.string()),
          batch: idSchema.optional(),
        }),
      )
      .optional(),
  }),
  /** The key, encrypted: only its holder's passphrase or device opens it. */
  "trial-key": z.looseObject({
    cipher: z.literal("xchacha20-poly1305"),
    derivation: z.looseObject({
      name: z.enum(["scrypt", "device"]),
      salt: z.string().optional(),
      cost: z.number().optional(),
      blockSize: z.number().optional(),
      parallel: z.number().optional(),
    }),
    nonce: z.string(),
    sealed: z.string(),
    keySha256: z.string().regex(/^[0-9a-f]{64}$/),
  }),
  /** The exact text whose SHA-256 was laid down, now for everyone to read. */
  "key-opened": z.looseObject({ key: z.string() }),
  "trial-changed": z.looseObject({ what: z.string(), why: z.string(), keyOpen: z.boolean() }),
  "patch-left-out": z.looseObject({
    patch: z.string(),
    why: z.enum(leftOutReasons),
    note: z.string().optional(),
    who: z.string().optional(),
    keyOpen: z.boolean(),
  }),
  "patch-brought-back": z.looseObject({
    patch: z.string(),
    why: z.string().optional(),
    who: z.string().optional(),
    keyOpen: z.boolean(),
  }),
  "trial-closed": z.looseObject({
    chosen: z.record(z.string(), z.string()).optional(),
    why: z.string().optional(),
  }),
  /** On an ordered scale by its word, or ranked by its place in the row. */
  judged: z.looseObject({ ...reading, level: z.string().optional(), rank: z.number().min(1).optional() }),
  measured: z.looseObject({ ...reading, value: typedQuantity }),
  "compared-blind": z.looseObject({
    form: z.enum(["triangle", "duo-trio", "two-afc", "three-afc", "tetrad", "paired-two-sided"]),
    response: z.string().optional(),
    shown: z.array(z.string()),
    answer: z.string(),
    who: z.string().optional(),
    light: z.string().optional(),
    daysSinceLayer: z.number().min(0).optional(),
    seen: z.enum(["code", "recipe"]).optional(),
    order: z.int().min(1).optional(),
  }),
} as const;
