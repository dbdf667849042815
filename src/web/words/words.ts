import { en } from "./en.ts";

export type Words = typeof en;
export const words: Words = en;
