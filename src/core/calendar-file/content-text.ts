import { bytesOfText } from "./utf8.ts";

const longest = 75;

/**
 * A text as the value of a property: \ ; , and line breaks escaped, other control characters left out.
 *
 * @param text  any text
 * @returns     the same as TEXT
 * @throws DomainError never
 *
 * Valid:  any text
 * Source: RFC 5545, section 3.3.11
 * @example
 * escapedText("thin, then\nrub; 2:1") // => "thin\\, then\\nrub\\; 2:1"
 */
export const escapedText = (text: string): string =>
  text
    .replace(/[\\;,]/g, "\\$&")
    .replace(/\r\n?|\n/g, "\\n")
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what a line must not hold
    .replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, "");

/**
 * A content line with its end, folded where it is too long; no character is cut.
 *
 * @param line  `NAME;PARAM=value:value`, without line breaks
 * @returns     lines of at most 75 octets, each ended by CRLF, each but the first begun by a space
 * @throws DomainError never
 *
 * Valid:  any text without line breaks
 * Source: RFC 5545, section 3.1
 */
export function foldedLine(line: string): string {
  let folded = "";
  let octets = 0;
  for (const character of line) {
    const more = bytesOfText(character).length;
    if (octets + more > longest) {
      folded += "\r\n ";
      octets = 1;
    }
    folded += character;
    octets += more;
  }
  return `${folded}\r\n`;
}
