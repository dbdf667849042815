import { type Photograph, sha256OfBytes } from "../../core/notebook/photographs-in-file.ts";

const longestSide = 1600;
const quality = 0.85;

export interface Smaller extends Photograph {
  readonly width: number;
  readonly height: number;
}

/** A picture as a JPEG no longer than 1600 pixels either way; undefined when this browser sees no picture in the file. */
export async function madeSmaller(file: Blob): Promise<Smaller | undefined> {
  const picture = await pictureIn(file);
  if (picture === undefined) return undefined;
  const scale = Math.min(1, longestSide / Math.max(picture.width, picture.height));
  const width = Math.max(1, Math.round(picture.width * scale));
  const height = Math.max(1, Math.round(picture.height * scale));
  const blob = await drawn(picture, width, height);
  picture.close();
  if (blob === null) return undefined;
  const bytes = new Uint8Array(await blob.arrayBuffer());
  return { sha256: sha256OfBytes(bytes), type: blob.type, bytes, width, height };
}

async function pictureIn(file: Blob): Promise<ImageBitmap | undefined> {
  try {
    return await createImageBitmap(file);
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
    return undefined;
  }
}

function drawn(picture: ImageBitmap, width: number, height: number): Promise<Blob | null> {
  const canvas = Object.assign(document.createElement("canvas"), { width, height });
  const pen = canvas.getContext("2d");
  if (pen === null) return Promise.resolve(null);
  pen.fillStyle = "white"; // a JPEG sees through nothing
  pen.fillRect(0, 0, width, height);
  pen.imageSmoothingQuality = "high";
  pen.drawImage(picture, 0, 0, width, height);
  return new Promise((resolve) => canvas.toBlob(resolve, "image/jpeg", quality));
}
