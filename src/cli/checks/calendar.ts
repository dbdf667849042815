import { calendarFaults } from "../../core/calendar-file/calendar-faults.ts";
import { bytesOfText } from "../../core/calendar-file/utf8.ts";
import { type Json, NotReadable, type Topic } from "./topic.ts";

function bytesOf(given: Json): Uint8Array {
  if (typeof given.text === "string") return bytesOfText(given.text);
  if (typeof given.hex === "string" && /^(?:[0-9a-fA-F]{2}|\s)*$/.test(given.hex))
    return Uint8Array.from(given.hex.match(/[0-9a-fA-F]{2}/g) ?? [], (byte) => Number.parseInt(byte, 16));
  throw new NotReadable("neither text nor hex is given");
}

export const topic: Topic = {
  kinds: {
    "calendar-sample": (given) => {
      const violates = calendarFaults(bytesOf(given));
      return { valid: violates.length === 0, violates };
    },
  },
};
