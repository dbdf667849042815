import type { Body } from "../../core/notebook/kinds/all.ts";
import type { NotebookReader } from "../../core/notebook/reader.ts";
import { calculate } from "../../core/registry/calculation.ts";
import type { SolventInput } from "../../core/registry/solvent.ts";
import { vapour } from "../../core/registry/vapour.ts";
import type { Component } from "../../core/solution/component.ts";
import type { Composition } from "../../core/solution/composition.ts";

export type Vapours = ReturnType<typeof vapour.run>;

/** A shop's room, as it was once typed. */
export interface ShopRoom {
  readonly volumeM3: number;
  readonly airChangesPerHour: number;
}

export const roomNames = {
  volumeM3: "room-volume-cubic-metres",
  airChangesPerHour: "room-air-changes-per-hour",
} as const;

/** A closed room changes its air about once in two hours: from memory. */
export const closedRoom = 0.5;

/** The room, null until its size was typed: nobody else can know how large a shop is. */
export const shopRoom = (read: NotebookReader): ShopRoom | null =>
  read.derive("shop-room", (r) => {
    const value = (name: string): number | undefined => {
      const found = r
        .ofKind("default-changed")
        .map((entry) => entry.body as Body<"default-changed">)
        .findLast((body) => body.name === name && typeof body.value === "number");
      return found?.value as number | undefined;
    };
    const volumeM3 = value(roomNames.volumeM3);
    if (volumeM3 === undefined) return null;
    return { volumeM3, airChangesPerHour: value(roomNames.airChangesPerHour) ?? closedRoom };
  });

/** A number of a field, with a point or a comma; undefined for what is none or does not fit. */
export function plainNumber(typed: string, min: number, max: number): number | undefined {
  const text = typed.trim().replace(",", ".");
  if (!/^\d+(\.\d+)?$/.test(text)) return undefined;
  const value = Number(text);
  return value >= min && value <= max ? value : undefined;
}

export const limits = {
  volumeM3: { min: 1, max: 100_000 },
  airChangesPerHour: { min: 0, max: 100 },
  amountMl: { min: 1, max: 100_000 },
  minutes: { min: 1, max: 1440 },
} as const;

/** A jar's liquid as the calculations take it. */
export const solventOf = (composition: Composition): SolventInput => ({
  parts: (Object.entries(composition) as [Component, number][]).map(([alcohol, massShare]) => ({
    alcohol,
    massShare,
  })),
});

/** What the alcohol of some work comes to in a room's air; what is refused is told by its code. */
export function vapoursIn(
  room: ShopRoom,
  work: { readonly solvent: SolventInput; readonly amountMl: number; readonly minutes: number },
  airC: number | undefined,
): Vapours | "unnamed" | "outside" {
  const warm = airC === undefined ? {} : { temperatureC: Number(airC.toFixed(3)) };
  const found = calculate(vapour, { ...work, room, ...warm });
  if (found.ok) return found.value as Vapours; // what this calculation gives
  return found.error.code === "not-enough-data" ? "unnamed" : "outside";
}

/** What is asked of it first: the worst of the published limits, by how long it is passed. */
export type Standing = "over" | "fire" | "under";
export function standingOf(found: Vapours): Standing {
  if (found.mixtureShareOfLowerFlammableLimit > 0.25) return "fire";
  return found.mixtureShareOfLimit > 1 ? "over" : "under";
}

/** Air changes of this room that the fresh air comes to. */
export const changesAsked = (found: Vapours, room: ShopRoom): number =>
  found.ventilationM3PerH / room.volumeM3;
