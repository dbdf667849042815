import type { Params } from "./match-path.ts";

export const placeIds = ["bench", "shelf", "jars", "trials", "pieces", "book"] as const;
export type PlaceId = (typeof placeIds)[number];

export interface ScreenProps {
  readonly params: Params;
}

export const placePath = (place: PlaceId): string => `/${place}`;
