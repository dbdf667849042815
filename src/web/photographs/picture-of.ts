import { type Photograph, sha256OfBytes } from "../../core/notebook/photographs-in-file.ts";
import { hasHouse } from "../has-house.ts";
import { isNoKeep, keepPicture, pictureHere } from "./picture-keep.ts";

type Told = Pick<Photograph, "sha256" | "type">;

/** A photograph from here, else from the house, and then kept here; undefined where neither has it. */
export async function pictureOf(notebook: string, told: Told): Promise<Photograph | undefined> {
  return (await fromHere(notebook, told.sha256)) ?? (hasHouse ? fromHouse(notebook, told) : undefined);
}

async function fromHere(notebook: string, sha256: string): Promise<Photograph | undefined> {
  try {
    return await pictureHere(notebook, sha256);
  } catch (error) {
    if (!isNoKeep(error)) throw error;
    return undefined;
  }
}

async function fromHouse(notebook: string, { sha256, type }: Told): Promise<Photograph | undefined> {
  try {
    const answer = await fetch(`/api/photographs/${sha256}`);
    if (!answer.ok) return undefined;
    const bytes = new Uint8Array(await answer.arrayBuffer());
    if (sha256OfBytes(bytes) !== sha256) return undefined;
    const picture = { sha256, type, bytes };
    await keepPicture(notebook, picture, "sent").catch((error) => {
      if (!isNoKeep(error)) throw error; // shown all the same
    });
    return picture;
  } catch (error) {
    if (!isNoKeep(error)) throw error; // out of reach
    return undefined;
  }
}
