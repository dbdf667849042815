const starts = (bytes: Uint8Array, at: number, text: string): boolean =>
  [...text].every((letter, i) => bytes[at + i] === letter.charCodeAt(0));

/** The media type of a photograph by its first bytes; never by what somebody said it was. */
export function imageType(bytes: Uint8Array): string {
  if (starts(bytes, 0, "\xff\xd8\xff")) return "image/jpeg";
  if (starts(bytes, 0, "\x89PNG\r\n\x1a\n")) return "image/png";
  if (starts(bytes, 0, "RIFF") && starts(bytes, 8, "WEBP")) return "image/webp";
  if (starts(bytes, 4, "ftypavif")) return "image/avif";
  if (starts(bytes, 4, "ftyphei") || starts(bytes, 4, "ftypmif1")) return "image/heic";
  return "application/octet-stream";
}
